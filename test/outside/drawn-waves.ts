/** Random buses with faults, and the same circuits in ngspice's words, written from the bus alone. */
import type { Bus, Cable, LandingIndex } from '../../shared/src/network.js';
import type { Fault } from '../../shared/src/physics/wave/fault.js';
import { edgePerSigma, gaussianIntegral } from '../../shared/src/physics/wave/step-response.js';
import { chanceOf } from '../../shared/src/testing/chance.js';
import { type BuiltBus, busOf, testCable, testDevice } from '../../shared/src/testing/network.js';

export const shapes = ['chain', 'taps', 'star', 'ring'] as const;
export const faultKinds = [
  'none',
  'missing terminator',
  'extra terminator',
  'open run',
  'short',
  'crossed landing',
  'other cable',
  'longer run',
] as const;

export interface DrawnWave {
  readonly built: BuiltBus;
  readonly faults: readonly Fault[];
  readonly driver: LandingIndex;
  /** 10 to 90 %, in seconds. */
  readonly edge: number;
  readonly bitTime: number;
  readonly bits: string;
}

const speed = 0.66 * 299_792_458;

/** The same for the same seed. Runs are long against the simulator's step, so that it need not take too many. */
export function drawnWave(seed: number): DrawnWave {
  const chance = chanceOf(seed);
  const among = (low: number, high: number) => low + chance() * (high - low);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(chance() * list.length)]!;
  const shape = shapes[seed % shapes.length]!;
  const faultKind = faultKinds[Math.floor(seed / shapes.length) % faultKinds.length]!;
  const count = seed % 40 === 0 ? 40 : 2 + Math.floor(chance() ** 2 * 11);
  const cables = [120, 100, 150].map((impedance, index) =>
    testCable({
      name: `Pair${impedance}`,
      impedance: impedance as never,
      resistance: [0.053, 0.084, 0.021][index] as never,
    }),
  );
  const longest = 600 / count;
  const words = (index: number) => ({
    device: testDevice('Any', {
      unitLoad: pick([0.125, 0.25, 1]),
      ...(chance() < 0.5 && { capacitance: among(10e-12, 100e-12) as never }),
    }),
    cable: chance() < 0.8 ? cables[0]! : pick(cables),
    ...((index === 0 || index === count - 1) && chance() < 0.9 && { terminate: terminatorOf(chance, pick) }),
  });
  const bus = busOf('rs485', { cable: cables[0]! }).from('n0', words(0));
  const length = () => among(longest / 3, longest);
  for (let index = 1; index < count; index++) {
    if (shape === 'star') bus.from(pick(['n0', `n${Math.floor(index / 2)}`])).to(`n${index}`, length(), words(index));
    else if (shape === 'taps' && chance() < 0.3) bus.tap(`n${index}`, length() / 2, words(index));
    else bus.to(`n${index}`, length(), words(index));
  }
  if (shape === 'ring' && 2 < count) bus.to('n0', length());
  if (chance() < 0.5) bus.bias(`n${Math.floor(chance() * count)}`, 560);
  const built = bus.built();
  const across = built.bus.runs.reduce((sum, run) => sum + run.length, 0) / speed;
  const edge = among(0.1, 0.5) * across;
  return {
    built,
    faults: count < 2 ? [] : faultsOf(faultKind, built.bus, chance, cables),
    driver: Math.floor(chance() * count),
    edge,
    bitTime: among(3.3, 6) * edge,
    bits: '01101',
  };
}

function terminatorOf(chance: () => number, pick: <T>(list: readonly T[]) => T) {
  if (chance() < 0.2) {
    return [{ means: 'resistor', resistance: 120, capacitance: 10e-9, place: { file: '', start: 0, end: 0 } }] as never;
  }
  return pick([120, 120, 120, 150, 100, 60]);
}

function faultsOf(
  kind: (typeof faultKinds)[number],
  bus: Bus,
  chance: () => number,
  cables: readonly Cable[],
): readonly Fault[] {
  const run = Math.floor(chance() * bus.runs.length);
  const at = (0.2 + 0.6 * chance()) as never;
  const landing = Math.floor(chance() * bus.landings.length);
  switch (kind) {
    case 'none':
      return [];
    case 'missing terminator':
      return [{ kind: 'terminators', landing: 0, terminations: [] }];
    case 'extra terminator':
      return [{ kind: 'terminators', landing, terminations: [{ resistance: 120 as never }] }];
    case 'crossed landing':
      return [{ kind: 'crossed', landing }];
    case 'open run':
      return [{ kind: 'open', run, at }];
    case 'short':
      return [{ kind: 'short', run, at, resistance: (chance() * 50) as never }];
    case 'other cable':
      return [{ kind: 'cable', run, cable: cables[2]! }];
    case 'longer run':
      return [{ kind: 'length', run, length: (bus.runs[run]!.length * 2) as never }];
  }
}

/** The bus with its faults and its bias; nodes of landings are n0, n1 … `lineOptions` are words of the simulator for its lines. */
export function netlistOf({ built, faults }: Pick<DrawnWave, 'built' | 'faults'>, lineOptions = ''): string[] {
  const { bus } = built;
  const lines: string[] = [];
  const models = new Map<string, string>();
  const element = (letter: string) => `${letter}${lines.length}`;
  const line = (from: string, to: string, length: number, cable: Cable) => {
    const name = `M${models.size}`;
    const [impedance, resistance] = [cable.impedance!, cable.resistance!];
    lines.push(`${element('O')} ${from} 0 ${to} 0 ${name}`);
    const perMetre = `R=${2 * resistance} L=${impedance / speed} C=${1 / (impedance * speed)}`;
    models.set(name, `.model ${name} LTRA(${perMetre} LEN=${length} ${lineOptions})`);
  };
  for (const run of bus.runs) {
    let { length, cable } = run as { length: number; cable?: Cable };
    let [from, done] = [`n${run.from}`, 0];
    for (const fault of faults) {
      if (!('run' in fault) || fault.run !== run.index) continue;
      if (fault.kind === 'length') length = fault.length;
      if (fault.kind === 'cable') cable = fault.cable;
      if (fault.kind !== 'open' && fault.kind !== 'short') continue;
      line(from, 'fault', fault.at * length, cable!);
      done = fault.at;
      from = fault.kind === 'open' ? 'behind' : 'fault';
      lines.push(`${element('R')} fault 0 ${fault.kind === 'open' ? 1e9 : Math.max(1e-3, fault.resistance)}`);
      if (fault.kind === 'open') lines.push(`${element('R')} behind 0 1e9`);
    }
    line(from, `n${run.to}`, (1 - done) * length, cable!);
  }
  for (const { index, terminations, port } of bus.landings) {
    const fault = faults.find((one) => one.kind === 'terminators' && one.landing === index);
    const carried = fault?.kind === 'terminators' ? fault.terminations : terminations;
    for (const { resistance, capacitance } of carried) {
      const inner = capacitance === undefined ? '0' : `t${lines.length}`;
      lines.push(`${element('R')} n${index} ${inner} ${resistance}`);
      if (capacitance !== undefined) lines.push(`${element('C')} ${inner} 0 ${capacitance}`);
    }
    lines.push(`${element('R')} n${index} 0 ${port!.resistance ?? 24_000 / port!.unitLoad!}`);
    if (port!.capacitance) lines.push(`${element('C')} n${index} 0 ${port!.capacitance}`);
  }
  for (const { landing, up, down, supply } of bus.biases) {
    const crossed = faults.some((fault) => fault.kind === 'crossed' && fault.landing === landing);
    const inner = `b${lines.length}`;
    lines.push(`${element('R')} n${landing} ${inner} ${up + down}`);
    lines.push(`${element('V')} ${inner} 0 ${crossed ? -supply : supply}`);
  }
  return [...lines, ...models.values()];
}

/**
 * Node `source`: a piecewise linear voltage from one level to another, by Gaussian edges in the middle of which bits begin.
 */
export function sourceOf(
  { bits, bitTime, edge }: Pick<DrawnWave, 'bits' | 'bitTime' | 'edge'>,
  [zero, one]: readonly [zero: number, one: number],
  { sigmas, corners }: EdgeDetail = fineEdge,
): string {
  const sigma = edge / edgePerSigma;
  const level = (bit: number) => (bits[bit] === '1' ? one : zero);
  const points: string[] = [`0 ${level(0)}`];
  for (let bit = 1; bit < bits.length; bit++) {
    if (level(bit) === level(bit - 1)) continue;
    for (let corner = 0; corner < corners; corner++) {
      const from = sigmas * ((2 * corner) / (corners - 1) - 1);
      const share = corner === 0 ? 0 : corner === corners - 1 ? 1 : gaussianIntegral(from);
      points.push(`${bit * bitTime + from * sigma} ${level(bit - 1) + (level(bit) - level(bit - 1)) * share}`);
    }
  }
  return `V1 source 0 PWL(${points.join(' ')})`;
}

/** How finely a Gaussian edge is told: by so many corners from so many sigmas before its middle to as many after it. */
export interface EdgeDetail {
  readonly sigmas: number;
  readonly corners: number;
}

const fineEdge: EdgeDetail = { sigmas: 4, corners: 41 };
