import { describe, expect, it } from 'vitest';
import { Progress } from './progress.js';
import { wantsColour } from './terminal.js';
import { recordingTerminal } from './testing/sandbox.js';

describe('colour', () => {
  // https://no-color.org: any value of NO_COLOR but the empty one turns colour off.
  it('is for terminals, unless somebody says otherwise', () => {
    expect(wantsColour(true, {})).toBe(true);
    expect(wantsColour(undefined, {})).toBe(false);
    expect(wantsColour(true, { TERM: 'dumb' })).toBe(false);
    expect(wantsColour(true, { NO_COLOR: '1', FORCE_COLOR: '1' })).toBe(false);
    expect(wantsColour(true, { NO_COLOR: '' })).toBe(true);
    expect(wantsColour(false, { FORCE_COLOR: '1' })).toBe(true);
    expect(wantsColour(true, { FORCE_COLOR: '0' })).toBe(false);
  });
});

describe('Progress', () => {
  const draw = (drawsProgress: boolean, times: number[]) => {
    const { terminal, printed } = recordingTerminal({ drawsProgress });
    let now = 0;
    const progress = new Progress(terminal, () => now);
    for (const time of times) {
      now = time;
      progress.show(() => `at ${time}`);
    }
    progress.end();
    return printed.error;
  };

  it('draws over itself once work takes long, and leaves nothing behind', () => {
    expect(draw(true, [10, 390, 450, 460, 600])).toBe('\r\x1b[Kat 450\r\x1b[Kat 600\r\x1b[K');
  });

  it('draws nothing for short work or without a terminal', () => {
    expect(draw(true, [10, 390])).toBe('');
    expect(draw(false, [10, 1000])).toBe('');
  });
});
