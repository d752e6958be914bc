import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSheet } from '../read/read-sheet.js';
import { example } from '../testing/example.js';
import { formatText } from './format.js';

describe('formatText', () => {
  it('indents by blocks and leaves one space between words', () => {
    const text =
      'store  s{\nnode a:Box\n\n\n\nbus b : modbus-rtu 19200 8E1{\n from   a . x\n38ft to c address  1 // end\n}}';
    expect(formatText(text)).toBe(
      'store s {\n  node a : Box\n\n  bus b : modbus-rtu 19200 8E1 {\n    from a.x\n    38 ft to c address 1 // end\n  } }\n',
    );
  });

  it('leaves a formatted text alone', () => expect(formatText(formatText(example))).toBe(formatText(example)));

  it('keeps line ends and a byte-order mark', () => {
    expect(formatText('\uFEFFstore s {\r\n}\r\n')).toBe('\uFEFFstore s {\r\n}\r\n');
  });

  it('never changes what the text says, and settles at once, on any text', () => {
    const words = example.split(/(\s+)/).filter((word) => word !== '');
    const rows = fc.array(fc.oneof(fc.constantFrom(...words), fc.string({ maxLength: 4 })), { maxLength: 60 });
    fc.assert(
      fc.property(rows, (row) => {
        const text = row.join(' ');
        const once = formatText(text);
        expect(formatText(once)).toBe(once);
        const meaning = (source: string) =>
          JSON.stringify(readSheet(source).sheet, (key, value: unknown) =>
            key === 'start' || key === 'end' ? undefined : value,
          );
        if (readSheet(text).problems.length === 0) expect(meaning(once)).toBe(meaning(text));
      }),
      { numRuns: 500 },
    );
  });

  it('writes what the grammar takes apart: minus signs, ranges, fractions', () => {
    for (const line of [
      'ambient -20 degC',
      'address dial 1..99',
      'load 1/8',
      'capacitance 12.5 pF/ft',
      'bias at a 560 ohm to + 560 ohm to -',
    ]) {
      expect(formatText(line)).toBe(`${line}\n`);
    }
  });
});
