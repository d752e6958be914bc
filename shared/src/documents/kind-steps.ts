/** What is proven of a bus between its shield and its power, by kind. Common practice, no published source. */
import { type BusStudy, isUnknown } from '../figures/study.js';
import type { Range } from '../known.js';
import { type Landing, rs485Kinds } from '../network.js';
import { formatOhms, type Ohms } from '../quantity.js';

/** Steps while nothing is powered. */
export function deadSteps(study: BusStudy): string[] {
  const { kind } = study.bus;
  if (kind === 'ethernet') {
    return [
      'Links: test each link from end to end with a cable tester: all pairs through, none crossed or split, length as planned.',
    ];
  }
  if (kind === 'contact-loop') {
    return [
      'Loop: lifted off its input and with every contact at rest, read the meter at every landing and compare with the table.',
      'Contacts: work each contact in turn and read the meter at the input\u2019s end of the lifted loop; compare with the table of states. Then land the loop again.',
    ];
  }
  if (kind === 'supply') {
    return [
      'Wires: no short from plus to minus nor from either to earth, with the loads unplugged and the fuses out.',
      'Fuses: of the size that the landing schedule says, and not put in before the next step.',
    ];
  }
  if (kind === undefined) return [];
  return [...loopStep(study), terminatorStep(study)];
}

/** Steps after the power is on, before there is traffic. */
export function quietSteps({ bus }: BusStudy): string[] {
  if (bus.kind === 'supply') {
    return [
      'Voltage: put the fuses in one by one; read at every load with everything switched on, and compare with the table.',
    ];
  }
  if (bus.kind === 'contact-loop') {
    return [
      'States: work each contact once more; the input shows what the table of states says, and normal again after it.',
    ];
  }
  if (bus.kind === undefined || !rs485Kinds.has(bus.kind) || bus.biases.length === 0) return [];
  return [
    'Idle level: keep the head from polling. Read plus to minus at every landing and compare. A negative reading is a reversed pair; near zero, nothing biases.',
  ];
}

/** The last proof; a supply and a loop carry no traffic. */
export function trafficSteps({ bus }: BusStudy): string[] {
  if (bus.kind === 'supply' || bus.kind === 'contact-loop') return [];
  return [
    'Traffic: let the head poll. Every device answers, its light does as listed below; note error counters after ten minutes.',
  ];
}

function loopStep({ bus, shape, loopResistance }: BusStudy): string[] {
  const [first, last] = (shape.ends ?? []).map((end) => bus.landings[end]?.name ?? '');
  if (isUnknown(loopResistance) || first === undefined || last === undefined) return [];
  return [
    `Loop: terminators off, devices unplugged, wires joined at ${last}: an ohmmeter at ${first} reads ${rangeText(loopResistance)}. With the wires parted again it reads open.`,
  ];
}

function terminatorStep({ bus }: BusStudy): string {
  const carrying = bus.landings.filter(({ terminations }) => 0 < terminations.length);
  const where = carrying.length === 0 ? 'no landing, by this plan' : carrying.map(({ name }) => name).join(' and ');
  const quiet = carrying.some(blocksDirectCurrent) ? ' A terminator with a capacitor in series reads open.' : '';
  return `Terminators: on at ${where}, off everywhere else. Plug the devices in one by one. Read the meter at every landing and compare with the table.${quiet}`;
}

const blocksDirectCurrent = ({ terminations }: Landing) =>
  terminations.some(({ capacitance }) => capacitance !== undefined);

const rangeText = ({ nominal, low, high }: Range<Ohms>) =>
  `${formatOhms(nominal)} (${formatOhms(low)} to ${formatOhms(high)})`;
