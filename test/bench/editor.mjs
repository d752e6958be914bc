/** The language server as any editor meets it: a process of its own, spoken to over stdio by a general-purpose client. */
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-jsonrpc/node';
import { row, timed } from './report.mjs';

const keystrokes = 200;

/** @param folder where the stores of a workspace are; `alone` one with a single store, to tell what the stores take. */
export async function measureEditor(root, folder, alone, size) {
  const server = await Server.start(root, folder);
  let heap;
  try {
    row(`server: start to first diagnostics, workspace of ${size} stores`, server.firstDiagnostics, {
      unit: 'ms',
      limit: 500,
    });
    await server.settled(size);
    row('server: start to all stores checked', performance.now() - server.began, { unit: 'ms', limit: 5000 });
    const edits = [];
    for (let key = 0; key < keystrokes; key++) edits.push(await timed(() => server.type(38 + (key % 9))));
    row('server: keystroke to diagnostics, median / 95th percentile', edits, { unit: 'ms', limit: 20, digits: 1 });
    const hovers = [];
    for (let hover = 0; hover < keystrokes; hover++) hovers.push(await timed(() => server.hover(7 + (hover % 20))));
    row('server: hover, median / 95th percentile', hovers, { unit: 'ms', limit: 5, digits: 1 });
    heap = await server.heapUsed();
  } finally {
    server.stop();
  }
  const other = await Server.start(root, alone);
  try {
    await other.settled(1);
    const perStore = (heap - (await other.heapUsed())) / 1024 / (size - 1);
    row('server: heap kept per closed store', perStore, { unit: 'KB', limit: 15, digits: 1 });
  } finally {
    other.stop();
  }
}

class Server {
  #process;
  #client;
  #uri;
  #text;
  #version = 1;
  #errors = '';
  #onDiagnostics = () => undefined;
  #onStatus = () => undefined;
  began = 0;
  firstDiagnostics = 0;

  static async start(root, folder) {
    const server = new Server();
    await server.#start(root, folder);
    return server;
  }

  async #start(root, folder) {
    const file = join(folder, 'store7.pair');
    this.#uri = pathToFileURL(file).href;
    this.#text = readFileSync(file, 'utf8');
    this.began = performance.now();
    // A port for the inspector, which a signal opens once the times are taken, to ask for the heap.
    const args = ['--inspect-port=127.0.0.1:0', join(root, 'server/dist/server.cjs'), '--stdio'];
    this.#process = spawn(process.execPath, args, { stdio: 'pipe' });
    this.#process.stderr.setEncoding('utf8').on('data', (text) => {
      this.#errors += text;
    });
    const { stdout, stdin } = this.#process;
    this.#client = createMessageConnection(new StreamMessageReader(stdout), new StreamMessageWriter(stdin));
    this.#client.onNotification(
      'textDocument/publishDiagnostics',
      ({ uri }) => uri === this.#uri && this.#onDiagnostics(),
    );
    this.#client.onNotification('fieldpair/status', (status) => this.#onStatus(status));
    this.#client.onRequest('client/registerCapability', () => null);
    this.#client.listen();
    await this.#client.sendRequest('initialize', {
      processId: process.pid,
      rootUri: null,
      capabilities: { workspace: { workspaceFolders: true } },
      workspaceFolders: [{ uri: pathToFileURL(folder).href, name: 'fleet' }],
    });
    await this.#client.sendNotification('initialized', {});
    const first = this.#diagnostics();
    const textDocument = { uri: this.#uri, languageId: 'pair', version: this.#version, text: this.#text };
    await this.#client.sendNotification('textDocument/didOpen', { textDocument });
    await first;
    this.firstDiagnostics = performance.now() - this.began;
  }

  #diagnostics() {
    return new Promise((resolve) => {
      this.#onDiagnostics = resolve;
    });
  }

  /** Waits until all stores and their catalogue were checked. */
  settled(stores) {
    return new Promise((resolve) => {
      this.#onStatus = ({ checking, files }) => !checking && files > stores && resolve();
    });
  }

  /** Types another length into the first run, and waits for what is then wrong in the file. */
  async type(length) {
    const lines = this.#text.split('\n');
    const line = lines.findIndex((one) => one.includes(' ft to '));
    const [written] = /\d+/.exec(lines[line]);
    const character = lines[line].indexOf(written);
    lines[line] = lines[line].replace(written, String(length));
    this.#text = lines.join('\n');
    const answer = this.#diagnostics();
    await this.#client.sendNotification('textDocument/didChange', {
      textDocument: { uri: this.#uri, version: ++this.#version },
      contentChanges: [
        {
          range: { start: { line, character }, end: { line, character: character + written.length } },
          text: String(length),
        },
      ],
    });
    await answer;
  }

  async hover(line) {
    const character = this.#text.split('\n')[line].indexOf(' to ') + 5;
    const params = { textDocument: { uri: this.#uri }, position: { line, character } };
    const hover = await this.#client.sendRequest('textDocument/hover', params);
    if (!hover) throw new Error(`Line ${line + 1} of the store has no hover.`);
  }

  /** Bytes of the server's heap after a collection, as its own inspector tells. */
  async heapUsed() {
    this.#process.kill('SIGUSR1');
    const address = /ws:\/\/\S+/;
    while (!address.test(this.#errors)) await new Promise((resolve) => setTimeout(resolve, 20));
    const socket = new WebSocket(address.exec(this.#errors)[0]);
    await new Promise((resolve, reject) => {
      socket.onopen = resolve;
      socket.onerror = () => reject(new Error('The inspector of the server does not answer.'));
    });
    const ask = (id, method) =>
      new Promise((resolve) => {
        socket.addEventListener('message', ({ data }) => {
          const { id: answered, result } = JSON.parse(data);
          if (answered === id) resolve(result);
        });
        socket.send(JSON.stringify({ id, method }));
      });
    await ask(1, 'HeapProfiler.collectGarbage');
    const { usedSize } = await ask(2, 'Runtime.getHeapUsage');
    socket.close();
    return usedSize;
  }

  stop() {
    this.#client.dispose();
    this.#process.kill();
  }
}
