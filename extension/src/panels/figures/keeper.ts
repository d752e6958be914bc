/** The extension's side of the page of figures: it shows the bus where the cursor is, and stays with it elsewhere. */
import { Disposable, Range, Uri, ViewColumn, window, workspace } from 'vscode';
import type { Figures } from '../../../../server/src/protocol.js';
import type { Client } from '../../client.js';
import { movedBy, type Place } from '../../text/moved-place.js';
import type { Panel, PanelKeeper } from '../panel.js';
import type { FromFiguresPage, ToFiguresPage } from './messages.js';

export class FiguresKeeper implements PanelKeeper {
  readonly #client: Client;
  readonly #panel: Panel<ToFiguresPage, FromFiguresPage>;
  readonly #parts: Disposable;
  /** Where to look next; undefined once that was done. */
  #wanted: Place | undefined;
  /** A place in the bus that is shown, and the text that it is in. */
  #shown: { readonly uri: string; place: Place } | undefined;
  #figures: Figures | undefined;

  constructor(client: Client, panel: Panel<ToFiguresPage, FromFiguresPage>) {
    this.#client = client;
    this.#panel = panel;
    this.#wanted = placeIn(panel);
    this.#parts = Disposable.from(
      panel.onMessage(({ goTo }) => void this.#goTo(goTo)),
      window.onDidChangeTextEditorSelection(({ textEditor }) => {
        if (textEditor === panel.editor) this.show(textEditor.selection.active);
      }),
      workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
        const shown = this.#shown;
        if (shown?.uri === document.uri.toString()) shown.place = movedBy(shown.place, contentChanges);
      }),
    );
  }

  /** Shows the bus at a place of the text; the one that is shown already when there is none. */
  show({ line, character }: Place): void {
    this.#wanted = { line, character };
    this.#panel.refresh();
  }

  async refresh(): Promise<void> {
    const uri = this.#panel.source.toString();
    if (this.#shown?.uri !== uri) this.#shown = undefined;
    const wanted = this.#wanted ?? (this.#shown ? undefined : placeIn(this.#panel));
    this.#wanted = undefined;
    let figures = wanted && (await this.#client.request('fieldpair/figures', { uri, position: wanted }));
    if (figures && wanted) this.#shown = { uri, place: wanted };
    else if (this.#shown) {
      figures = await this.#client.request('fieldpair/figures', { uri, position: this.#shown.place });
    }
    if (uri !== this.#panel.source.toString()) return;
    this.#figures = figures ?? undefined;
    if (!figures) this.#panel.post({ nothing: 'Put the cursor into a bus to see its figures.' });
    else this.#panel.post({ figures: { ...figures, rows: figures.rows.map(({ cells }) => ({ cells })) } });
  }

  dispose(): void {
    this.#parts.dispose();
  }

  async #goTo(row: number): Promise<void> {
    const at = this.#figures?.rows[row]?.at;
    if (!at) return;
    const { start, end } = at.range;
    const selection = new Range(start.line, start.character, end.line, end.character);
    const uri = Uri.parse(at.uri);
    const shown = window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri.toString());
    await window.showTextDocument(uri, { selection, viewColumn: shown?.viewColumn ?? ViewColumn.One });
  }
}

/** Where the cursor is in the text that a panel shows. */
function placeIn({ editor }: Panel<ToFiguresPage, FromFiguresPage>): Place | undefined {
  if (!editor) return undefined;
  const { line, character } = editor.selection.active;
  return { line, character };
}
