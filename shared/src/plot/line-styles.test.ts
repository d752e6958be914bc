import { describe, expect, it } from 'vitest';
import { colourDistances, contrasts } from '../../../test/outside/colours.js';
import { lineColours, lineStyle, styleNumbers } from './line-styles.js';

describe('the lines of a plot', () => {
  it('can be told apart by everybody, and from white paper', () => {
    // Colours 10 apart by CIEDE2000 are seen as different at a glance (common practice, no published source).
    for (const distance of Object.values(colourDistances(lineColours))) expect(distance).toBeGreaterThan(15);
    // WCAG 2.2, success criterion 1.4.11: graphics need a contrast of 3 to 1.
    for (const contrast of contrasts(lineColours, '#ffffff')) expect(contrast).toBeGreaterThanOrEqual(3);
  });

  it('look different in colour or dashes for 24 numbers in a row', () => {
    const looks = Array.from({ length: 24 }, (_, number) => lineStyle(number)).map(
      ({ colour, dashes }) => `${colour} ${dashes}`,
    );
    expect(new Set(looks).size).toBe(24);
  });

  it('differ in dashes from the line before, for print without colour', () => {
    for (let number = 1; number < 24; number++) {
      if (number % 12) expect(lineStyle(number).dashes).not.toBe(lineStyle(number - 1).dashes);
    }
  });

  it('have colours of their own as long as there are any', () => {
    expect(styleNumbers([0, 5, 11, 2])).toEqual([0, 5, 13, 2]);
    const numbers = styleNumbers(Array.from({ length: 6 }, (_, index) => index * 6));
    expect(new Set(numbers.map((number) => lineStyle(number).colour)).size).toBe(6);
    expect(styleNumbers(Array.from({ length: 100 }, () => 3))).toHaveLength(100);
  });
});
