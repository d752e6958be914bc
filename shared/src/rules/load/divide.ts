/**
 * A bus that one line cannot hold, divided at repeaters of the catalogue: as few as keep every part within its limits.
 *
 * No document that is known here limits how many repeaters may follow one another on RS-485: the Modbus guide and
 * ASHRAE 135 count length and load by segment, and the 40 bit times that an MS/TP node waits before it sends cover the
 * turn-off of repeaters, which run down at the same time however many there are.
 */
import type { BusStudy } from '../../figures/study.js';
import type { AddedPart, Fix, NewPort, NewRepeater } from '../../finding.js';
import { allListed } from '../../known.js';
import { fitsImpedance } from '../../limits/due-terminator.js';
import { usualTerminator } from '../../limits/terminator.js';
import type { Bus, Port, Run, Store } from '../../network.js';
import { formatNumber, metres } from '../../quantity.js';
import { DivisibleChain, isDivisible, jumperOf, type Repeater, repeatersFor } from './divide-chain.js';
import { type Division, fullest, isBiased, type Part } from './divide-place.js';
import { dividedPart, type Section } from './divided-part.js';

/** More makes of repeater than this say no more. */
const mostChoices = 3;

type PartText = (part: Part, study: BusStudy) => string;

/** What a part has of what its bus has too much of. */
export const partTexts = {
  length: ({ length }, { lengthText }) => lengthText(metres(length)),
  loads: ({ loads }) => `${formatNumber(loads, 2)} unit loads`,
  devices: ({ devices }) => `${devices} devices`,
} as const satisfies Readonly<Record<string, PartText>>;

/** One fix for each repeater of the catalogue by which the bus can be divided so that every part keeps its limits. */
export function divideFixes(study: BusStudy, partText: PartText): Fix[] {
  if (!isDivisible(study)) return [];
  const chain = new DivisibleChain(study);
  return repeatersFor(study)
    .flatMap((repeater) => divideFix(chain, repeater, partText) ?? [])
    .slice(0, mostChoices);
}

/** What is to be done about a bus that one line cannot hold, or why repeaters do not help. */
export function divideAdvice(study: BusStudy): string {
  if (!isDivisible(study)) return 'divide it with a repeater';
  const repeaters = repeatersFor(study);
  if (!repeaters.length) return 'divide it with a repeater, of which the catalogue has none that takes it';
  const chain = new DivisibleChain(study);
  const [least] = repeaters
    .flatMap(({ ends }) => firstOf(chain.stretches.divisions(ends)) ?? [])
    .sort((left, right) => left.cuts.length - right.cuts.length);
  if (least) {
    const count = least.cuts.length;
    const what = count === 1 ? 'a repeater' : `${count} repeaters`;
    // How long a part its bias can hold shows only when that is computed, for a fix.
    const isSure = !least.parts.some((part) => isBiased(study, part));
    return isSure ? `divide it with ${what}` : `divide it with ${what} at least, so that bias can hold each part`;
  }
  const hopeless = chain.stretches.hopeless(repeaters[0]!.ends);
  if (!hopeless) return 'no repeaters beside its devices keep every part within its limits';
  const { position, run, part } = hopeless;
  const name = chain.landingAt(position).name;
  const what = run ? `the run from ${name} to ${chain.landingAt(position + 1).name}` : `what hangs at ${name}`;
  return `no repeater helps, because ${what} alone has ${partTexts[fullest(study, part).of](part, study)}`;
}

const firstOf = <Value>(values: Iterable<Value>): Value | undefined => {
  for (const value of values) return value;
  return undefined;
};

/** Where no resistor biases one of the fewest parts, shorter ones are tried, up to so many more. */
const mostMore = 3;

function divideFix(chain: DivisibleChain, repeater: Repeater, partText: PartText): Fix | undefined {
  let fewest: number | undefined;
  for (const division of chain.stretches.divisions(repeater.ends)) {
    fewest ??= division.cuts.length;
    if (fewest + mostMore < division.cuts.length) break;
    const fix = fixOf(chain, repeater, division, partText);
    if (fix) return fix;
  }
  return undefined;
}

function fixOf(chain: DivisibleChain, repeater: Repeater, division: Division, partText: PartText): Fix | undefined {
  const { study, stretches } = chain;
  const { bus, store } = study;
  const { cuts } = division;
  const [keptSection, ...addedSections] = sectionsOf(chain, division);
  const kept = dividedPart(chain, repeater, keptSection);
  const taken = new Set<string>();
  const added: AddedPart[] = [];
  for (const [index, section] of addedSections.entries()) {
    const part = dividedPart(chain, repeater, section);
    if (!part) return undefined;
    const letter = String.fromCharCode('B'.charCodeAt(0) + index);
    const isTaken = (name: string) => taken.has(name) || store.buses.some((one) => one.name === name);
    added.push({ ...part, name: freeName(`${bus.name}${letter}`, isTaken, taken), beyond: section.beyond! });
  }
  if (!kept) return undefined;
  const nodes = new Set<string>();
  const repeaters = cuts.map((cut): NewRepeater => {
    const node = freeName('repeater1', (name) => nodes.has(name) || isNamed(store, name), nodes);
    const run = stretches.between[cut]!;
    const { device, near, far } = repeater;
    return { node, device: device.name, near: newPort(bus, near, run), far: newPort(bus, far, run) };
  });
  const beside = allListed(cuts.map((cut) => chain.landingAt(chain.besideCut(cut)).name));
  const become = addedSections.map(({ part }, index) => `${partText(part, study)} become bus ${added[index]!.name}`);
  const [by, jumpers] =
    cuts.length === 1
      ? [repeater.device.name, 'to the repeater']
      : [`${cuts.length} of ${repeater.device.name}`, 'to each repeater'];
  return {
    title: `Divide bus ${bus.name} with ${by} beside ${beside}: ${partText(keptSection.part, study)} stay, ${allListed(become)} (the ${study.lengthText(jumperOf(bus))} ${jumpers} are not measured)`,
    safe: false,
    edits: [{ kind: 'divide', bus: bus.index, repeaters, kept, added }],
  };
}

/** The part with the head, then the others as they follow it to the one side and to the other. */
function sectionsOf({ head, study }: DivisibleChain, { cuts, parts }: Division): [Section, ...Section[]] {
  const sections = parts.map(
    (part, index): Omit<Section, 'beyond'> => ({
      begin: index === 0 ? 0 : cuts[index - 1]! + 1,
      end: cuts[index] ?? study.shape.trunk.length - 1,
      part,
      before: index === 0 ? undefined : index - 1,
      behind: index === cuts.length ? undefined : index,
    }),
  );
  const keptAt = sections.findIndex(({ begin, end }) => begin <= head && head <= end);
  return [
    { ...sections[keptAt]!, beyond: undefined },
    ...sections.slice(keptAt + 1).map((section) => ({ ...section, beyond: section.before })),
    ...sections
      .slice(0, keptAt)
      .toReversed()
      .map((section) => ({ ...section, beyond: section.behind })),
  ];
}

/** The terminator of the repeater's own port where it fits the cable, else a resistor that does. */
function newPort(bus: Bus, { name, terminator }: Port, { cable }: Run): NewPort {
  const due = cable?.impedance ?? usualTerminator;
  if (terminator?.mode === 'fixed') return { port: name, terminator: 'fixed' };
  const fits = terminator && fitsImpedance(bus, terminator.resistance, due);
  return { port: name, terminator: fits ? 'switch' : { resistance: due } };
}

const isNamed = ({ nodes, buses }: Store, name: string) =>
  nodes.some((node) => node.name === name) ||
  buses.some((bus) => bus.name === name || bus.landings.some(({ splice }) => splice === name));

/** The name, or with its last letter or digit counted on until nobody has it; it is taken then. */
function freeName(name: string, isTaken: (name: string) => boolean, taken: Set<string>): string {
  let free = name;
  for (let count = 2; isTaken(free); count++)
    free = /\d$/.test(name) ? `${name.slice(0, -1)}${count}` : `${name}${count}`;
  taken.add(free);
  return free;
}
