import type { Disposable } from 'vscode';
import type { Client } from '../client.js';
import { registerCommand } from './command.js';

/** `Show Log`. */
export function log(client: Client): Disposable {
  return registerCommand(client, 'fieldpair.showLog', () => client.log.show());
}
