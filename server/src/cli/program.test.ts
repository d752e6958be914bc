import { describe, expect, it } from 'vitest';
import { failureLine, runCommandLine } from './program.js';
import { recordingTerminal, sandbox } from './testing/sandbox.js';
import { version } from './version.js';

describe('the command line', () => {
  it('prints its version and its help', async () => {
    const { run } = sandbox();
    expect(await run('--version')).toEqual({ status: 0, out: `${version}\n`, error: '' });
    const help = await run('check', '--help');
    expect(help).toMatchObject({ status: 0, error: '' });
    expect(help.out).toMatch(/^Usage: fieldpair check/);
    expect(await run()).toMatchObject({ status: 2, out: '', error: expect.stringMatching(/^Usage: fieldpair/) });
  });

  it('says a mistake of its own in one line', async () => {
    const { terminal, printed } = recordingTerminal();
    const closed = {
      ...terminal,
      out: () => {
        throw new TypeError('no\nluck');
      },
    };
    expect(await runCommandLine(['explain'], closed)).toBe(2);
    expect(printed.error).toBe(
      `fieldpair: a mistake inside fieldpair ${version} stopped it (no luck); please report it with your command\n`,
    );
    expect(failureLine('text')).toContain('(text)');
  });
});
