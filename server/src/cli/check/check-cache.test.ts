import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { sandbox } from '../testing/sandbox.js';

const catalogue = 'device Board {\n  port field : rs485 {\n    address dial 1..99\n  }\n}\ndevice Spare {\n}\n';
const store = (name: string) => `import "catalogue.pair"
store ${name} {
  node n1 : Board
  node n2 : Board
  bus b : rs485 9600 8E1 {
    from n1 address 7
    10 ft to n2 address 7
  }
}
`;
const box = () =>
  sandbox({
    'catalogue.pair': catalogue,
    'a.pair': store('alder'),
    'b.pair': store('beech'),
    'c.pair': store('cedar'),
  });

describe('fieldpair check --cache', () => {
  it('answers as a check without it, at first, again, and after any change', async () => {
    const { folder, write, run } = box();
    const changes = [
      () => undefined,
      () => undefined,
      () => write('b.pair', store('birch')),
      () => write('catalogue.pair', catalogue.replace('1..99', '1..5')),
      () => write('a.pair', `import "gone.pair"\n${store('alder')}`),
      () => write('gone.pair', 'cable Extra {\n}\n'),
      () => write('d.pair', 'import "c.pair"\nstore cedar continued {\n  node n3 : Spare\n}\n'),
      () => writeFileSync(join(folder, '.fieldpair/check.json'), '{"of":'),
      () => write('e.pair', 'store elm {'),
    ];
    for (const change of changes) {
      change();
      const kept = await run('check', '.', '--cache', '--format', 'json');
      expect(kept).toEqual(await run('check', '.', '--format', 'json'));
    }
  });

  it('takes the kept answer while nothing has changed, and only then', async () => {
    const { folder, write, run } = box();
    await run('check', '.', '--cache');
    const file = join(folder, '.fieldpair/check.json');
    // Whoever reads another message than the rules give has read the kept one.
    writeFileSync(file, readFileSync(file, 'utf8').replaceAll('both have address', 'share address'));
    const count = async (...args: string[]) =>
      (await run('check', '.', ...args)).out.match(/share address/g)?.length ?? 0;
    expect(await count('--cache')).toBe(3);
    expect(await count('--cache', '--rule', 'address-clash')).toBe(0);
    await run('check', '.', '--cache');
    writeFileSync(file, readFileSync(file, 'utf8').replaceAll('both have address', 'share address'));
    write('b.pair', store('birch'));
    expect(await count('--cache')).toBe(2);
    write('catalogue.pair', catalogue.replace('Spare', 'Other'));
    expect(await count('--cache')).toBe(0);
  });

  it('keeps out of commits, and checks all the same where nothing can be kept', async () => {
    const { folder, run } = box();
    await run('check', '.', '--cache');
    expect(readFileSync(join(folder, '.fieldpair/.gitignore'), 'utf8')).toBe('*\n');
    const other = sandbox({ 'a.pair': 'store alder {\n}\n', '.fieldpair': 'a file in the way' });
    expect(await other.run('check', '.', '--cache')).toEqual({
      status: 0,
      out: 'Nothing found in 1 file, 1 store, 0 buses.\n',
      error: expect.stringMatching(/^fieldpair: the answers were not kept for the next check: .+\n$/),
    });
  });
});
