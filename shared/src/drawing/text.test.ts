import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { create, type Font } from 'fontkit';
import { describe, expect, it } from 'vitest';
import { fitted, textWidth, visible } from './text.js';

/** The font's own file, read by a library that is not ours. */
const fontOf = (file: string) =>
  create(readFileSync(createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${file}`))) as Font;
const fonts = { regular: fontOf('DejaVuSans.ttf'), bold: fontOf('DejaVuSans-Bold.ttf') };

/** Without kerning, which not every program does. */
const widthIn = (font: Font, text: string) =>
  font.glyphsForString(text).reduce((width, glyph) => width + glyph.advanceWidth, 0) / font.unitsPerEm;

describe('the width of text', () => {
  it.each([
    ['regular', false],
    ['bold', true],
  ] as const)('is that of the font, for every character that a keyboard has, %s', (weight, isBold) => {
    for (let code = 0x20; code < 0x7f; code++) {
      const character = String.fromCharCode(code);
      // The table is rounded to a thousandth.
      expect(Math.abs(textWidth(character, 1, isBold) - widthIn(fonts[weight], character)), character).toBeLessThan(
        6e-4,
      );
    }
  });

  it('is never less than that of the font, for the letters of Europe', () => {
    const letters = 'ÄÖÜäöüßéèêëàâçñøØåÅæÆœŁłŽžČčŠšĞğİıŐőĄąĘęΑΩαωЖЩШжщяЯ·…';
    for (const letter of letters)
      expect(textWidth(letter, 1), letter).toBeGreaterThan(widthIn(fonts.regular, letter) - 6e-4);
  });
});

describe('fitting text', () => {
  it('breaks at spaces and where a word has seams', () => {
    expect(fitted('coldRoomDoor', 60, 12, 2).lines).toEqual(['coldRoom', 'Door']);
    expect(fitted('Plant room panel', 70, 12, 3).lines).toEqual(['Plant room', 'panel']);
    expect(fitted('9 landings \u00b7 a ring', 85, 12, 2).lines).toEqual(['9 landings \u00b7', 'a ring']);
    expect(fitted('ends at roofMaster', 110, 12, 2).lines).toEqual(['ends at', 'roofMaster']);
    expect(fitted('Tiefk\u00fchlkost', 50, 12, 2).lines).toHaveLength(2);
  });

  it('leaves out what does not fit, and says so', () => {
    const { lines, shortened } = fitted('compressorCompressorCompressor', 60, 12, 2);
    expect(lines).toHaveLength(2);
    expect(lines[1]).toMatch(/\u2026$/);
    expect(shortened).toBe(true);
    expect(fitted('short', 60, 12, 2)).toEqual({ lines: ['short'], shortened: false });
  });

  it('shows what cannot be seen', () => {
    // Directional overrides: UAX 9, 2.2; what XML has no place for: XML 1.0, 2.2.
    expect(visible('a\u202Eb\u200Fc\u0007d\uFFFEe\tf')).toBe('a\uFFFDb\uFFFDc\uFFFDd\uFFFDe f');
  });
});
