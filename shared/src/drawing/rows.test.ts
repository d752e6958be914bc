import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spread } from './rows.js';

const page = { left: 0, right: 1000, pitch: 100 };

describe('cards that give way to each other', () => {
  it('stay where they are wanted when there is room', () => {
    expect(spread([100, 400, 800], page)).toEqual([100, 400, 800]);
  });

  it('stand around what they want together', () => {
    expect(spread([500, 500, 500], page)).toEqual([400, 500, 600]);
  });

  it('keep their order, their distance and the page, whatever they want', () => {
    const wanted = fc.array(fc.integer({ min: -100, max: 1100 }), { maxLength: 10 });
    fc.assert(
      fc.property(wanted, (unsorted) => {
        const places = spread(
          unsorted.toSorted((left, right) => left - right),
          page,
        );
        for (const [index, place] of places.entries()) {
          expect(place).toBeGreaterThanOrEqual(50);
          expect(place).toBeLessThanOrEqual(950);
          if (index) expect(place - (places[index - 1] ?? 0)).toBeGreaterThanOrEqual(100 - 1e-9);
        }
      }),
    );
  });
});
