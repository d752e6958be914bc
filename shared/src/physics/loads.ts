/**
 * How devices load the pair. On RS-485 one unit load is about 12 kohm from each line to common (TIA-485-A: 1.0 mA at +12 V,
 * -0.8 mA at -7 V), not across the pair, where it looks like 24 kohm.
 */
import type { BusStudy } from '../figures/study.js';
import { type Known, listed } from '../known.js';
import { type Bus, type BusKind, type Landing, type LandingIndex, rs485Kinds } from '../network.js';
import { type Ohms, ohms, type Ratio, ratio } from '../quantity.js';
import { inputOf } from './can.js';
import { conductanceOf } from './nodal.js';

/** What one unit load resists from one line to common. */
export const unitLoadResistance: Ohms = ohms(12_000);

/** Share of a unit load that a landing hangs on the pair; undefined when nothing states it. A splice hangs none. */
export function landingLoad(landing: Landing): Ratio | undefined {
  if (landing.splice !== undefined) return ratio(0);
  const load = landing.port?.unitLoad;
  return load !== undefined && 0 <= load ? ratio(load) : undefined;
}

/** What a landing hangs on the pair, in siemens: between the wires, and from each of them to common. */
export interface PortConductance {
  readonly across: number;
  readonly toCommon: number;
}
const none: PortConductance = { across: 0, toCommon: 0 };

/**
 * By kind of bus: unit loads on RS-485, an input between the wires on CAN, and nothing on free topology, whose
 * transformers stand behind capacitors. Undefined where nothing states it.
 */
export function portConductance(kind: BusKind | undefined, landing: Landing): PortConductance | undefined {
  if (landing.splice !== undefined || kind === 'free-topology') return none;
  if (kind === 'can') return { across: conductanceOf(inputOf(landing)), toCommon: 0 };
  const load = landingLoad(landing);
  return load === undefined ? undefined : { across: 0, toCommon: conductanceOf(unitLoadResistance / load) };
}

/** Sum of the unit loads of all ports of a bus, islands too. */
export function unitLoadsOf({ bus, census }: Pick<BusStudy, 'bus' | 'census'>): Known<Ratio> {
  if (bus.kind !== undefined && !rs485Kinds.has(bus.kind)) return { unknown: 'unit loads: they are of RS-485 alone' };
  let sum = 0;
  for (const { landings } of census.outfits) {
    const load = landingLoad(landings[0]!);
    if (load === undefined) return { unknown: missingLoads(bus, bus.landings.keys()) };
    sum += load * landings.length;
  }
  return ratio(sum);
}

/** Names what states no load: the device where it is known, else the landing. */
export function missingLoads(bus: Bus, landings: Iterable<LandingIndex>): string {
  const names = new Set<string>();
  for (const index of landings) {
    const landing = bus.landings[index]!;
    const device = landing.port && landing.node?.device;
    if (landingLoad(landing) === undefined) names.add(device?.name ?? landing.name);
  }
  return `the unit load of ${listed([...names])}`;
}
