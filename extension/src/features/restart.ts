import { commands, type Disposable } from 'vscode';
import type { Client } from '../client.js';

/** `Restart Language Server`. */
export function restart(client: Client): Disposable {
  return commands.registerCommand('fieldpair.restartServer', () => client.restart());
}
