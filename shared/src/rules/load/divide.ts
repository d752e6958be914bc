/** A bus that one line cannot hold, divided in two at a repeater of the catalogue. */
import type { BusStudy } from '../../figures/study.js';
import type { CourseStep, DividedStep, Fix, NewPort } from '../../finding.js';
import { fitsImpedance } from '../../limits/due-terminator.js';
import { usualTerminator } from '../../limits/terminator.js';
import type { Bus, Device, Port, Run, Store } from '../../network.js';
import { servingPorts, takesRate } from '../../ports.js';
import { type Metres, metres, metresPerFoot } from '../../quantity.js';
import { isShielded } from '../pair/cables.js';
import { canRewire, courseOf, shortestChain } from '../shape/straighten.js';
import { newBias } from './bias-choice.js';
import { bestPlace, type DividePlace, isBiased, type Part, positionsOf } from './divide-place.js';
import { partBus } from './part-bus.js';

/** More repeaters than this say no more. */
const mostChoices = 3;

/** From the repeater to the device beside it, in the same panel. Common practice, no published source. */
const jumperOf = ({ lengthUnit }: Bus): Metres => metres(lengthUnit === 'ft' ? 3 * metresPerFoot : 1);

/** One fix for each repeater of the catalogue that divides the bus so that both parts keep their limits. */
export function divideFixes(study: BusStudy, partText: (part: Part) => string): Fix[] {
  const { bus, shape, store } = study;
  if (bus.damaged || bus.unclear || !shape.ends || !canRewire(bus, shape)) return [];
  const positions = positionsOf(study);
  return store.choices.repeaters
    .flatMap((device) => divideFix(study, positions, device, partText) ?? [])
    .slice(0, mostChoices);
}

function divideFix(
  study: BusStudy,
  positions: readonly number[],
  device: Device,
  partText: (part: Part) => string,
): Fix | undefined {
  const { bus, shape, store, head } = study;
  const [near, far] = portsFor(device, bus);
  if (!near || !far) return undefined;
  const headPosition = head ? positions[head.index]! : 0;
  const jumper = jumperOf(bus);
  const keepsFirst = (position: number) => headPosition <= position;
  const place = bestPlace(study, positions, (position) => {
    const kept = partOf(near, jumper);
    const added = partOf(far, 0);
    // The cable that led on from here leads to the repeater, or from it.
    const run = lengthBetween(study, position);
    return keepsFirst(position) ? [kept, { ...added, length: run }] : [{ ...added, length: run }, kept];
  });
  if (!place) return undefined;
  const first = keepsFirst(place.position);
  const [keptPart, addedPart] = first ? [place.first, place.second] : [place.second, place.first];
  const inKept = (landing: number) => positions[landing]! <= place.position === first;
  const [before, behind] = [
    bus.landings[shape.trunk[place.position]!]!,
    bus.landings[shape.trunk[place.position + 1]!]!,
  ];
  const beside = first ? before : behind;
  const anchor = head ?? beside;

  const keptBus = partBus(bus, inKept, { at: beside.index, length: jumper, run: place.run, device, port: near });
  const across = first ? behind : before;
  const addedBus = partBus(bus, (landing) => !inKept(landing), {
    at: across.index,
    length: place.run.length,
    run: place.run,
    device,
    port: far,
  });
  const keptBias = missingBias(
    study,
    keptPart,
    keptBus,
    keptBus.landings.findIndex(({ name }) => name === anchor.name),
  );
  const addedBias = missingBias(study, addedPart, addedBus, addedBus.landings.length - 1);
  if (keptBias === 'none serves' || addedBias === 'none serves') return undefined;

  const earthed = bus.earths.map(({ landing }) => landing === undefined || inKept(landing));
  const name = freeName(`${bus.name}B`, (taken) => store.buses.some((one) => one.name === taken));
  const node = freeName('repeater1', (taken) => isNamed(store, taken));
  const steps = dividedCourse(study, place, inKept, first, jumper);
  return {
    title: `Divide bus ${bus.name} with ${device.name} beside ${beside.name}: ${partText(keptPart)} stay, ${partText(addedPart)} become bus ${name} (the ${study.lengthText(jumper)} to the repeater are not measured)`,
    safe: false,
    edits: [
      {
        kind: 'divide',
        bus: bus.index,
        name,
        repeater: {
          node,
          device: device.name,
          near: newPort(bus, near, place.run),
          far: newPort(bus, far, place.run),
        },
        ...steps,
        ...(0 < earthed.length && !earthed.includes(true) && { keptEarth: anchor.index }),
        addedEarth: !earthed.includes(false) && addedBus.runs.some(({ cable }) => isShielded(cable)),
        ...(keptBias !== undefined && { keptBias: { landing: anchor.index, resistor: keptBias } }),
        ...(addedBias !== undefined && { addedBias }),
      },
    ],
  };
}

/** Two ports of a repeater on which the bus can land as it is. */
function portsFor(device: Device, bus: Bus): readonly Port[] {
  const node = { name: device.name, place: device.place, device };
  return servingPorts(node, bus).fit.filter((port) => !port.reserved && (!bus.rate || takesRate(port, bus.rate.value)));
}

const partOf = ({ unitLoad, needsBias, bias }: Port, length: number): Part => ({
  length,
  devices: 1,
  loads: unitLoad ?? Number.NaN,
  biases: bias?.mode === 'fixed' ? 1 : 0,
  needsBias,
});

/** Metres of the trunk run behind a position. */
function lengthBetween({ bus, shape }: BusStudy, position: number): number {
  const [from, to] = [shape.trunk[position]!, shape.trunk[position + 1]];
  const run = bus.landings[from]!.runs.map((index) => bus.runs[index]!).find(
    (one) => !one.tap && (one.from === from ? one.to : one.from) === to,
  );
  return run?.length ?? 0;
}

/** The terminator of the repeater's own port where it fits the cable, else a resistor that does. */
function newPort(bus: Bus, { name, terminator }: Port, { cable }: Run): NewPort {
  const due = cable?.impedance ?? usualTerminator;
  if (terminator?.mode === 'fixed') return { port: name, terminator: 'fixed' };
  const fits = terminator && fitsImpedance(bus, terminator.resistance, due);
  return { port: name, terminator: fits ? 'switch' : { resistance: due } };
}

/** The resistor of a bias that a part has to get; undefined where it needs none, or has one. */
function missingBias(study: BusStudy, part: Part, bus: Bus, landing: number) {
  if (0 < part.biases || !isBiased(study, part)) return undefined;
  return newBias(study.store, bus, landing) ?? 'none serves';
}

function dividedCourse(
  { bus, shape }: BusStudy,
  { position, run }: DividePlace,
  inKept: (landing: number) => boolean,
  keepsFirst: boolean,
  jumper: Metres,
): { readonly kept: readonly DividedStep[]; readonly added: readonly DividedStep[] } {
  const course = courseOf(bus, shape, shortestChain(bus, shape));
  const kept = course.filter(({ landing }) => inKept(landing));
  const added = course.filter(({ landing }) => !inKept(landing));
  // A jumper runs on the cable of the bus, or of the run that it continues where the bus names none.
  const short = { length: jumper, ...(bus.cable ? {} : { run: run.index }) };
  const whole = { length: run.length, run: run.index };
  const next = shape.trunk[position + 1];
  const started = (steps: readonly CourseStep[], piece: typeof short): DividedStep[] => [
    { step: 'from', landing: 'repeater' },
    ...steps.map((step) =>
      step.landing === next && step.step === 'to' ? { step: step.step, landing: step.landing, ...piece } : step,
    ),
  ];
  return keepsFirst
    ? { kept: ended(kept, short), added: started(added, whole) }
    : { kept: started(kept, short), added: ended(added, whole) };
}

/** A course that goes on to the repeater where its trunk ends: what hangs on taps is told behind that. */
function ended(steps: readonly CourseStep[], piece: { readonly length: Metres; readonly run?: number }): DividedStep[] {
  const lifted = steps.findIndex(({ step }, index) => 0 < index && step === 'from');
  return (steps as readonly DividedStep[]).toSpliced(lifted < 0 ? steps.length : lifted, 0, {
    step: 'to',
    landing: 'repeater',
    ...piece,
  });
}

const isNamed = ({ nodes, buses }: Store, name: string) =>
  nodes.some((node) => node.name === name) ||
  buses.some((bus) => bus.name === name || bus.landings.some(({ splice }) => splice === name));

/** The name, or with its last letter or digit counted on until nobody has it. */
function freeName(name: string, isTaken: (name: string) => boolean): string {
  let free = name;
  for (let count = 2; isTaken(free); count++)
    free = /\d$/.test(name) ? `${name.slice(0, -1)}${count}` : `${name}${count}`;
  return free;
}
