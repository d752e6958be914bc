import { Disposable, Uri } from 'vscode';
import type { DrawStoreCommand } from '../../../server/src/protocol.js';
import type { Client } from '../client.js';
import { drawingPanel } from '../panels/drawing/drawing-panel.js';
import { registerPanel } from '../panels/panel.js';
import { registerCommand } from './command.js';

const command: DrawStoreCommand = 'fieldpair.drawStore';

/** `Draw This Store`: the wiring as a picture beside the text, which follows the text as it is edited. */
export function drawing(client: Client): Disposable {
  const panel = registerPanel(client, drawingPanel(client));
  // A code lens gives the text by its URI as text, a menu as an object.
  const show = (source?: string | Uri) => panel.show(typeof source === 'string' ? Uri.parse(source) : source);
  return Disposable.from(panel, registerCommand(client, command, show));
}
