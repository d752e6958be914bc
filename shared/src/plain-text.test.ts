import { describe, expect, it } from 'vitest';
import { plainLine, shownWidth, wrapped } from './plain-text.js';

describe('text for terminals', () => {
  it('replaces what a terminal would act on', () => {
    expect(plainLine('a\tb\x1b[31mc\u202ed\ne')).toBe('a b\uFFFD[31mc\uFFFDd\uFFFDe');
  });

  // Unicode Standard Annex 11: wide characters take two columns; combining marks take none.
  it('knows how wide a text is shown', () => {
    expect(['abc', 'Käse', 'Ka\u0308se', '冷蔵', '❄️a', '🧊'].map(shownWidth)).toEqual([3, 4, 4, 4, 2, 2]);
  });

  it('wraps at spaces', () => {
    expect(wrapped('one two  three\nfour', 8)).toEqual(['one two', 'three', 'four']);
    expect(wrapped('', 8)).toEqual([]);
  });
});
