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

  it('terminates both ends, by the switch where there is one', async () => {
    expect(await run('fix', 'store.pair')).toBe(0);
    const text = readFileSync(join(folder, 'store.pair'), 'utf8');
    expect(text).toContain('from head terminate switch');
    expect(text).toContain('address 1 terminate resistor 120 ohm');
    expect(out).toBe('store.pair: 2 changes\n1 of 1 file changed.\n');
    expect(await run('check', 'store.pair')).toBe(0);
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
