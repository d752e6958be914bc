/**
 * Meter readings and idle levels against ngspice (npm package `eecircuit-engine`), a circuit simulator that shares
 * nothing with this project: random chains, stars and rings, sound and with faults.
 */
import { Simulation } from 'eecircuit-engine';
import { beforeAll, describe, expect, it } from 'vitest';
import { isUnknown } from '../../shared/src/figures/study.js';
import { chanceOf } from '../../shared/src/testing/chance.js';
import { type BuiltBus, busOf, headDevice, testCable, testDevice } from '../../shared/src/testing/network.js';

const shapes = ['chain', 'star', 'ring'] as const;
const faults = [
  'none',
  'missing terminator',
  'extra terminator',
  'open run',
  'short',
  'crossed',
  'several biases',
] as const;
const ohmsPerMetre = 0.053;

/** One bus of a shape with a fault; the same for the same seed. */
function drawnBus(seed: number, shape: (typeof shapes)[number], fault: (typeof faults)[number]): BuiltBus {
  const chance = chanceOf(seed);
  const among = (low: number, high: number) => low + chance() * (high - low);
  const count = 4 + Math.floor(chance() * 6);
  const last = count - 1;
  const broken = 1 + Math.floor(chance() * (last - 1));
  const loads = [testDevice('Full', { unitLoad: 1 }), testDevice('Half', { unitLoad: 0.5 }), testDevice('Eighth')];
  const terminators = new Map([[0, 120]]);
  if (fault !== 'missing terminator') terminators.set(last, chance() < 0.5 ? 120 : 150);
  if (fault === 'extra terminator') terminators.set(broken, 120);
  if (fault === 'short') terminators.set(broken, 0.4);
  const words = (index: number) => ({
    device: index === 0 ? headDevice : loads[Math.floor(chance() * loads.length)]!,
    ...(terminators.has(index) && { terminate: terminators.get(index)! }),
    crossed: fault === 'crossed' && index === broken,
  });
  const cable = testCable({ resistance: ohmsPerMetre as never });
  const bus = busOf('rs485', { cable }).from('n0', words(0));
  for (let index = 1; index < count; index++) {
    const length = chance() < 0.1 ? 0 : among(1, 300);
    if (fault === 'open run' && index === broken) bus.loose(length).from(`n${index}`, words(index));
    else if (shape === 'star') bus.from('n0').to(`n${index}`, length, words(index));
    else bus.to(`n${index}`, length, words(index));
  }
  if (shape === 'ring') bus.to('n0', among(1, 300));
  bus.bias('n0', among(450, 650));
  if (fault === 'several biases') bus.bias(`n${broken}`, among(450, 650), among(450, 650), 4.75);
  if (fault === 'crossed') bus.bias(`n${broken}`, among(700, 900));
  return bus.built();
}

/** The same network in ngspice's words, its nodes named by a prefix; `supplies` shorts them when they are off. */
function netlist({ bus }: BuiltBus, prefix: string, powered: boolean): string[] {
  const lines: string[] = [];
  const resistor = (left: string, right: string, value: number) =>
    lines.push(`R${prefix}${lines.length} ${left} ${right} ${Math.max(value, 1e-6)}`);
  for (const run of bus.runs) {
    if (run.to === undefined) continue;
    for (const wire of ['p', 'm'])
      resistor(`${prefix}${wire}${run.from}`, `${prefix}${wire}${run.to}`, run.length * ohmsPerMetre);
  }
  for (const { index, terminations, port } of bus.landings) {
    for (const { resistance } of terminations) resistor(`${prefix}p${index}`, `${prefix}m${index}`, resistance);
    for (const wire of ['p', 'm']) resistor(`${prefix}${wire}${index}`, '0', 12_000 / port!.unitLoad!);
  }
  for (const [index, { landing, up, down, supply }] of bus.biases.entries()) {
    const [upper, lower] = bus.landings[landing!]!.crossed ? ['m', 'p'] : ['p', 'm'];
    lines.push(`V${prefix}${index} ${prefix}rail${index} 0 ${powered ? supply : 0}`);
    resistor(`${prefix}${upper}${landing}`, `${prefix}rail${index}`, up);
    resistor(`${prefix}${lower}${landing}`, '0', down);
  }
  return lines;
}

describe('readings and levels against ngspice', () => {
  const simulation = new Simulation();
  beforeAll(async () => simulation.start());

  /** Operating point of a netlist: node voltages by name. */
  async function operatingPoint(lines: readonly string[]): Promise<Map<string, number>> {
    simulation.setNetList(['* bus', ...lines, '.op', '.end'].join('\n'));
    const result = await simulation.runSim();
    // A run that failed does not throw: it has no data, and the reason among the errors.
    expect(result.data.length, simulation.getError().join('\n')).toBeGreaterThan(0);
    const values = new Map<string, number>();
    for (const { name, values: points } of result.data) values.set(name.toLowerCase(), Number(points[0]));
    return values;
  }

  const cases = Array.from({ length: 42 }, (_, seed) => ({
    seed: seed + 1,
    shape: shapes[seed % shapes.length]!,
    fault: faults[Math.floor(seed / shapes.length) % faults.length]!,
  }));
  it.each(cases)('seed $seed: $shape, fault: $fault', async ({ seed, shape, fault }) => {
    const built = drawnBus(seed, shape, fault);
    const { bus, study } = built;
    const copies = bus.landings.flatMap(({ index }) => [
      ...netlist(built, `k${index}`, false),
      `I${index} k${index}m${index} k${index}p${index} 1`,
    ]);
    const voltages = await operatingPoint([...netlist(built, 'idle', true), ...copies]);
    const between = (prefix: string, index: number) => {
      const [plus, minus] = ['p', 'm'].map((wire) => voltages.get(`v(${prefix}${wire}${index})`));
      return plus! - minus!;
    };
    for (const { index, crossed } of bus.landings) {
      const meter = study.meter[index]!;
      const idle = study.idle[index]!;
      if (isUnknown(meter) || isUnknown(idle))
        throw new Error('the figures of a network that states everything are known');
      const reading = between(`k${index}`, index);
      expect(Math.abs(meter.nominal / reading - 1)).toBeLessThan(1e-3);
      const level = between('idle', index) * (crossed ? -1 : 1);
      expect(Math.abs(idle.nominal - level)).toBeLessThanOrEqual(1e-3 * Math.abs(level) + 1e-7);
      expect(meter.low).toBeLessThan(reading);
      expect(reading).toBeLessThan(meter.high);
      expect(idle.low).toBeLessThanOrEqual(level + 1e-7);
      expect(level - 1e-7).toBeLessThanOrEqual(idle.high);
    }
  });
});
