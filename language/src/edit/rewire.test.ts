/** A bus drawn anew: comments stay with what they speak of. */
import { expect, it } from 'vitest';
import { checkText } from '../testing/check-text.js';
import { fixText } from '../testing/fix-text.js';

const textOf = (statements: string) => `cable Pair22 { conductor 22 AWG stranded twisted pairs 1 impedance 120 ohm }
device Head { role head port field : rs485 { terminator switch 120 ohm } }
device Board { port field : rs485 { terminator switch 120 ohm address dial 1..99 } }
store hill {
  bus cases : modbus-rtu 19200 8E1 on Pair22 {
${statements}
  }
}
`;

it('moves each comment with its landing, and leaves those of other statements', () => {
  const star = textOf(`    // the panel
    from head : Head terminate switch // by the door
    10 ft to a : Board address 1

    // aisle two,
    /* over the
       beam */
    20 ft to b : Board address 2 /* far */ // off
    from a // back
    // the freezer
    30 ft to c : Board address 3 terminate switch
    // why it is warm
    ambient 30 degC // roof
    // last words`);
  const [finding] = checkText(star, ['branching']);
  expect(finding?.fixes()).toHaveLength(1);
  const mended = fixText(star, finding!);
  expect(mended).toBe(
    textOf(`    // aisle two,
    /* over the
       beam */
    from b : Board address 2 terminate switch /* far */ // off
    20 ft to a : Board address 1 // back
    // the panel
    10 ft to head : Head // by the door
    // the freezer
    40 ft to c : Board address 3 terminate switch
    // why it is warm
    ambient 30 degC // roof
    // last words`),
  );
  expect(checkText(mended, ['branching', 'syntax', 'end-unterminated', 'terminator-midline'])).toEqual([]);
});

it('keeps each landing in its area', () => {
  const star = textOf(`    from head : Head terminate switch
    // along the glass
    area "Front" // sales
    10 ft to a : Board address 1
    20 ft to b : Board address 2 terminate switch
    area Back
    from a
    30 ft to c : Board address 3
    area Cellar
    ambient 30 degC`);
  const [finding] = checkText(star, ['branching']);
  const mended = fixText(star, finding!);
  expect(mended).toBe(
    textOf(`    // along the glass
    area "Front" // sales
    from b : Board address 2 terminate switch
    20 ft to a : Board address 1
    area ""
    10 ft to head : Head
    area Back
    40 ft to c : Board address 3 terminate switch
    area Cellar
    ambient 30 degC`),
  );
});
