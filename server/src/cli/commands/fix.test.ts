import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { runCommandLine } from '../program.js';

const unterminated = `cable Pair22 {
  conductor 22 AWG stranded
  twisted pairs 1
  shield foil drain
  impedance 120 ohm
}
device Panel { role head port field : rs485 { terminals + "D+" - "D-" shield "SH" terminator switch 120 ohm } }
device Board { port field : rs485 { terminals + "D+" - "D-" shield "SH" address dial 1..99 } }
store northgate {
  node head : Panel
  bus cases : modbus-rtu 19200 8E1 on Pair22 {
    from head
    40 ft to a : Board address 1
    shield earthed at head
    colours + white - blue
  }
}
`;

describe('fieldpair fix', () => {
  let folder = '';
  let out = '';
  const run = (...args: string[]) =>
    runCommandLine(args, {
      workingFolder: folder,
      colour: false,
      out: (text: string) => {
        out += text;
      },
      error: () => undefined,
      progress: undefined,
    } as never);

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'fieldpair-fix-'));
    out = '';
    writeFileSync(join(folder, 'store.pair'), unterminated);
  });
  afterEach(() => rmSync(folder, { recursive: true }));

  it('switches on the terminator that is there, and says what it leaves and why', async () => {
    expect(await run('fix', 'store.pair')).toBe(0);
    const text = readFileSync(join(folder, 'store.pair'), 'utf8');
    expect(text).toBe(unterminated.replace('from head\n', 'from head terminate switch\n'));
    expect(out).toBe(
      [
        'store.pair:12  Switch on the terminator of head  end-unterminated',
        'Left, since the fix is for you to choose:',
        '  store.pair:13:14  Terminate a with a 120 ohm resistor  end-unterminated',
        '1 fix in 1 of 1 file; 1 finding left.',
        '',
      ].join('\n'),
    );
  });

  it('keeps a byte order mark and the line ends', async () => {
    const file = join(folder, 'store.pair');
    writeFileSync(file, `\uFEFF${unterminated.replaceAll('\n', '\r\n')}`);
    await run('fix', 'store.pair');
    const text = readFileSync(file, 'utf8');
    expect(text.startsWith('\uFEFFcable')).toBe(true);
    expect(text).toContain('from head terminate switch\r\n');
    expect(text.replaceAll('\r\n', '')).not.toContain('\n');
  });

  it('says so in one line where there is nothing to fix', async () => {
    await run('fix', 'store.pair');
    out = '';
    expect(await run('fix', 'store.pair', '--dry-run', '--rule', 'address-clash')).toBe(0);
    expect(out).toBe('Nothing to fix without a decision in 1 file; nothing left.\n');
  });

  it('tells programs what was done and what is left', async () => {
    await run('fix', 'store.pair', '--dry-run', '--format', 'json');
    expect(JSON.parse(out)).toMatchObject({
      schema: 'fieldpair-fix-1',
      files: [{ file: 'store.pair', fixes: 1, patch: expect.stringContaining('+    from head terminate switch') }],
      applied: [{ file: 'store.pair', line: 12, rule: 'end-unterminated', title: 'Switch on the terminator of head' }],
      left: [{ line: 13, column: 14, fixes: ['Terminate a with a 120 ohm resistor'] }],
    });
  });

  it('prints the patch and changes nothing in a dry run', async () => {
    expect(await run('fix', 'store.pair', '--dry-run')).toBe(0);
    expect(readFileSync(join(folder, 'store.pair'), 'utf8')).toBe(unterminated);
    expect(out).toContain('-    from head\n');
    expect(out).toContain('+    from head terminate switch\n');
  });

  it('keeps to the rules that are named', async () => {
    await run('fix', 'store.pair', '--rule', 'polarity-unstated');
    expect(readFileSync(join(folder, 'store.pair'), 'utf8')).toBe(unterminated);
  });
});
