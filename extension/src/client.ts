/** The connection to the language server: one server for all folders of a window, started anew after a crash. */
import {
  type CancellationToken,
  type Disposable,
  EventEmitter,
  type ExtensionContext,
  window,
  workspace,
} from 'vscode';
import { LanguageClient, type LanguageClientOptions, State, TransportKind } from 'vscode-languageclient/node';
import type { ServerNotifications, ServerRequests } from '../../server/src/protocol.js';

export type ServerState = 'starting' | 'running' | 'stopped';

export class Client implements Disposable {
  readonly log = window.createOutputChannel('Fieldpair', { log: true });
  readonly #serverFile: string;
  readonly #watcher = workspace.createFileSystemWatcher('**/*.pair');
  readonly #onState = new EventEmitter<ServerState>();
  readonly #onStatus = new EventEmitter<ServerNotifications['fieldpair/status']>();
  #current: LanguageClient | undefined;

  readonly onState = this.#onState.event;
  readonly onStatus = this.#onStatus.event;

  constructor(context: ExtensionContext) {
    this.#serverFile = context.asAbsolutePath('dist/server.cjs');
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
    // The client reports a failure itself; nothing that awaits the start has anything to add.
    await client.start().catch(() => undefined);
  }

  async restart(): Promise<void> {
    const previous = this.#current;
    this.#current = undefined;
    // A server that has crashed or hangs cannot be stopped in good order; the new one does not wait for it.
    await previous?.dispose().catch(() => undefined);
    await this.start();
  }

  /** Asks the server; waits for it when it is starting. */
  async request<Method extends keyof ServerRequests>(
    method: Method,
    params: ServerRequests[Method]['params'],
    token?: CancellationToken,
  ): Promise<ServerRequests[Method]['result']> {
    if (!this.#current) throw new Error('The language server is not running.');
    return this.#current.sendRequest(method, params, token);
  }

  async dispose(): Promise<void> {
    const last = this.#current;
    this.#current = undefined;
    for (const part of [this.#watcher, this.#onState, this.#onStatus]) part.dispose();
    await last?.dispose().catch(() => undefined);
    this.log.dispose();
  }

  #options(): LanguageClientOptions {
    return {
      documentSelector: [
        { scheme: 'file', language: 'fieldpair' },
        { scheme: 'untitled', language: 'fieldpair' },
      ],
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

const stateNames: Readonly<Record<State, ServerState>> = {
  [State.Starting]: 'starting',
  [State.Running]: 'running',
  [State.Stopped]: 'stopped',
  [State.StartFailed]: 'stopped',
};

/** Writes every failure to the log, and reports once that the server is gone for good. */
class ReportingClient extends LanguageClient {
  readonly #stopped: () => void;
  #reported = false;

  constructor(serverFile: string, options: LanguageClientOptions, stopped: () => void) {
    super(
      'fieldpair',
      'Fieldpair',
      { module: serverFile, transport: TransportKind.ipc },
      {
        ...options,
        // The failure itself is logged by `error`; to answer `true` here would try for ever.
        initializationFailedHandler: () => false,
      },
    );
    this.#stopped = stopped;
  }

  override error(message: string, data?: unknown, show: boolean | 'force' = true): void {
    super.error(message, data, false);
    // 'force' marks the failures after which the client gives up.
    if (show !== 'force' || this.#reported) return;
    this.#reported = true;
    this.#stopped();
  }
}
