import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { hostileStore, plainStore } from '../../packet/testing/stores.js';
import { sandbox } from '../testing/sandbox.js';

const filesIn = (folder: string) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => join(parentPath, name).slice(folder.length + 1))
    .sort();

describe('fieldpair packet', () => {
  it('writes every format into a folder for the store and says so', async () => {
    const box = sandbox({ 'x.pair': plainStore });
    const run = await box.run('packet', 'x.pair', '--out', 'packets', '--date', '2026-03-14');
    expect(run).toEqual({
      status: 0,
      out: expect.stringMatching(
        /^packets\/northgate: 7 sheets in \d+ files\n1 packet written as html, pdf, csv, xlsx, svg\.\n$/,
      ),
      error: '',
    });
    const files = filesIn(join(box.folder, 'packets'));
    for (const end of ['html', 'pdf', 'xlsx']) expect(files).toContain(`northgate/northgate-packet.${end}`);
    expect(files).toContain('northgate/tables/landing-schedule-cases.csv');
    expect(readFileSync(join(box.folder, 'packets/northgate/northgate-packet.html'), 'utf8')).toContain('2026-03-14');
  });

  it('writes the formats that are asked for, again the same bytes', async () => {
    const box = sandbox({ 'x.pair': plainStore });
    const bytes = async (out: string) => {
      expect((await box.run('packet', '.', '--out', out, '--format', 'pdf,xlsx', '--date', '2026-03-14')).status).toBe(
        0,
      );
      const folder = join(box.folder, out);
      expect(filesIn(folder)).toEqual([
        'northgate/.fieldpair-packet.json',
        'northgate/northgate-packet.pdf',
        'northgate/northgate-packet.xlsx',
      ]);
      return filesIn(folder).map((file) => readFileSync(join(folder, file)).toString('base64'));
    };
    expect(await bytes('one')).toEqual(await bytes('other'));
  });

  it('keeps stores apart and inside the folder, whatever they are called', async () => {
    const store = (name: string) => `store "${name}" { bus b : rs485 { from a } }\n`;
    const names = ['../../x', 'x', 'CON', 'con', '\u202e\u05d3\u05dc\u05ea', 'y'.repeat(500), '..'];
    const box = sandbox({ 'hostile/a.pair': hostileStore, 'b.pair': names.map(store).join('') });
    const run = await box.run('packet', '.', '--out', 'deep/out', '--format', 'html');
    expect(run).toMatchObject({ status: 0, error: '' });
    expect(readdirSync(join(box.folder, 'deep/out')).sort()).toEqual(
      ['CON-store', 'con-store-2', 'store', 'x', 'x-2', 'x-3', 'y'.repeat(80), '\u05d3\u05dc\u05ea'].sort(),
    );
    expect(readdirSync(box.folder).sort()).toEqual(['b.pair', 'deep', 'hostile']);
    expect(run.out).not.toMatch(/[\u202a-\u202e]/);
  });

  it('says on each sheet and in the terminal that a plan has errors', async () => {
    const text = plainStore.replace('address 12 terminate switch', 'address 11');
    const box = sandbox({ 'x.pair': text });
    const run = await box.run('packet', '.', '--out', 'o', '--format', 'html', '--revision', 'draft 7');
    expect(run.out).toMatch(/; its plan has 2 open errors\n/);
    const html = readFileSync(join(box.folder, 'o/northgate/northgate-packet.html'), 'utf8');
    expect(html.match(/2 errors open in this plan: do not build from it/g)).toHaveLength(7);
    expect(html).toContain('draft 7');
  });

  it('removes what it wrote of a bus that has another name now, and nothing else', async () => {
    const box = sandbox({ 'x.pair': plainStore });
    const write = () => box.run('packet', 'x.pair', '--out', 'o', '--date', '2026-03-14');
    await write();
    const folder = join(box.folder, 'o/northgate');
    const schedule = (name: string) => join(folder, `tables/landing-schedule-${name}.csv`);
    const others = ['notes.txt', 'tables/commissioning-cases.txt', 'tables/landing-schedule-old.csv'];
    for (const other of others) writeFileSync(join(folder, other), 'of somebody else');
    writeFileSync(join(folder, 'tables/pull-and-cut-list-cases.csv'), 'Run,Built\r\n1,39\r\n');
    const before = filesIn(folder);
    box.write('x.pair', plainStore.replace('"Cases"', '"Dairy"'));

    const run = await box.run('packet', 'x.pair', '--out', 'o', '--date', '2026-03-14', '--format', 'csv');
    expect(run.out).toContain('kept tables/pull-and-cut-list-cases.csv, which is of an earlier packet');
    expect(existsSync(schedule('cases'))).toBe(false);
    expect(existsSync(schedule('dairy'))).toBe(true);
    expect(existsSync(join(folder, 'diagrams/one-line-diagram-cases.svg'))).toBe(true);
    const gone = before.filter((file) => !filesIn(folder).includes(file));
    expect(gone).toEqual([
      'tables/address-table-cases.csv',
      'tables/commissioning-cases.csv',
      'tables/landing-schedule-cases.csv',
    ]);
    await write();
    expect(existsSync(join(folder, 'diagrams/one-line-diagram-cases.svg'))).toBe(false);
    for (const other of others) expect(readFileSync(join(folder, other), 'utf8')).toBe('of somebody else');
  });

  it('names the characters that its PDF cannot show, and takes a font for them', async () => {
    const box = sandbox({ 'x.pair': plainStore.replace('"Cases"', '"\u51b7\u51cd\u5eab"') });
    const run = await box.run('packet', 'x.pair', '--out', 'o', '--format', 'pdf,csv');
    expect(run.out).toContain(
      '  its PDF has boxes for 3 characters that its typeface lacks, \u51b7\u51cd\u5eab; --font names a typeface',
    );
    expect(filesIn(join(box.folder, 'o'))).toContain('northgate/tables/commissioning-\u51b7\u51cd\u5eab.csv');
    box.write('none.ttf', 'no font');
    expect(await box.run('packet', 'x.pair', '--out', 'p', '--font', 'none.ttf')).toEqual({
      status: 2,
      out: '',
      error: 'fieldpair: cannot use the font none.ttf: it is no TrueType or OpenType font\n',
    });
    expect(existsSync(join(box.folder, 'p'))).toBe(false);
  });

  it('puts one store of several files into one packet', async () => {
    const box = sandbox({
      'x.pair': plainStore,
      'y.pair': 'import "x.pair"\nstore northgate continued { bus more : rs485 { from head } }\n',
    });
    const run = await box.run('packet', '.', '--out', 'o', '--format', 'html');
    expect(run.out).toMatch(/^o\/northgate: 11 sheets in 1 file/);
  });

  it.each([
    [['--date', '2026-02-30'], /--date.*YYYY-MM-DD/],
    [['--format', 'docx'], /docx is none of html, pdf, csv, xlsx, svg/],
    [['--slack', 'lots'], /--slack lots is no rule; write it as "5 % \+ 3 ft"/],
    [['--reel', '0 ft'], /--reel 0 ft is no length/],
    [['--jobs', '0'], /--jobs.*from 1 to 256/],
    [['--unit', 'yd'], /--unit.*ft, m, both/],
  ])('refuses %j in one line and writes nothing', async (args, message) => {
    const box = sandbox({ 'x.pair': plainStore });
    const { status, out, error } = await box.run('packet', 'x.pair', '--out', 'o', ...args);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(error).toMatch(message);
    expect(error.trimEnd()).not.toContain('\n');
    expect(existsSync(join(box.folder, 'o'))).toBe(false);
  });

  it('says why it cannot write, and when there is no store', async () => {
    const box = sandbox({ 'x.pair': plainStore, o: 'a file', 'c/cable.pair': 'cable Spare1 {\n}\n' });
    expect(await box.run('packet', 'x.pair', '--out', 'o')).toMatchObject({
      status: 2,
      error: expect.stringMatching(/^fieldpair: cannot write the packet of northgate: .*\n$/),
    });
    expect(await box.run('packet', 'c', '--out', 'p')).toMatchObject({
      status: 2,
      error: 'fieldpair: there is no store in these files\n',
    });
  });
});
