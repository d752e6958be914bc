import { Disposable, Uri, window } from 'vscode';
import type { ShowFiguresCommand } from '../../../server/src/protocol.js';
import type { Client } from '../client.js';
import { FiguresKeeper } from '../panels/figures/keeper.js';
import type { FromFiguresPage, ToFiguresPage } from '../panels/figures/messages.js';
import { registerPanel } from '../panels/panel.js';
import type { Place } from '../text/moved-place.js';
import { registerCommand } from './command.js';

const command: ShowFiguresCommand = 'fieldpair.showFigures';

/** `Show Figures of This Bus`: a page beside the text, which follows the text as it is edited. */
export function figures(client: Client): Disposable {
  let keeper: FiguresKeeper | undefined;
  const panel = registerPanel<ToFiguresPage, FromFiguresPage>(client, {
    name: 'figures',
    title: (fileName) => `Figures: ${fileName}`,
    attend: (one) => {
      keeper = new FiguresKeeper(client, one);
      return keeper;
    },
  });
  // A code lens names its bus by a place in it; a menu names the file, and the cursor the bus.
  const show = (source?: string | Uri, position?: Place) => {
    const uri = typeof source === 'string' ? Uri.parse(source) : source;
    panel.show(uri);
    const editor = uri
      ? window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri.toString())
      : window.activeTextEditor;
    const cursor = editor?.document.languageId === 'fieldpair' ? editor.selection.active : undefined;
    const place = position ?? cursor;
    if (place) keeper?.show(place);
  };
  return Disposable.from(panel, registerCommand(client, command, show));
}
