/** The connection to the language server: one server for all folders of a window, started anew after a crash. */
import {
  type CancellationToken,
  type Disposable,
  EventEmitter,
  type ExtensionContext,
  type Memento,
  Uri,
  window,
  workspace,
} from 'vscode';
import { LanguageClient, type LanguageClientOptions, State, TransportKind } from 'vscode-languageclient/node';
import type {
  InitializationOptions,
  OpenReferenceCommand,
  ServerNotifications,
  ServerRequests,
  ShowWavesCommand,
} from '../../server/src/protocol.js';

/** Milliseconds in which the restarts after a crash have either succeeded or been given up. */
const settlingTime = 3000;

export type ServerState = 'starting' | 'running' | 'stopped';

export class Client implements Disposable {
  readonly log = window.createOutputChannel('Fieldpair', { log: true });
  /** Where the extension is installed. */
  readonly extensionUri: Uri;
  /** Kept for this workspace from one session to the next. */
  readonly memory: Memento;
  readonly #serverFile: string;
  readonly #rulePages: string;
  readonly #watcher = workspace.createFileSystemWatcher('**/*.pair');
  readonly #onState = new EventEmitter<ServerState>();
  readonly #onStatus = new EventEmitter<ServerNotifications['fieldpair/status']>();
  #current: LanguageClient | undefined;

  readonly onState = this.#onState.event;
  readonly onStatus = this.#onStatus.event;

  constructor(context: ExtensionContext) {
    this.extensionUri = context.extensionUri;
    this.memory = context.workspaceState;
    this.#serverFile = context.asAbsolutePath('dist/server.cjs');
    this.#rulePages = `${Uri.joinPath(context.extensionUri, 'rules').toString()}/`;
  }

  /** Starts the server. When that fails, the user has been told, and `restart` may be tried. */
  async start(): Promise<void> {
    // A client whose start has failed cannot be started again, so each start has a client of its own.
    const client = new ReportingClient(this.#serverFile, this.#options(), () => {
      if (client === this.#current) this.#tellStopped();
    });
    this.#current = client;
    client.onDidChangeState(({ newState }) => {
      if (client === this.#current) this.#onState.fire(stateNames[newState]);
    });
    client.onNotification('fieldpair/status' satisfies keyof ServerNotifications, (status) => {
      this.#onStatus.fire(status);
    });
    const began = performance.now();
    // The client reports a failure itself; nothing that awaits the start has anything to add.
    await client.start().then(
      () => this.log.info(`The language server runs; its start took ${Math.round(performance.now() - began)} ms.`),
      () => undefined,
    );
  }

  async restart(): Promise<void> {
    const previous = this.#current;
    this.#current = undefined;
    await previous?.dispose();
    await this.start();
  }

  /** Asks the server; waits for it when it is starting. It rejects when the token says that nobody waits any more. */
  async request<Method extends keyof ServerRequests>(
    method: Method,
    params: ServerRequests[Method]['params'],
    token?: CancellationToken,
  ): Promise<ServerRequests[Method]['result']> {
    const state = this.#current?.state;
    if (!this.#current || state === State.Stopped || state === State.StartFailed) {
      throw new Error('The language server does not run. The command "Fieldpair: Restart Language Server" starts it.');
    }
    // An undefined token would be sent along as a second parameter.
    return token ? this.#current.sendRequest(method, params, token) : this.#current.sendRequest(method, params);
  }

  async dispose(): Promise<void> {
    const last = this.#current;
    this.#current = undefined;
    for (const part of [this.#watcher, this.#onState, this.#onStatus]) part.dispose();
    await last?.dispose();
    this.log.dispose();
  }

  #options(): LanguageClientOptions {
    return {
      documentSelector: [
        { scheme: 'file', language: 'fieldpair' },
        { scheme: 'untitled', language: 'fieldpair' },
      ],
      initializationOptions: { rulePages: this.#rulePages, commandLinks: true } satisfies InitializationOptions,
      markdown: { isTrusted: { enabledCommands: linkedCommands } },
      synchronize: { fileEvents: this.#watcher },
      outputChannel: this.log,
    };
  }

  #tellStopped(): void {
    this.#onState.fire('stopped');
    const message = 'The Fieldpair language server does not run, so files are coloured but not checked.';
    void window.showErrorMessage(message, 'Show Log', 'Start Again').then((choice) => {
      if (choice === 'Show Log') this.log.show();
      if (choice === 'Start Again') void this.restart();
    });
  }
}

/** The commands that hovers may link to. */
const linkedCommands: (ShowWavesCommand | OpenReferenceCommand)[] = ['fieldpair.showWaves', 'fieldpair.openReference'];

const stateNames: Readonly<Record<State, ServerState>> = {
  [State.Starting]: 'starting',
  [State.Running]: 'running',
  [State.Stopped]: 'stopped',
  [State.StartFailed]: 'stopped',
};

/** Writes every failure to the log, and reports once when the server is gone for good. */
class ReportingClient extends LanguageClient {
  readonly #stopped: () => void;
  #reported = false;

  constructor(serverFile: string, options: LanguageClientOptions, stopped: () => void) {
    const server = { module: serverFile, transport: TransportKind.ipc };
    // The failure itself is logged by `error`; to answer `true` here would try for ever.
    super('fieldpair', 'Fieldpair', server, { ...options, initializationFailedHandler: () => false });
    this.#stopped = stopped;
  }

  override error(message: string, data?: unknown, show: boolean | 'force' = true): void {
    super.error(message, data, false);
    // 'force' marks the failures after which nothing works, yet a crash at the start is one too and may be followed by
    // a start that succeeds.
    if (show !== 'force') return;
    setTimeout(() => {
      if (this.state === State.Running || this.#reported) return;
      this.#reported = true;
      this.#stopped();
    }, settlingTime);
  }

  /** A server that has crashed or hangs cannot be stopped in good order, which is nothing to act on. */
  override async stop(timeout?: number): Promise<void> {
    await super.stop(timeout).catch((error: unknown) => this.debug('Not stopped in good order.', error, false));
  }
}
