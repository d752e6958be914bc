import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { safeName, uniqueNames } from './safe-name.js';

describe('a safe name', () => {
  it.each([
    ['Northgate Market', 'Northgate-Market'],
    ['../../x', 'x'],
    ['/etc/passwd', 'etc-passwd'],
    ['C:\\Windows', 'C-Windows'],
    ['CON', 'CON-store'],
    ['com1', 'com1-store'],
    ['nul.txt', 'nul-txt'],
    ['..', 'store'],
    ['', 'store'],
    ['trailing. ', 'trailing'],
    ['\u05d3\u05dc\u05ea', '\u05d3\u05dc\u05ea'],
    ['a\u202eb', 'a-b'],
    ['\u0301x', 'x'],
  ])('of %j is %j', (text, name) => {
    expect(safeName(text, 'store')).toBe(name);
  });

  it('of any text is one part of a path, short, and no device', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 600 }), (text) => {
        const name = safeName(text, 'store');
        expect(name).toMatch(/^[\p{L}\p{N}_](?:[\p{L}\p{M}\p{N}_-]*[\p{L}\p{M}\p{N}_])?$/u);
        expect(Buffer.byteLength(name)).toBeLessThanOrEqual(80);
        expect(name).not.toMatch(/^(?:con|prn|aux|nul|(?:com|lpt)[0-9])$/i);
      }),
    );
  });

  it('is not given twice, whatever its case', () => {
    const unique = uniqueNames();
    expect(['shop', 'Shop', 'shop', 'SHOP-2'].map(unique)).toEqual(['shop', 'Shop-2', 'shop-3', 'SHOP-2-2']);
  });
});
