import { Disposable, Position, Selection, Uri, window } from 'vscode';
import type { DrawStoreCommand, Position as Place } from '../../../server/src/protocol.js';
import type { Client } from '../client.js';
import { drawingPanel } from '../panels/drawing/drawing-panel.js';
import { registerPanel } from '../panels/panel.js';
import { registerCommand } from './command.js';

const command: DrawStoreCommand = 'fieldpair.drawStore';

/** `Draw This Store`: the wiring as a picture beside the text, which follows the text as it is edited. */
export function drawing(client: Client): Disposable {
  const panel = registerPanel(client, drawingPanel(client));
  // A menu gives the text by its URI; a code lens gives it as text, with the place of its store.
  const show = (source?: string | Uri, position?: Place) => {
    const uri = typeof source === 'string' ? Uri.parse(source) : source;
    const editor = window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri?.toString());
    if (editor && position && typeof source === 'string') {
      const start = new Position(position.line, position.character);
      editor.selection = new Selection(start, start);
    }
    panel.show(uri);
  };
  return Disposable.from(panel, registerCommand(client, command, show));
}
