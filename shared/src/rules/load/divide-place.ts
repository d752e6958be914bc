/** Where along a chain a repeater divides it best. */
import type { BusStudy } from '../../figures/study.js';
import { across } from '../../figures/walk.js';
import { lengthLimit } from '../../limits/length.js';
import { deviceLimit, loadLimit } from '../../limits/load.js';
import type { Run } from '../../network.js';
import { landingLoad } from '../../physics/loads.js';

/** One side of a place on the trunk, or one place itself: what counts against the limits of a bus. */
export interface Part {
  /** Metres of cable. */
  readonly length: number;
  readonly devices: number;
  /** Unit loads; not a number where a device states none. */
  readonly loads: number;
  readonly biases: number;
  readonly needsBias: boolean;
}

/** What is between two neighbours on the trunk, from the first end on. */
export interface DividePlace {
  /** The repeater stands between this position of the trunk and the next. */
  readonly position: number;
  readonly run: Run;
  readonly first: Part;
  readonly second: Part;
}

const nothing: Part = { length: 0, devices: 0, loads: 0, biases: 0, needsBias: false };
const together = (one: Part, other: Part): Part => ({
  length: one.length + other.length,
  devices: one.devices + other.devices,
  loads: one.loads + other.loads,
  biases: one.biases + other.biases,
  needsBias: one.needsBias || other.needsBias,
});

/** Per landing the position on the trunk that it belongs to: its own, or that of the landing that its tap hangs on. */
export function positionsOf({ bus, shape }: BusStudy): number[] {
  const positions = new Array<number>(bus.landings.length).fill(-1);
  for (const [position, landing] of shape.trunk.entries()) positions[landing] = position;
  const open = [...shape.trunk];
  for (let landing = open.pop(); landing !== undefined; landing = open.pop()) {
    for (const index of bus.landings[landing]!.runs) {
      const next = across(bus.runs[index]!, landing);
      if (positions[next] !== -1) continue;
      positions[next] = positions[landing]!;
      open.push(next);
    }
  }
  return positions;
}

/**
 * The place that leaves both parts farthest from their limits, with the repeater's port and cable counted in; undefined
 * where one repeater is not enough. `onSide` tells what the repeater adds to the part before and behind it.
 */
export function bestPlace(
  study: BusStudy,
  positions: readonly number[],
  onSide: (position: number) => readonly [first: Part, second: Part],
): DividePlace | undefined {
  const { bus, shape } = study;
  const parts: Part[] = shape.trunk.map(() => nothing);
  const between: (Run | undefined)[] = [];
  const add = (position: number, part: Partial<Part>) => {
    parts[position] = together(parts[position]!, { ...nothing, ...part });
  };
  for (const landing of bus.landings) {
    const { node, port, index } = landing;
    const loads = landingLoad(landing) ?? Number.NaN;
    add(positions[index]!, { devices: node?.device ? 1 : 0, loads, needsBias: port?.needsBias === true });
  }
  for (const { landing } of bus.biases) if (landing !== undefined) add(positions[landing]!, { biases: 1 });
  for (const run of bus.runs) {
    const [from, to] = [positions[run.from]!, positions[run.to!]!];
    if (from === to) add(from, { length: run.length });
    else between[Math.min(from, to)] = run;
  }
  const before: Part[] = [];
  const behind: Part[] = [];
  for (let position = 0, sum = nothing; position < parts.length; position++) {
    sum = together(sum, parts[position]!);
    before.push(sum);
    sum = together(sum, { ...nothing, length: between[position]?.length ?? 0 });
  }
  for (let position = parts.length - 1, sum = nothing; 0 <= position; position--) {
    sum = together(sum, parts[position]!);
    behind[position] = sum;
    sum = together(sum, { ...nothing, length: between[position - 1]?.length ?? 0 });
  }
  let best: DividePlace | undefined;
  let least = 1;
  for (const [position, run] of between.entries()) {
    if (!run) continue;
    const sides = onSide(position);
    const first = together(before[position]!, sides[0]);
    const second = together(behind[position + 1]!, sides[1]);
    const share = Math.max(shareUsed(study, first), shareUsed(study, second));
    if (!(share <= 1) || (best && least <= share)) continue;
    best = { position, run, first, second };
    least = share;
  }
  return best;
}

/** Whether a part of a bus needs or has bias; where the whole bus is biased, each part needs it. */
export const isBiased = ({ bus }: BusStudy, part: Part): boolean =>
  0 < bus.biases.length || 0 < part.biases || part.needsBias;

/** The largest share of a limit that a part uses: at most 1 where it keeps all. */
function shareUsed(study: BusStudy, part: Part): number {
  const { kind } = study.bus;
  const biases = { length: isBiased(study, part) ? 1 : 0 };
  const shares = [part.length / (lengthLimit(study)?.value ?? Number.POSITIVE_INFINITY)];
  if (!Number.isNaN(part.loads)) shares.push(part.loads / (loadLimit({ kind, biases })?.value ?? 1));
  else if (kind === 'modbus-rtu') shares.push(part.devices / deviceLimit(0 < biases.length).value);
  return Math.max(...shares);
}
