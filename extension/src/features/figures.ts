import { Disposable, EventEmitter, languages, Uri, ViewColumn, window, workspace } from 'vscode';
import type { ShowFiguresCommand } from '../../../server/src/protocol.js';
import type { Client } from '../client.js';
import { movedBy, type Place } from '../text/moved-place.js';
import { registerCommand } from './command.js';

const command: ShowFiguresCommand = 'fieldpair.showFigures';
const scheme = 'fieldpair-figures';

/** Where the bus of an open page of figures is written. */
interface Source {
  readonly uri: string;
  position: Place;
}

/** `Show Figures of This Bus`: a read-only page beside the text, which follows the text as it is edited. */
export function figures(client: Client): Disposable {
  // Kept after its page is closed: to give a page its language closes and opens it, and there are few.
  const sources = new Map<string, Source>();
  const changed = new EventEmitter<Uri>();
  const isOpen = (page: string) => workspace.textDocuments.some((document) => document.uri.toString() === page);

  const show = async (uri?: string, position?: Place) => {
    const source = uri && position ? { uri, position } : placeOfCursor();
    if (!source) return;
    const found = await client.request('fieldpair/figures', source);
    if (!found) {
      void window.showInformationMessage('Put the cursor into a bus to see its figures.');
      return;
    }
    // The path becomes the title of the tab, and the query tells pages of equal titles apart.
    const path = `/${found.title.replaceAll(/[/\\]/g, '-')}`;
    const page = Uri.from({ scheme, path, query: source.uri });
    sources.set(page.toString(), source);
    changed.fire(page);
    const document = await workspace.openTextDocument(page);
    await languages.setTextDocumentLanguage(document, 'fieldpair-figures');
    await window.showTextDocument(document, { viewColumn: ViewColumn.Beside, preserveFocus: true });
  };

  return Disposable.from(
    changed,
    registerCommand(client, command, show),
    workspace.registerTextDocumentContentProvider(scheme, {
      onDidChange: changed.event,
      provideTextDocumentContent: async (page) => {
        const source = sources.get(page.toString());
        const found = source && (await client.request('fieldpair/figures', source));
        return found ? found.text : 'This bus is no longer where it was. Close this page and show its figures again.\n';
      },
    }),
    client.onStatus(({ checking }) => {
      if (checking) return;
      for (const page of sources.keys()) if (isOpen(page)) changed.fire(Uri.parse(page));
    }),
    workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
      for (const source of sources.values()) {
        if (source.uri === document.uri.toString()) source.position = movedBy(source.position, contentChanges);
      }
    }),
  );
}

function placeOfCursor(): Source | undefined {
  const editor = window.activeTextEditor;
  if (editor?.document.languageId !== 'fieldpair') return undefined;
  const { line, character } = editor.selection.active;
  return { uri: editor.document.uri.toString(), position: { line, character } };
}
