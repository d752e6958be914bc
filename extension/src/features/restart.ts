import type { Disposable } from 'vscode';
import type { Client } from '../client.js';
import { registerCommand } from './command.js';

/** `Restart Language Server`. */
export function restart(client: Client): Disposable {
  return registerCommand(client, 'fieldpair.restartServer', () => client.restart());
}
