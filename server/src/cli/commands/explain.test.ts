import { rules } from '@fieldpair/shared';
import { describe, expect, it } from 'vitest';
import { firstSentence } from '../rule-page.js';
import { sandbox } from '../testing/sandbox.js';

describe('fieldpair explain', () => {
  it('lists every rule on a line of its own', async () => {
    const { status, out } = await sandbox().run('explain');
    expect(status).toBe(0);
    expect(
      out
        .trimEnd()
        .split('\n')
        .map((line) => line.split(/ +/)[0]),
    ).toEqual(rules.map(({ id }) => id));
  });

  it('lists them in Markdown as one table', async () => {
    const { out } = await sandbox().run('explain', '--format', 'markdown');
    const rows = out.trimEnd().split('\n');
    expect(rows).toHaveLength(rules.length + 2);
    for (const row of rows) expect(row.replaceAll('\\|', '').split('|')).toHaveLength(5);
  });

  it.each(rules.map((rule) => [rule.id, rule] as const))('has the page of %s', async (id, { explanation }) => {
    const { run } = sandbox();
    const { status, out } = await run('explain', id);
    expect(status).toBe(0);
    const pageLines = out.split('\n').filter((line) => !/^( {4}| {2}- )/.test(line));
    for (const line of pageLines) expect(line.length).toBeLessThanOrEqual(80);
    const words = out.replace(/\s+/g, ' ');
    for (const part of [
      explanation.why,
      explanation.field,
      explanation.mend,
      explanation.bad,
      ...explanation.sources,
    ]) {
      expect(words).toContain(part.trim().replace(/\s+/g, ' '));
    }
    const markdown = (await run('explain', id, '--format', 'markdown')).out;
    expect(markdown).toContain(`# ${id}\n`);
    expect(markdown).toContain(`\`\`\`pair\n${explanation.bad.trim()}\n\`\`\``);
  });

  it('suggests the rule that was meant', async () => {
    const { status, error } = await sandbox().run('explain', 'synax');
    expect({ status, error }).toEqual({
      status: 2,
      error: 'fieldpair: no rule is named synax; did you mean syntax?\n',
    });
  });

  it('takes the first sentence, numbers with points in it', () => {
    expect(firstSentence('At most 1.5 m\nof it. More.')).toBe('At most 1.5 m of it.');
    expect(firstSentence('No end')).toBe('No end');
  });
});
