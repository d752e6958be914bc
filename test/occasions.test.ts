/** A rule that names its occasions has nothing to say of a bus that has none of them, whatever the bus is like. */
import { type Bus, type BusRule, createStudy, rules, type Store } from '@fieldpair/shared';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { projectOf, sampleTexts } from './testing/samples.js';

const examples = rules.flatMap(({ id, explanation: { bad, good } }) => [
  [`${id}-bad.pair`, bad] as const,
  [`${id}-good.pair`, good] as const,
]);
const texts = new Map([...sampleTexts, ...examples]);
const busRules = rules.filter((rule): rule is BusRule => rule.scope === 'bus');

/** The rules that a check does not ask about a bus, and yet have something to say of it. */
function unasked(store: Store, bus: Bus): string[] {
  const study = createStudy(store, bus);
  const found: string[] = [];
  for (const rule of busRules) {
    const { id, kinds, occasions } = rule;
    if (bus.kind === undefined || (kinds !== 'every' && !kinds.includes(bus.kind))) continue;
    if (occasions === undefined || (occasions & study.occasions) !== 0) continue;
    rule.check(study, ({ message }) => found.push(`${id}: ${message}`));
  }
  return found;
}

function unaskedIn(file: string, text: string): string[] {
  const project = projectOf(new Map(texts).set(file, text), [file]);
  return project.storesOf(file).flatMap((store) => store.buses.flatMap((bus) => unasked(store, bus)));
}

it('in the samples and the examples of all rules', () => {
  for (const [file, text] of texts) expect(unaskedIn(file, text), file).toEqual([]);
});

/** What somebody may write otherwise, by line. */
const changes: readonly ((line: string, other: string) => string)[] = [
  () => '',
  (_, other) => other,
  (line, other) => `${line}\n${other}`,
  (line, other) => line.replace(/to \w+/, /to \w+/.exec(other)?.[0] ?? ''),
  (line) => line.replace(/ (terminate|address|shield|because|on|revision) \S+/, ''),
  (line) => line.replace(/\d+/, '0'),
  (line) => line.replace(/\d+(?=\D*$)/, '253'),
  (line) => line.replace(/: ?\S+/, ''),
  (line) => line.replace(/\.\w+/, ''),
  (line) => line.replace(/^( *)(?=\d)/, '$1tap '),
  (line) => line.replace(/ to .*/, ''),
  (line) => line.replace(/\d+ (ft|m) /, (length) => `${length}spare `),
  (line) => line.replace(/modbus-rtu|rs485|can\b/, 'bacnet-mstp'),
  (line) => line.replace(/ [+-] \w+/, ''),
  (line) => line.replace(/\d+(?= ?(ft|m) )/, '$&00'),
  (line) => line.replace(/ (modbus-rtu|rs485|bacnet-mstp) .*? on /, ' $1 on '),
  (line) => line.replace(/ (modbus-rtu|rs485|bacnet-mstp) \d+/, ' $1 500000'),
  (line) => line.replace(/8[NEO][12]/, '8N1'),
  (line) => line.replace(/ on \w+ \{/, ' {'),
  (line) => line.replace(/ shield "\w+"/, ' common "0V"'),
  (line) => line.replace(/load 1\/\d/, 'load 4'),
  ...['crossed', 'shield open', 'terminate switch', 'terminate resistor 120 ohm', 'terminate resistor 60 ohm'].map(
    (words) => (line: string) => `${line} ${words}`,
  ),
  ...['switch off', 'bias needed', 'cords 3 ft', 'shield common'].map((words) => (line: string) => `${line} ${words}`),
  ...[
    'reserved "not enabled"',
    'twin of field',
    'rates 9600 bit/s',
    'bias at head 510 ohm',
    'from nobody',
    'sample at 80 %',
    'colours common blue',
  ].map((words) => (line: string) => `${line}\n${words}`),
];

it('in any text that is changed here and there', () => {
  const change = fc.record({ apply: fc.constantFrom(...changes), at: fc.nat(), other: fc.nat() });
  fc.assert(
    fc.property(fc.constantFrom(...texts), fc.array(change, { minLength: 1, maxLength: 5 }), ([file, text], made) => {
      const lines = text.split('\n');
      for (const { apply, at, other } of made) {
        const index = at % lines.length;
        lines[index] = apply(lines[index] ?? '', lines[other % lines.length] ?? '');
      }
      expect(unaskedIn(file, lines.join('\n'))).toEqual([]);
    }),
    { numRuns: 1500 },
  );
});
