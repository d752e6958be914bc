import { describe, expect, it } from 'vitest';
import { sandbox } from '../testing/sandbox.js';

const store = (name: string) => `import "catalogue.pair"
store ${name} {
  node n1 : Board
  node n1 : Board
}
`;
const files = {
  'catalogue.pair': 'device Board {\n}\ndevice Spare {\n}\n',
  'a.pair': store('alder'),
  'b.pair': store('beech'),
  'c.pair': store('cedar'),
};

describe('fieldpair check --shard', () => {
  it('has every file in one share, and all findings but those that need them all', async () => {
    const { write, run } = sandbox(files);
    write('d.pair', 'import "c.pair"\nstore cedar continued {\n  node n2 : Board\n}\n');
    interface Json {
      files: number;
      stores: number;
      findings: { rule: string; file: string; line: number }[];
    }
    const check = async (...args: string[]) =>
      JSON.parse((await run('check', '.', '--format', 'json', ...args)).out) as Json;
    const whole = await check();
    const shares = [await check('--shard', '1/3'), await check('--shard', '2/3'), await check('--shard', '3/3')];
    const keysOf = ({ findings }: Json) => findings.map(({ rule, file, line }) => `${file}:${line} ${rule}`);
    expect(shares.flatMap(keysOf).sort()).toEqual(
      keysOf(whole)
        .filter((key) => !key.endsWith('unused-entry'))
        .sort(),
    );
    expect(shares.map(({ files }) => files)).toEqual([2, 1, 2]);
    expect(shares.reduce((sum, { stores }) => sum + stores, 0)).toBe(whole.stores);
  });

  it.each(['0/2', '3/2', '1', '1/0', 'a/b', '-1/2', '1/2/3'])('does not take %s for a share', async (share) => {
    const { status, error } = await sandbox(files).run('check', '.', '--shard', share);
    expect(status).toBe(2);
    expect(error).toMatch(/is invalid\. Write which share of how many, such as 2\/5\.\n$/);
  });
});
