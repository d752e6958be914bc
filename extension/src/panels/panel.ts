/**
 * Panels: pages beside a `.pair` text that show what the server makes of it and follow it as it is edited.
 *
 * A panel has two sides. In the extension, `attend` asks the server and posts to the page; in the page, a script in
 * `<name>/page/main.ts` draws. The build finds these scripts and puts them, with the styles that they import, into
 * `dist/pages`. Everything that is common stands here and in `page/`: security, following the text, restoring after a
 * reload, disposal.
 *
 * To add one: a `PanelKind` and its `registerPanel` in a feature, a `page/main.ts` that calls `connect`, and
 * `onWebviewPanel:fieldpair.<name>` among the activation events.
 */
import { randomBytes } from 'node:crypto';
import {
  Disposable,
  type Event,
  EventEmitter,
  type TextDocument,
  type TextEditor,
  Uri,
  ViewColumn,
  type WebviewPanel,
  window,
  workspace,
} from 'vscode';
import type { Client } from '../client.js';
import { Latest } from './latest.js';
import type { FromAnyPage, ToAnyPage } from './messages.js';
import { pageHtml } from './page-html.js';

/** What one sort of panel is. Messages are plain data: they pass through JSON. */
export interface PanelKind<ToPage, FromPage> {
  /** One word; `dist/pages/<name>.js` and `.css` are its page. */
  readonly name: string;
  /** The title of its tab for a file's name. */
  readonly title: (fileName: string) => string;
  /** Whether the editor's own search goes through its page. */
  readonly searchable?: boolean;
  /** Looks after one panel for as long as it is open. */
  readonly attend: (panel: Panel<ToPage, FromPage>) => PanelKeeper;
}

/** One open panel, as its keeper sees it. */
export interface Panel<ToPage, FromPage> {
  /** The text that is shown now. It changes when another `.pair` file becomes the active one. */
  readonly source: Uri;
  /** An editor that shows the text, if one is open. */
  readonly editor: TextEditor | undefined;
  readonly onMessage: Event<FromPage>;
  post(message: ToPage): void;
  /** Has the keeper refresh, as after an edit. */
  refresh(): void;
}

export interface PanelKeeper extends Disposable {
  /**
   * Shows the text as it is now. Called when the page is new, when another text is followed, after edits and after
   * checks; never twice at a time, and once more at the end when something changed meanwhile.
   */
  refresh(): Promise<void>;
}

/** The way to a panel; there is at most one of a kind. */
export interface PanelOpener extends Disposable {
  /** Opens the panel, or brings it to the front, for a text; for that of the active editor when none is given. */
  show(source?: Uri): void;
}

export function registerPanel<ToPage, FromPage>(client: Client, kind: PanelKind<ToPage, FromPage>): PanelOpener {
  const viewType = `fieldpair.${kind.name}`;
  let open: OpenPanel<ToPage, FromPage> | undefined;
  const take = (webview: WebviewPanel, source: Uri) => {
    open?.dispose();
    const panel = new OpenPanel(client, kind, webview, source);
    open = panel;
    webview.onDidDispose(() => {
      panel.dispose();
      if (open === panel) open = undefined;
    });
  };
  const serializer = window.registerWebviewPanelSerializer(viewType, {
    async deserializeWebviewPanel(webview, state: unknown) {
      const source = (state as { readonly source?: unknown } | undefined)?.source;
      if (typeof source === 'string') take(webview, Uri.parse(source));
      else webview.dispose();
    },
  });
  return {
    show: (source = activePair()) => {
      if (!source) {
        void window.showInformationMessage('Open a .pair file first.');
      } else if (open) {
        open.follow(source);
        open.reveal();
      } else {
        const column = { viewColumn: ViewColumn.Beside, preserveFocus: true };
        const options = { enableFindWidget: kind.searchable ?? false };
        take(window.createWebviewPanel(viewType, kind.title(fileNameOf(source)), column, options), source);
      }
    },
    dispose: () => {
      serializer.dispose();
      open?.dispose();
    },
  };
}

class OpenPanel<ToPage, FromPage> implements Panel<ToPage, FromPage> {
  readonly #kind: PanelKind<ToPage, FromPage>;
  readonly #webview: WebviewPanel;
  readonly #onMessage = new EventEmitter<FromPage>();
  readonly #parts: Disposable;
  readonly #latest: Latest;
  #source: Uri;
  #isOpen = true;

  readonly onMessage = this.#onMessage.event;

  constructor(client: Client, kind: PanelKind<ToPage, FromPage>, webview: WebviewPanel, source: Uri) {
    this.#kind = kind;
    this.#webview = webview;
    this.#source = source;
    const pages = Uri.joinPath(client.extensionUri, 'dist', 'pages');
    const icon = (theme: string) => Uri.joinPath(client.extensionUri, 'icons', `pair-file-${theme}.svg`);
    webview.iconPath = { light: icon('light'), dark: icon('dark') };
    webview.webview.options = { enableScripts: true, localResourceRoots: [pages] };
    const keeper = kind.attend(this);
    this.#latest = new Latest(async () => {
      try {
        await keeper.refresh();
      } catch (error) {
        // A server that has stopped says so itself; the page keeps what it shows until there is an answer again.
        client.log.warn(`${kind.name}: ${error instanceof Error ? error.message : String(error)}`);
      }
    });
    this.#parts = Disposable.from(
      keeper,
      this.#latest,
      this.#onMessage,
      webview.webview.onDidReceiveMessage((message: FromAnyPage<FromPage>) => this.#take(message)),
      window.onDidChangeActiveTextEditor(
        (editor) => editor && isPair(editor.document) && this.follow(editor.document.uri),
      ),
      // What is imported may have changed as well, so every text counts.
      workspace.onDidChangeTextDocument(({ document }) => isPair(document) && this.#latest.ask()),
      client.onStatus(({ checking }) => checking || this.#latest.ask()),
    );
    this.#retitle();
    const uriOf = (file: string) => webview.webview.asWebviewUri(Uri.joinPath(pages, file)).toString();
    webview.webview.html = pageHtml({
      title: kind.title(fileNameOf(source)),
      script: uriOf(`${kind.name}.js`),
      style: uriOf(`${kind.name}.css`),
      cspSource: webview.webview.cspSource,
      nonce: randomBytes(16).toString('base64url'),
    });
  }

  get source(): Uri {
    return this.#source;
  }

  get editor(): TextEditor | undefined {
    const shown = this.#source.toString();
    return window.visibleTextEditors.find(({ document }) => document.uri.toString() === shown);
  }

  post(message: ToPage): void {
    this.#send({ own: message });
  }

  refresh(): void {
    this.#latest.ask();
  }

  follow(source: Uri): void {
    if (source.toString() === this.#source.toString()) return;
    this.#source = source;
    this.#retitle();
    this.#send({ source: source.toString() });
    this.#latest.ask();
  }

  reveal(): void {
    this.#webview.reveal(undefined, true);
  }

  dispose(): void {
    this.#isOpen = false;
    this.#parts.dispose();
    this.#webview.dispose();
  }

  #retitle(): void {
    this.#webview.title = this.#kind.title(fileNameOf(this.#source));
  }

  #take(message: FromAnyPage<FromPage>): void {
    if ('own' in message) {
      this.#onMessage.fire(message.own);
    } else {
      // The page's script runs, after the panel was opened or was hidden and is seen again.
      this.#send({ source: this.#source.toString() });
      this.#latest.ask();
    }
  }

  #send(message: ToAnyPage<ToPage>): void {
    // An answer may come after the panel was closed. A page that is hidden gets nothing and asks when it is seen again.
    if (this.#isOpen) void this.#webview.webview.postMessage(message);
  }
}

const isPair = ({ languageId, uri }: TextDocument) =>
  languageId === 'fieldpair' && (uri.scheme === 'file' || uri.scheme === 'untitled');

function activePair(): Uri | undefined {
  const document = window.activeTextEditor?.document;
  return document && isPair(document) ? document.uri : undefined;
}

const fileNameOf = ({ path }: Uri) => path.slice(path.lastIndexOf('/') + 1);
