/** Where the headings go when a landing is put into another area; that each fix mends the finding, the rule's tests hold. */
import { expect, it } from 'vitest';
import { checkText } from '../testing/check-text.js';
import { fixText } from '../testing/fix-text.js';

const storeOf = (...lines: readonly string[]) => `device Board { port one : rs485 port two : rs485 }
store hill {
  bus first : rs485 {
    area "Cellar"
    from a.one : Board
    3 ft to x : Board
  }
  bus second : rs485 {
${lines.map((line) => `    ${line}`).join('\n')}
  }
}
`;

/** The second bus with its `a` under the area of the first. */
function mended(...lines: readonly string[]): string[] {
  const text = storeOf(...lines);
  const [finding] = checkText(text, ['area-contradicted']);
  const [fix] = finding!.fixes();
  expect(fix!.title).toBe('Put a.two under area Cellar, as a.one is');
  const after = fixText(text, finding!);
  expect(checkText(after, ['area-contradicted', 'syntax'])).toEqual([]);
  const [, second = ''] = after.split('bus second : rs485 {\n');
  return second
    .split('\n')
    .slice(0, -3)
    .map((line) => line.slice(4));
}

it('changes the heading of a landing that is alone under it', () => {
  expect(
    mended('from b : Board', 'area Attic // under the roof', '3 ft to a.two', 'area ""', '3 ft to c : Board'),
  ).toEqual(['from b : Board', 'area "Cellar" // under the roof', '3 ft to a.two', 'area ""', '3 ft to c : Board']);
});

it('leaves the others where they were', () => {
  expect(mended('area Attic', 'from b : Board', '// by the door', '3 ft to a.two', '3 ft to c : Board')).toEqual([
    'area Attic',
    'from b : Board',
    'area "Cellar"',
    '// by the door',
    '3 ft to a.two',
    'area "Attic"',
    '3 ft to c : Board',
  ]);
  expect(mended('area Attic', 'from a.two', '3 ft to c : Board')).toEqual([
    'area "Cellar"',
    'from a.two',
    'area "Attic"',
    '3 ft to c : Board',
  ]);
  expect(mended('area Attic', 'from b : Board', '3 ft to a.two', 'area Yard', '3 ft to c : Board')).toEqual([
    'area Attic',
    'from b : Board',
    'area "Cellar"',
    '3 ft to a.two',
    'area Yard',
    '3 ft to c : Board',
  ]);
});

it('offers the other area too, and none where two headings of one bus would have to change', () => {
  const titles = (text: string) =>
    checkText(text, ['area-contradicted'])[0]!
      .fixes()
      .map(({ title }) => title);
  expect(titles(storeOf('area Attic', 'from a.two'))).toEqual([
    'Put a.two under area Cellar, as a.one is',
    'Put a.one under area Attic, as a.two is',
  ]);
});
