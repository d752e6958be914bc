import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it, onTestFinished, vi } from 'vitest';
import { runCommandLine } from '../program.js';
import { recordingTerminal, sandbox } from '../testing/sandbox.js';

const board = 'device Board {\n  port field : rs485 {\n    address dial 1..99\n  }\n}\n';
const store = (address: number) => `import "../board.pair"
store alder {
  node n1 : Board
  node n2 : Board
  bus b : rs485 9600 8E1 {
    from n1 address 7
    10 ft to n2 address ${address}
  }
}
`;

it('checks again after every change: of a file, of an import, of which files there are', async () => {
  const { folder, write } = sandbox({ 'board.pair': board, 'stores/a.pair': store(8) });
  const { terminal, printed } = recordingTerminal({ workingFolder: folder });
  const leave = new AbortController();
  const args = [
    'check',
    'stores',
    '--watch',
    '--rule',
    'address-clash',
    'address-not-settable',
    'address-out-of-range',
  ];
  const done = runCommandLine(args, { ...terminal, left: leave.signal });
  onTestFinished(() => leave.abort());
  const sees = (text: string) =>
    vi.waitFor(() => expect(printed.out + printed.error).toContain(text), { timeout: 20_000 });

  await sees('Nothing found in 1 file');
  // The watcher needs a moment before it sees anything.
  await vi.waitFor(
    async () => {
      write('stores/a.pair', store(7));
      await new Promise((resolve) => setTimeout(resolve, 300));
      expect(printed.out).toContain('both have address 7');
    },
    { timeout: 20_000 },
  );
  expect(printed.out).toContain('stores/a.pair changed');
  printed.out = '';
  write('board.pair', board.replace('1..99', '8..99'));
  await sees('board.pair changed');
  await sees('address 7');
  printed.out = '';
  write('stores/b.pair', store(9).replace('alder', 'beech'));
  await sees('in 2 files');
  rmSync(join(folder, 'stores'), { recursive: true });
  await sees('fieldpair: cannot read stores: there is no such file or folder');
  leave.abort();
  expect(await done).toBe(0);
});

it('prints text, and leaves shares and kept answers to checks that end', async () => {
  const { run } = sandbox({ 'a.pair': 'store alder {\n}\n' });
  expect(await run('check', '.', '--watch', '--format', 'json')).toEqual({
    status: 2,
    out: '',
    error: 'fieldpair: --watch prints text only; leave --format out\n',
  });
  expect((await run('check', '.', '--watch', '--cache')).status).toBe(2);
  expect((await run('check', 'none.pair', '--watch')).error).toBe(
    'fieldpair: cannot read none.pair: there is no such file or folder\n',
  );
});
