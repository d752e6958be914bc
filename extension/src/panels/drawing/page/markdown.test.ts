import { expect, it } from 'vitest';
import { blocksOf } from './markdown.js';

const plain = (text: string) => ({ text, strong: false });
const strong = (text: string) => ({ text, strong: true });

it('reads paragraphs, lists and bold', () => {
  expect(blocksOf('**38 ft** run to caseA\n\n- resistance: 1 ohm\n- delay: 5 ns\n\nEnd')).toEqual([
    { kind: 'text', pieces: [strong('38 ft'), plain(' run to caseA')] },
    { kind: 'item', pieces: [plain('resistance: 1 ohm')] },
    { kind: 'item', pieces: [plain('delay: 5 ns')] },
    { kind: 'text', pieces: [plain('End')] },
  ]);
});

it('takes what is escaped, and markup, for text', () => {
  // CommonMark 0.31, 2.4: any ASCII punctuation character may be escaped.
  expect(blocksOf('\\*\\*a\\_b\\<i\\> <b>x</b> \\q')).toEqual([
    { kind: 'text', pieces: [plain('**a_b<i> <b>x</b> \\q')] },
  ]);
});
