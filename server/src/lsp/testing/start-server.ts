/** The server as any editor meets it: a process of its own, spoken to over stdio by a general-purpose JSON-RPC client. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import {
  createMessageConnection,
  type MessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';

export interface RunningServer {
  readonly process: ChildProcess;
  readonly client: MessageConnection;
  /** The diagnostics that were published last, by the URI of their file. */
  readonly published: ReadonlyMap<string, readonly unknown[]>;
  /** Ends the process as an editor does. */
  stop(): Promise<void>;
}

export interface StartOptions {
  /** The folder that the editor has open. */
  readonly folder: string;
  readonly initializationOptions?: object;
  /** What the editor's settings are when the server asks. */
  readonly settings?: () => object;
  /** Called before the server is asked anything: where further notifications can be listened to. */
  readonly prepare?: (client: MessageConnection) => void;
}

const source = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** Bundles the server as it is shipped, starts it and opens a folder. */
export async function startServer(options: StartOptions): Promise<RunningServer> {
  const { folder, initializationOptions = {}, settings = () => ({}), prepare } = options;
  const place = mkdtempSync(join(tmpdir(), 'fieldpair-bundle-'));
  const bundle = join(place, 'server.cjs');
  await build({
    entryPoints: {
      server: source('../../main.ts'),
      'wave-worker': source('../../waves/wave-worker.ts'),
      packets: source('../../packet/index.ts'),
    },
    alias: { pdfkit: source('../../../../node_modules/pdfkit/js/pdfkit.js') },
    loader: { '.ttf': 'binary' },
    target: 'node22',
    bundle: true,
    platform: 'node',
    format: 'cjs',
    outdir: place,
    outExtension: { '.js': '.cjs' },
    logLevel: 'error',
  });
  const process_ = spawn(process.execPath, [bundle, '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
  const client = createMessageConnection(
    new StreamMessageReader(process_.stdout),
    new StreamMessageWriter(process_.stdin),
  );
  const published = new Map<string, readonly unknown[]>();
  client.onNotification(
    'textDocument/publishDiagnostics',
    ({ uri, diagnostics }: { uri: string; diagnostics: unknown[] }) => void published.set(uri, diagnostics),
  );
  // A client that promises more than it does must not bring the server down.
  client.onRequest('client/registerCapability', () => {
    throw new Error('refused');
  });
  client.onRequest('workspace/configuration', () => [settings()]);
  prepare?.(client);
  client.listen();
  await client.sendRequest('initialize', {
    processId: process.pid,
    rootUri: null,
    initializationOptions,
    capabilities: {
      workspace: { configuration: true, workspaceFolders: true, didChangeConfiguration: { dynamicRegistration: true } },
    },
    workspaceFolders: [{ uri: pathToFileURL(folder).href, name: 'test' }],
  });
  await client.sendNotification('initialized', {});
  return {
    process: process_,
    client,
    published,
    stop: async () => {
      await client.sendRequest('shutdown');
      await client.sendNotification('exit');
      client.dispose();
      rmSync(place, { recursive: true, force: true });
    },
  };
}
