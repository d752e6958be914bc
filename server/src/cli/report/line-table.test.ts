import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { LineTable } from './line-table.js';

describe('LineTable', () => {
  // The reference is the text document that the Language Server Protocol's own libraries ship.
  it('counts as editors do, from 1', () => {
    const text = fc.string({ unit: fc.constantFrom('a', '\n', '\r', 'ä', '😀', '\t', ' ') });
    fc.assert(
      fc.property(text, fc.nat(60), (content, offset) => {
        const { line, character } = TextDocument.create('memory:/a', 'pair', 1, content).positionAt(offset);
        const position = new LineTable(content).position(offset);
        const lineEnd = (content.split(/\r\n|\n|\r/)[line] ?? '').length;
        // The reference never stands between the two characters of a line end; a place there is past the line's end.
        expect(position.line).toBe(line + 1);
        expect(Math.min(position.column - 1, lineEnd)).toBe(Math.min(character, lineEnd));
      }),
    );
  });

  it('gives lines without their ends', () => {
    const table = new LineTable('one\r\ntwo\rthree\n');
    expect([1, 2, 3, 4, 5].map((line) => table.line(line))).toEqual(['one', 'two', 'three', '', '']);
  });

  it('takes offsets outside the text as its ends', () => {
    const table = new LineTable('ab\nc');
    expect([table.position(-4), table.position(99)]).toEqual([
      { line: 1, column: 1 },
      { line: 2, column: 2 },
    ]);
  });
});
