/** Meter readings and dominant levels of CAN against ngspice (npm package `eecircuit-engine`): random lines with taps. */
import { Simulation } from 'eecircuit-engine';
import { beforeAll, describe, expect, it } from 'vitest';
import { isUnknown } from '../../shared/src/figures/study.js';
import { ohms, ohmsPerMetre } from '../../shared/src/quantity.js';
import { chanceOf } from '../../shared/src/testing/chance.js';
import { type BuiltBus, busOf, testCable, testDevice } from '../../shared/src/testing/network.js';

const perMetre = 0.06;

/** The same for the same seed. */
function drawnBus(seed: number): BuiltBus {
  const chance = chanceOf(seed);
  const among = (low: number, high: number) => low + chance() * (high - low);
  const node = () => ({ device: testDevice('Node', { kind: 'can', resistance: ohms(among(8000, 60_000)) }) });
  const count = 3 + Math.floor(chance() * 12);
  const bus = busOf('can', { cable: testCable({ resistance: ohmsPerMetre(perMetre) }) });
  bus.from('n0', { ...node(), terminate: among(100, 130) });
  for (let index = 1; index < count; index++) {
    if (chance() < 0.3) bus.tap(`t${index}`, among(0.5, 5), node());
    bus.to(`n${index}`, among(1, 80), { ...node(), ...(index === count - 1 && { terminate: among(100, 130) }) });
  }
  return bus.built();
}

/** The network in ngspice's words, its nodes named by a prefix. */
function netlist({ bus }: BuiltBus, prefix: string): string[] {
  const lines: string[] = [];
  const resistor = (left: string, right: string, value: number) =>
    lines.push(`R${prefix}_${lines.length} ${prefix}${left} ${prefix}${right} ${value}`);
  for (const { from, to, length } of bus.runs)
    for (const wire of ['p', 'm']) resistor(`${wire}${from}`, `${wire}${to}`, length * perMetre);
  for (const { index, terminations, port } of bus.landings) {
    for (const { resistance } of terminations) resistor(`p${index}`, `m${index}`, resistance);
    resistor(`p${index}`, `m${index}`, port!.resistance!);
  }
  return lines;
}

describe('CAN against ngspice', () => {
  const simulation = new Simulation();
  beforeAll(async () => simulation.start());

  it.each(Array.from({ length: 12 }, (_, seed) => seed + 1))('seed %i', async (seed) => {
    const built = drawnBus(seed);
    const { bus, study } = built;
    const drivers = study.shape.ends!;
    const lines = [
      // An ampere into each landing of a copy of its own, and each end driving a copy of its own.
      ...bus.landings.flatMap(({ index }) => [
        ...netlist(built, `k${index}`),
        `V${index} k${index}m${index} 0 0`,
        `I${index} 0 k${index}p${index} 1`,
      ]),
      ...drivers.flatMap((end) => [
        ...netlist(built, `d${end}`),
        `Vd${end} d${end}p${end} d${end}m${end} 1.5`,
        `Vg${end} d${end}m${end} 0 0`,
      ]),
    ];
    simulation.setNetList(['* bus', ...lines, '.op', '.end'].join('\n'));
    const result = await simulation.runSim();
    // A run that failed does not throw: it has no data, and the reason among the errors.
    expect(result.data.length, simulation.getError().join('\n')).toBeGreaterThan(0);
    const voltages = new Map(result.data.map(({ name, values }) => [name.toLowerCase(), Number(values[0])]));
    const between = (prefix: string, index: number) =>
      voltages.get(`v(${prefix}p${index})`)! - (voltages.get(`v(${prefix}m${index})`) ?? 0);
    for (const { index } of bus.landings) {
      const meter = study.meter[index]!;
      const dominant = study.driven[index]!;
      if (isUnknown(meter) || isUnknown(dominant))
        throw new Error('the figures of a network that states everything are known');
      expect(Math.abs(meter.nominal / between(`k${index}`, index) - 1)).toBeLessThan(1e-4);
      const level = Math.min(...drivers.map((end) => between(`d${end}`, index)));
      expect(Math.abs(dominant.nominal / level - 1)).toBeLessThan(1e-4);
    }
  });
});
