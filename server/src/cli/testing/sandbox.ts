/** A folder of its own for a test, and a terminal that keeps what is printed. */
import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { onTestFinished } from 'vitest';
import { runCommandLine } from '../program.js';
import type { Terminal } from '../terminal.js';

export interface Run {
  readonly status: number;
  readonly out: string;
  readonly error: string;
}

export interface Sandbox {
  readonly folder: string;
  write(file: string, content: string | Uint8Array): string;
  run(...args: string[]): Promise<Run>;
}

/** The folder is removed when the test ends. */
export function sandbox(files: Readonly<Record<string, string>> = {}): Sandbox {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'fieldpair-')));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const write = (file: string, content: string | Uint8Array) => {
    const path = join(folder, file);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, content);
    return path;
  };
  for (const [file, text] of Object.entries(files)) write(file, text);
  return {
    folder,
    write,
    async run(...args) {
      const { terminal, printed } = recordingTerminal({ workingFolder: folder });
      const status = await runCommandLine(args, terminal);
      return { status, ...printed };
    },
  };
}

export function recordingTerminal(
  settings: Partial<Pick<Terminal, 'workingFolder' | 'colour' | 'drawsProgress'>> = {},
) {
  const printed = { out: '', error: '' };
  const terminal: Terminal = {
    workingFolder: '/',
    colour: false,
    drawsProgress: false,
    ...settings,
    out: (text) => {
      printed.out += text;
    },
    error: (text) => {
      printed.error += text;
    },
  };
  return { terminal, printed };
}
