/** What the landing schedule tells the installer of a contact loop: a slip here defeats an alarm. */
import { expect, it } from 'vitest';
import { studyText } from '../../../language/src/testing/study-text.js';
import { loopExample } from '../rules/loop/example.js';
import { landingSchedule } from './landing-schedule.js';

/** `terminal: in / out` of each screw of a landing, and what is to be done there. */
function told(statements: readonly string[], name: string) {
  const [block] = landingSchedule(studyText(loopExample(statements)), 'test', ['ft']);
  if (block?.kind !== 'table') throw new Error('the schedule starts with its table');
  const rows = block.table.rows.map(({ cells }) =>
    cells.map((cell) => (cell.kind === 'text' ? cell.lines.join('; ') : '')),
  );
  const own = rows.filter((cells) => cells[1] === name && cells[3] !== 'cable');
  return { screws: own.map((cells) => `${cells[3]}: ${cells[4]} / ${cells[5]}`), todo: own[0]?.[6] };
}

it('a contact that breaks a conductor has its two ends, and the other conductor passes by', () => {
  const { screws, todo } = told(
    ['9 ft to a : CallButton breaks - bridged 4.7 kohm', '9 ft to b : CallButton breaks -'],
    'a',
  );
  expect(screws).toEqual(['1: minus: black / ', '2:  / minus: black', 'joined, off the device: plus: red / plus: red']);
  expect(todo).toBe(
    'Contact, at rest closed: cut the minus wire and land its two ends on the contact; bridge it with 4.7 kohm',
  );
});

it('the resistor at the end lies behind a contact that breaks a conductor, never before it', () => {
  expect(told(['9 ft to a : CallButton breaks + terminate resistor 4.7 kohm'], 'a').todo).toContain(
    'End of line: land a resistor, 4.7 kohm, from 2, behind the contact, to the minus wire; not across the pair that arrives',
  );
  expect(told(['9 ft to a : Float across terminate resistor 4.7 kohm'], 'a').todo).toContain(
    'End of line: land a resistor, 4.7 kohm, across the pair',
  );
});

it('a contact across the pair has both conductors', () => {
  const { screws, todo } = told(['9 ft to a : Float across through 2.2 kohm'], 'a');
  expect(screws).toEqual(['1 (plus): red / ', '2 (minus): black / ']);
  expect(todo).toBe('Contact, at rest open: land it across the two wires through 2.2 kohm');
});
