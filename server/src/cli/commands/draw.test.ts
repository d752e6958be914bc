import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { sandbox } from '../testing/sandbox.js';

const storeOf = (name: string) => `store ${name} {
  node head : Head
  bus cases : modbus-rtu 19200 8E1 {
    from head
    100 ft to caseA : Board address 11
    50 ft to caseB : Board address 14
  }
  bus annex : modbus-rtu {
    from other : Board
  }
}
`;
const catalogue = `device Head { role head port field : rs485 }
device Board { port field : rs485 }
`;
const files = { 'north.pair': catalogue + storeOf('north'), 'south.pair': catalogue + storeOf('"s/outh"') };

/** Every title of a drawing, as an XML parser that is not ours reads it. */
function titlesOf(svg: string): string[] {
  expect(XMLValidator.validate(svg)).toBe(true);
  const { svg: root } = new XMLParser().parse(svg);
  return root.g.map(({ title }: { title: string }) => title);
}

describe('fieldpair draw', () => {
  it('prints one store, with every landing of every bus', async () => {
    const { status, out, error } = await sandbox(files).run('draw', 'north.pair');
    expect({ status, error }).toEqual({ status: 0, error: '' });
    const titles = titlesOf(out);
    for (const landing of ['head,', 'caseA,', 'caseB,', 'other,']) {
      expect(titles.filter((title) => title.startsWith(landing))).toHaveLength(1);
    }
    expect(titles.some((title) => title.startsWith('run from caseA to caseB, 50 ft'))).toBe(true);
  });

  it('draws one bus alone when asked to, and says when there is none of that name', async () => {
    const box = sandbox(files);
    const { out } = await box.run('draw', 'north.pair', '--bus', 'annex', '--scale');
    expect(titlesOf(out).filter((title) => /^bus /.test(title))).toHaveLength(1);
    const { status, error } = await box.run('draw', 'north.pair', '--bus', 'nowhere');
    expect({ status, error }).toEqual({ status: 2, error: 'fieldpair: there is no bus nowhere in these files\n' });
  });

  it('writes a file, or a file for each store into a folder, always the same bytes', async () => {
    const box = sandbox(files);
    await box.run('draw', 'north.pair', '--out', 'one.svg');
    const { out } = await box.run('draw', 'north.pair');
    expect(readFileSync(join(box.folder, 'one.svg'), 'utf8')).toBe(out);
    const many = await box.run('draw', '.', '--out', 'drawings');
    expect(many.out).toBe('drawings/north.svg\ndrawings/s-outh.svg\n');
    expect(readFileSync(join(box.folder, 'drawings/north.svg'), 'utf8')).toBe(out);
  });

  it('does not pour several stores into one output', async () => {
    const { status, out, error } = await sandbox(files).run('draw', '.');
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(error).toMatch(/2 stores need a folder .*--out FOLDER/);
  });

  it('says when there is nothing to draw', async () => {
    const { status, error } = await sandbox({ 'x.pair': catalogue }).run('draw', 'x.pair');
    expect({ status, error }).toEqual({ status: 2, error: 'fieldpair: there is no store in these files\n' });
  });
});
