/** Buses for tests of waveforms. */
import type { WaveQuestion, Waves } from '../figures/waves.js';
import { wavesOf } from '../figures/waves.js';
import { isUnknown } from '../known.js';
import { farads, ohms, seconds } from '../quantity.js';
import { chanceOf } from './chance.js';
import { type BuiltBus, busOf, headDevice, testCable, testDevice } from './network.js';

/** The answer, which must be one. */
export function waves({ study }: BuiltBus, question: WaveQuestion): Waves {
  const answer = wavesOf(study, question);
  if (isUnknown(answer)) throw new Error(answer.unknown);
  return answer;
}

export const fast = testDevice('Fast', { edge: seconds(50e-9), capacitance: farads(15e-12) });
export const slow = testDevice('Slow', { edge: seconds(1e-6), capacitance: farads(0) });

/** Landings n0 … 10 m apart, terminated at both ends. */
export function chain(count: number, device = fast, rate = 115_200, kind: 'rs485' | 'can' = 'rs485'): BuiltBus {
  const bus = busOf(kind, { rate }).from('n0', { device, terminate: 120 });
  for (let index = 1; index < count; index++) {
    bus.to(`n${index}`, 10, { device, ...(index === count - 1 && { terminate: 120 }) });
  }
  return bus.built();
}

/** Any bus: trees, rings, islands, taps, several cables, crossed landings. */
export function anyBus(seed: number): BuiltBus {
  const chance = chanceOf(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(chance() * list.length)]!;
  const cables = [testCable(), testCable({ name: 'Other', impedance: ohms(100), gauge: 18 })];
  const bus = busOf(pick(['modbus-rtu', 'rs485', 'can']), { rate: 10 ** (3 + 4 * chance()), cable: cables[0]! });
  const device = () => pick([fast, slow, headDevice, testDevice('Full', { unitLoad: 1 })]);
  bus.from('n0', { device: device(), ...(chance() < 0.7 && { terminate: 120 }) });
  const count = 1 + Math.floor(chance() * 12);
  for (let index = 1; index <= count; index++) {
    if (chance() < 0.2) bus.from(`n${Math.floor(chance() * index)}`);
    const length = pick([0, 1e-4, 0.3, 5, 40, 400]) * chance();
    const words = { cable: pick(cables), device: device(), crossed: chance() < 0.1 };
    if (chance() < 0.1) bus.loose(length).from(`n${index}`, words);
    else if (chance() < 0.2) bus.tap(`n${index}`, length, words);
    else bus.to(`n${index}`, length, { ...words, ...(chance() < 0.2 && { terminate: pick([0, 60, 120, 1e6]) }) });
  }
  if (chance() < 0.3) bus.to('n0', 20);
  if (chance() < 0.5) bus.bias('n0', 560, pick([560, 400, 5000]));
  return bus.built();
}
