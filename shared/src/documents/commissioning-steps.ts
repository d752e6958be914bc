/**
 * The order in which a bus is proven: dead first, then from what harms most when it is wrong to what harms least.
 * Common practice, no published source, except where a step names one.
 */
import { type BusStudy, isUnknown } from '../figures/study.js';
import type { Range } from '../known.js';
import { type Landing, rs485Kinds } from '../network.js';
import { formatOhms, type Ohms } from '../quantity.js';

export function commissioningSteps(study: BusStudy): string[] {
  const { bus } = study;
  const isPair = bus.kind !== undefined && rs485Kinds.has(bus.kind);
  return [
    'Dead: switch off and lock out every supply of the devices of this bus, and all else in their panels. Prove dead: no voltage between the wires, nor from any of them to earth.',
    'Look: go along the bus with the landing schedule; every landing as it says, labels on, no strand outside its screw.',
    ...shieldStep(study),
    ...(isPair ? loopSteps(study) : []),
    ...addressStep(study),
    'Power: take the locks off with whoever set them, switch on, and look for lights and smells that should not be.',
    ...(isPair && 0 < bus.biases.length
      ? [
          'Idle level: keep the head from polling. Read plus to minus at every landing and compare. A negative reading is a reversed pair; near zero, nothing biases.',
        ]
      : []),
    'Traffic: let the head poll. Every device answers, its light does as listed below; note error counters after ten minutes.',
    'Record: as found and as left, with the temperature; leave a copy in the panel.',
  ];
}

function shieldStep({ bus }: BusStudy): string[] {
  const shielded = bus.runs.some(({ cable, spare }) => !spare && (cable?.shield ?? 'none') !== 'none');
  if (!shielded) return [];
  const names = bus.earths.flatMap(({ landing }) => (landing === undefined ? [] : (bus.landings[landing]?.name ?? [])));
  if (names.length === 0)
    return ['Shield: continuous from end to end. The plan earths it nowhere: ask before you power up.'];
  const where = names.join(' and ');
  return [
    `Shield: with its earth at ${where} lifted and the devices unplugged, more than 1 Mohm from shield to earth and from each wire to shield, and continuity from end to end. Then put the earth back.`,
  ];
}

function loopSteps({ bus, shape, loopResistance }: BusStudy): string[] {
  const carrying = bus.landings.filter(({ terminations }) => 0 < terminations.length);
  const [first, last] = (shape.ends ?? []).map((end) => bus.landings[end]?.name ?? '');
  const loop =
    isUnknown(loopResistance) || first === undefined || last === undefined
      ? []
      : [
          `Loop: terminators off, devices unplugged, wires joined at ${last}: an ohmmeter at ${first} reads ${rangeText(loopResistance)}. With the wires parted again it reads open.`,
        ];
  const quiet = carrying.some((landing) => blocksDirectCurrent(landing))
    ? ' A terminator with a capacitor in series reads open.'
    : '';
  return [
    ...loop,
    `Terminators: on at ${carrying.length === 0 ? 'no landing, by this plan' : carrying.map(({ name }) => name).join(' and ')}, off everywhere else. Plug the devices in one by one. Read the meter at every landing and compare with the table.${quiet}`,
  ];
}

const blocksDirectCurrent = ({ terminations }: Landing) =>
  terminations.some(({ capacitance }) => capacitance !== undefined);

function addressStep({ bus }: BusStudy): string[] {
  if (!bus.landings.some(({ address }) => address)) return [];
  return [
    'Addresses: one device after the other by the address table; read each one back, and let a second person read it.',
  ];
}

const rangeText = ({ nominal, low, high }: Range<Ohms>) =>
  `${formatOhms(nominal)} (${formatOhms(low)} to ${formatOhms(high)})`;
