/** Puts the language server together: the project, its texts, its checks, the services, and our own requests. */
import { Project } from '@fieldpair/language';
import { createEditorServices, Desk, figuresPage } from '@fieldpair/language/services';
import { startLanguageServer } from 'langium/lsp';
import { type ClientCapabilities, type Connection, DidChangeConfigurationNotification } from 'vscode-languageserver';
import type {
  Figures,
  FiguresParams,
  InitializationOptions,
  ServerNotifications,
  ServerRequests,
  WorkspaceCheck,
} from '../protocol.js';
import { WaveRunner } from '../waves/wave-runner.js';
import { Checker } from './checker.js';
import { disk, fileOf } from './disk.js';
import { serveDrawing } from './drawing.js';
import { servePackets } from './packets.js';
import { readSettings } from './settings.js';
import { Signals } from './signals.js';
import { Texts } from './texts.js';
import { serveWaves } from './waves.js';

/** Bundles beside the server's own, which are loaded when they are first needed. */
export interface Bundles {
  /** Of waves/wave-worker.ts. */
  readonly waveWorker: string;
  /** Of packet/index.ts. */
  readonly packets: string;
}

export function serve(connection: Connection, { waveWorker, packets }: Bundles): void {
  const open = new Set<string>();
  const failed = (error: unknown) =>
    connection.console.error(error instanceof Error ? (error.stack ?? error.message) : String(error));
  // A thread for rules and one for views, so that neither waits for the other.
  const signals: Signals = new Signals({
    runner: new WaveRunner(waveWorker),
    isOpen: (file) => open.has(file),
    busAt: ({ file, store, bus }) =>
      project
        .storesOf(file)
        .find(({ name }) => name === store)
        ?.buses.find(({ name }) => name === bus),
    changed: (file) => checker.touch(project.reconsider(file)),
    failed,
  });
  const project: Project = new Project(disk, { signal: signals.of });
  const desk = new Desk(project);
  const checker = new Checker({
    desk,
    isOpen: (file) => open.has(file),
    publish: (uri, diagnostics) => void connection.sendDiagnostics({ uri, diagnostics }).catch(failed),
    tell: (status) =>
      void connection.sendNotification('fieldpair/status' satisfies keyof ServerNotifications, status).catch(failed),
    failed,
  });
  const texts = new Texts(project, checker, open, () => signals.rest());
  const services = createEditorServices({
    connection,
    desk,
    failed,
    module: { lsp: { DocumentUpdateHandler: () => texts } },
  });

  let client: ClientCapabilities['workspace'];
  services.lsp.LanguageServer.onInitialize(({ workspaceFolders, capabilities, initializationOptions }) => {
    client = capabilities.workspace;
    const { rulePages, commandLinks } = (initializationOptions ?? {}) as Partial<InitializationOptions>;
    desk.commandLinks = commandLinks === true;
    if (typeof rulePages === 'string') desk.rulePages = rulePages;
    texts.folders = workspaceFolders?.map(({ uri }) => uri) ?? [];
  });

  const pullSettings = async () => {
    if (!client?.configuration) return;
    const { check, editor } = readSettings(await connection.workspace.getConfiguration('fieldpair'));
    project.configure({ ...check, signal: signals.of });
    desk.settings = editor;
    checker.touch(project.files());
    if (client.inlayHint?.refreshSupport) connection.languages.inlayHint.refresh().catch(failed);
    if (client.codeLens?.refreshSupport) connection.sendRequest('workspace/codeLens/refresh').catch(failed);
  };
  services.lsp.LanguageServer.onInitialized(() => {
    if (client?.didChangeConfiguration?.dynamicRegistration) {
      connection.client.register(DidChangeConfigurationNotification.type, { section: 'fieldpair' }).catch(failed);
    }
    if (client?.workspaceFolders) {
      connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
        const gone = new Set(removed.map(({ uri }) => uri));
        texts.folders = [...texts.folders.filter((folder) => !gone.has(folder)), ...added.map(({ uri }) => uri)];
        void texts.readWorkspace().catch(failed);
      });
    }
    void pullSettings()
      .catch(failed)
      .then(() => texts.readWorkspace())
      .catch(failed);
  });

  connection.onRequest('fieldpair/figures' satisfies keyof ServerRequests, (params: FiguresParams): Figures | null => {
    try {
      return figuresPage(desk, fileOf(params.uri), params.position) ?? null;
    } catch (error) {
      failed(error);
      return null;
    }
  });
  serveWaves(connection, desk, new WaveRunner(waveWorker));
  serveDrawing(connection, desk, failed);
  servePackets(connection, desk, packets, (files) => signals.settled(files), failed);
  connection.onRequest('fieldpair/checkWorkspace' satisfies keyof ServerRequests, async (): Promise<WorkspaceCheck> => {
    await texts.readWorkspace().catch(failed);
    await checker.settled();
    while (signals.isBusy) {
      await signals.settled();
      await checker.settled();
    }
    return checker.totals();
  });
  // A client may refuse what the libraries ask of it; that is no reason to stop serving it.
  process.on('unhandledRejection', failed);
  startLanguageServer(services);
  // What a notification carries depends on the client; what it answers to a question does not.
  connection.onDidChangeConfiguration(() => void pullSettings().catch(failed));
}
