import { describe, expect, it } from 'vitest';
import { sandbox } from '../testing/sandbox.js';

const clean = `device DriveBoard {
  port field : rs485
}
store northgate {
  node head : DriveBoard
}
`;
const broken = clean.replace('head :', 'head');

describe('fieldpair check', () => {
  it('ends with 1 when a finding fails, and shows it', async () => {
    const { status, out, error } = await sandbox({ 'a/x.pair': broken }).run('check', 'a');
    expect({ status, error }).toEqual({ status: 1, error: '' });
    expect(out).toMatch(
      /^a\/x\.pair\n(.*\n)* {2}5:13 {2}error {2}.*'DriveBoard'.* {2}syntax\n {4}5 \| node head DriveBoard\n/m,
    );
  });

  it('fails from the severity on that was asked for', async () => {
    const unused = sandbox({ 'x.pair': 'cable Spare1 {\n  conductor 22 AWG\n}\nstore northgate {\n}\n' });
    const statuses = [];
    for (const severity of ['error', 'warning', 'info']) {
      statuses.push((await unused.run('check', '--fail-on', severity, 'x.pair')).status);
    }
    expect(statuses).toEqual([0, 0, 1]);
  });

  it('blames the path of an import only where nothing is there', async () => {
    const box = sandbox({ 'x.pair': 'import "none.pair"\nimport "latin.pair"\n' });
    box.write('latin.pair', Uint8Array.of(0x4b, 0xe4));
    const { out } = await box.run('check', 'x.pair', '--format', 'json');
    expect(JSON.parse(out).findings).toMatchObject([
      { message: 'none.pair cannot be read: there is no such file or folder; correct the path' },
      { message: 'latin.pair cannot be read: it is not UTF-8 text; save it as UTF-8' },
    ]);
  });

  it('keeps to the rules that were asked for', async () => {
    const box = sandbox({ 'x.pair': clean.replace('DriveBoard\n}\n', 'DriveBored\n}\n') });
    const { status, out } = await box.run('check', 'x.pair', '--format', 'json', '--rule', 'address-clash', 'no-head');
    expect(status).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ files: 1, stores: 1, findings: [], waived: [] });
    const other = await box.run('check', 'x.pair', '--format', 'json', '--rule', 'unknown-name');
    expect(JSON.parse(other.out).findings).toMatchObject([{ rule: 'unknown-name', file: 'x.pair', line: 5 }]);
  });

  it('tells what could not be read, whatever was asked for: it was not judged', async () => {
    const { status, out } = await sandbox({ 'x.pair': broken }).run('check', 'x.pair', '--rule', 'no-head');
    expect(status).toBe(1);
    expect(out).toMatch(/5:13 {2}error .* {2}syntax\n/);
  });

  it('reads what is imported, from any folder', async () => {
    const box = sandbox({
      'shared/controls.pair': 'device DriveBoard {\n  port field : rs485\n}\n',
      'stores/x.pair': 'import "../shared/controls.pair"\nstore northgate {\n  node head : DriveBoard\n}\n',
    });
    const { status, out } = await box.run('check', 'stores', '--fail-on', 'info');
    expect({ status, out }).toEqual({ status: 0, out: 'Nothing found in 1 file, 1 store, 0 buses.\n' });
  });

  it('takes a missing import as a finding, not as a failure', async () => {
    const box = sandbox({ 'x.pair': 'import "none.pair"\nstore northgate {\n}\n' });
    const { status, out } = await box.run('check', 'x.pair', '--format', 'json');
    expect(status).toBe(1);
    expect(JSON.parse(out).findings[0]).toMatchObject({ rule: 'import-missing', line: 1, column: 8 });
  });

  it.each([
    ['a path that is not there', ['check', 'none.pair'], 'cannot read none.pair: there is no such file or folder'],
    ['a folder without .pair files', ['check', 'empty'], 'there are no .pair files in empty'],
    [
      'text in another encoding',
      ['check', 'latin.pair'],
      'cannot read latin.pair: it is not UTF-8 text; save it as UTF-8',
    ],
    ['no path', ['check'], "missing required argument 'path'"],
    ['an unknown option', ['check', '--formt', 'json', '.'], "unknown option '--formt' (Did you mean --format?)"],
    ['an unknown command', ['chek'], "unknown command 'chek' (Did you mean check?)"],
    [
      'an unknown format',
      ['check', '--format', 'yaml', '.'],
      "option '--format <format>' argument 'yaml' is invalid. Allowed choices are text, json, sarif, junit, github.",
    ],
    [
      'an unknown rule',
      ['check', '.', '--rule', 'no-\x1b[31msuch'],
      "option '--rule <id...>' argument 'no-\uFFFD[31msuch' is invalid. No rule has this name; " +
        'fieldpair explain lists them. Paths go before --rule.',
    ],
  ])('ends with 2 and one line for %s', async (_, args, message) => {
    const box = sandbox({ 'empty/notes.txt': '' });
    box.write('latin.pair', Uint8Array.of(0x4b, 0xe4));
    expect(await box.run(...args)).toEqual({ status: 2, out: '', error: `fieldpair: ${message}\n` });
  });
});
