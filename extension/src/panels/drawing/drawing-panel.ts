/** The panel that shows the drawing: it asks the server, and does in the text what is done in the picture. */
import {
  type CodeAction,
  CodeActionKind,
  commands,
  Disposable,
  type Hover,
  type MarkdownString,
  Position,
  Range,
  Selection,
  TextEditorRevealType,
  Uri,
  ViewColumn,
  WorkspaceEdit,
  window,
  workspace,
} from 'vscode';
import type { Drawing, DrawingPart, Location, Range as PlainRange } from '../../../../server/src/protocol.js';
import type { Client } from '../../client.js';
import { counted } from '../../text/counted.js';
import type { Panel, PanelKeeper, PanelKind } from '../panel.js';
import type { FromDrawingPage, PagePart, ToDrawingPage } from './messages.js';
import { partAt } from './part-at.js';

type DrawingPanel = Panel<ToDrawingPage, FromDrawingPage>;

export const drawingPanel = (client: Client): PanelKind<ToDrawingPage, FromDrawingPage> => ({
  name: 'drawing',
  title: (fileName) => `Drawing of ${fileName}`,
  attend: (panel) => new DrawingKeeper(client, panel),
});

class DrawingKeeper implements PanelKeeper {
  readonly #client: Client;
  readonly #panel: DrawingPanel;
  readonly #parts: Disposable;
  #layout: { readonly width: number; readonly scale: boolean } | undefined;
  #drawing: Drawing | undefined;
  /** The part that the text's cursor is in. */
  #here: string | undefined;

  constructor(client: Client, panel: DrawingPanel) {
    this.#client = client;
    this.#panel = panel;
    this.#parts = Disposable.from(
      panel.onMessage((message) => void this.#take(message).catch((error) => this.#say(reasonOf(error)))),
      window.onDidChangeTextEditorSelection(({ textEditor }) => {
        if (textEditor !== panel.editor) return;
        this.#tellCursor();
        // Where a file has several stores, the cursor may have gone into another one than is drawn.
        if (this.#here === undefined) panel.refresh();
      }),
    );
  }

  dispose(): void {
    this.#parts.dispose();
  }

  async refresh(): Promise<void> {
    // The page says how wide it is before there is anything to draw.
    if (!this.#layout) return;
    const source = this.#panel.source.toString();
    const position = plain(this.#panel.editor?.selection.active);
    const drawing = await this.#client.request('fieldpair/drawing', {
      uri: source,
      ...(position && { position }),
      ...this.#layout,
    });
    if (source !== this.#panel.source.toString()) return;
    this.#drawing = drawing ?? undefined;
    if (drawing) {
      this.#panel.post({ kind: 'drawing', drawing: { ...drawing, parts: drawing.parts.map(pagePart) } });
      this.#tellCursor();
    } else {
      const reason = 'There is no store in this file. Open one that has a store, and its drawing appears here.';
      this.#panel.post({ kind: 'nothing', reason });
    }
  }

  async #take(message: FromDrawingPage): Promise<void> {
    if (message.kind === 'layout') {
      this.#layout = { width: message.width, scale: message.scale };
      return this.#panel.refresh();
    }
    const part = this.#partOf(message.key);
    if (!part) return;
    switch (message.kind) {
      case 'open':
        return this.#open(part.at, message.focus);
      case 'facts':
        return this.#tellFacts(part);
      case 'fixes': {
        const titles = (await fixesOf(part)).map(({ title }) => title);
        return this.#panel.post({ kind: 'fixes', key: part.key, titles });
      }
      case 'fix': {
        const fix = (await fixesOf(part)).find(({ title }) => title === message.title);
        if (!fix?.edit) return this.#say('That is mended already.');
        await workspace.applyEdit(fix.edit);
        return this.#say(`${message.title}: done.`);
      }
      case 'move':
        return this.#move(part, message.after === undefined ? undefined : this.#partOf(message.after));
    }
  }

  async #move(part: DrawingPart, after: DrawingPart | undefined): Promise<void> {
    if (part.landing === undefined) return;
    const answer = await this.#client.request('fieldpair/moveLanding', {
      at: part.at,
      landing: part.landing,
      ...(after?.landing !== undefined && { after: after.landing }),
    });
    if (answer.refused !== undefined) return this.#say(answer.refused);
    if (!answer.edits.length) return;
    const edit = new WorkspaceEdit();
    for (const { uri, edits } of answer.edits) {
      for (const { range, newText } of edits) edit.replace(Uri.parse(uri), rangeOf(range), newText);
    }
    await workspace.applyEdit(edit);
    const where = after?.landing === undefined ? 'first on its bus' : `behind ${after.landing}`;
    const lengths = answer.remeasured
      ? `; ${counted(answer.remeasured, 'length')} kept and marked to be measured again`
      : '';
    this.#say(`${part.landing} is ${where} now${lengths}.`);
  }

  async #open({ uri, range }: Location, focus: boolean): Promise<void> {
    const document = await workspace.openTextDocument(Uri.parse(uri));
    const shown = window.visibleTextEditors.find((editor) => editor.document === document);
    const editor = await window.showTextDocument(document, {
      viewColumn: shown?.viewColumn ?? ViewColumn.One,
      preserveFocus: !focus,
    });
    const target = rangeOf(range);
    editor.selection = new Selection(target.start, target.end);
    editor.revealRange(target, TextEditorRevealType.InCenterIfOutsideViewport);
  }

  async #tellFacts(part: DrawingPart): Promise<void> {
    const { uri, range } = part.at;
    const place = rangeOf(range).start;
    const hovers = await commands.executeCommand<Hover[]>('vscode.executeHoverProvider', Uri.parse(uri), place);
    const markdown = hovers.flatMap(({ contents }) =>
      contents.map((content) => (typeof content === 'string' ? content : (content as MarkdownString).value)),
    );
    this.#panel.post({ kind: 'facts', key: part.key, markdown });
  }

  #tellCursor(): void {
    const { editor } = this.#panel;
    if (!editor || !this.#drawing) return;
    const uri = editor.document.uri.toString();
    const isFile = (one: string) => Uri.parse(one).toString() === uri;
    const position = plain(editor.selection.active);
    this.#here = position && partAt(this.#drawing.parts, isFile, position)?.key;
    this.#panel.post({ kind: 'here', key: this.#here });
  }

  #partOf(key: string): DrawingPart | undefined {
    return this.#drawing?.parts.find((part) => part.key === key);
  }

  #say(text: string): void {
    this.#panel.post({ kind: 'say', text });
  }
}

/** The quick fixes where a part's findings are, the same that the light bulb offers there. */
async function fixesOf({ findings }: DrawingPart): Promise<CodeAction[]> {
  const fixes = new Map<string, CodeAction>();
  for (const { at, waived } of findings) {
    if (waived !== undefined) continue;
    const actions = await commands.executeCommand<CodeAction[]>(
      'vscode.executeCodeActionProvider',
      Uri.parse(at.uri),
      rangeOf(at.range),
      CodeActionKind.QuickFix.value,
    );
    for (const action of actions) if (action.edit && !fixes.has(action.title)) fixes.set(action.title, action);
  }
  return [...fixes.values()];
}

const pagePart = ({ key, kind, group, name, markup, landing, findings }: DrawingPart): PagePart => ({
  key,
  kind,
  group,
  name,
  markup,
  ...(landing !== undefined && { landing }),
  findings: findings.map(({ severity, message, waived }) => ({
    severity,
    message,
    ...(waived !== undefined && { waived }),
  })),
});

const rangeOf = ({ start, end }: PlainRange): Range =>
  new Range(new Position(start.line, start.character), new Position(end.line, end.character));

const plain = (position: Position | undefined) => position && { line: position.line, character: position.character };

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
