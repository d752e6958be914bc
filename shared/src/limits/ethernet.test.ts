import { describe, expect, it } from 'vitest';
import { metres } from '../quantity.js';
import { testCable } from '../testing/network.js';
import { categoryWanted, cordLimit } from './ethernet.js';

describe('cords', () => {
  // Rows of the table of ANSI/TIA-568 for open offices, from memory: all cords together, rounded to whole metres.
  it.each([
    [90, 10, 8],
    [85, 14, 11],
    [80, 18, 15],
    [75, 22, 18],
    [70, 27, 21],
  ])('beside %i m of fixed cable may have %i m at 24 AWG and %i m at 26 AWG', (fixed, at24, at26) => {
    const limit = (gauge: number) => cordLimit(metres(fixed), testCable({ gauge })).value;
    // The table rounds 22.5 down.
    expect(Math.abs(limit(24) - at24)).toBeLessThanOrEqual(0.5);
    expect(Math.abs(limit(26) - at26)).toBeLessThanOrEqual(0.5);
    expect(cordLimit(metres(fixed), undefined).value).toBe(limit(24));
  });

  it('may have none beside too much fixed cable', () => {
    expect(cordLimit(metres(110), undefined).value).toBe(0);
    expect(cordLimit(metres(90), undefined).strength).toBe('from memory');
  });
});

describe('the category for a rate', () => {
  const wanted = (cableClass: Parameters<typeof testCable>[0], rate?: number) =>
    categoryWanted(testCable(cableClass), rate);

  it('is 5 up to 1 Gbit/s, 5e up to 5 Gbit/s and 6 above, from memory of IEEE 802.3', () => {
    expect(wanted({ class: 'category-5' }, 1e9)).toBeUndefined();
    expect(wanted({ class: 'category-5' }, 2.5e9)).toBe('category 5e or better');
    expect(wanted({ class: 'category-5e' }, 5e9)).toBeUndefined();
    expect(wanted({ class: 'category-5e' }, 10e9)).toBe('category 6 or better');
    expect(wanted({ class: 'level-4' }, 10e6)).toBe('category 5 or better');
  });

  it('is not asked of a cable that states none', () => {
    expect(wanted({}, 10e9)).toBeUndefined();
  });
});
