import { commands, type Disposable } from 'vscode';
import type { Client } from '../client.js';

/** `Show Log`. */
export function log(client: Client): Disposable {
  return commands.registerCommand('fieldpair.showLog', () => client.log.show());
}
