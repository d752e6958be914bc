/** Where along a chain repeaters divide it best. */
import type { BusStudy } from '../../figures/study.js';
import { across } from '../../figures/walk.js';
import { lengthLimit } from '../../limits/length.js';
import { deviceLimit, loadLimit } from '../../limits/load.js';
import type { Run } from '../../network.js';
import { landingLoad } from '../../physics/loads.js';

/** A stretch of the trunk with all that hangs on it: what counts against the limits of a bus. */
export interface Part {
  /** Metres of cable. */
  readonly length: number;
  readonly devices: number;
  /** Unit loads; not a number where a device states none. */
  readonly loads: number;
  readonly biases: number;
  readonly needsBias: boolean;
}

/** What a repeater adds to the parts on its two sides. */
export interface RepeaterEnds {
  /** Its port on the side of the head, and the cable from the device beside it. */
  readonly near: Part;
  readonly far: Part;
}

/** Parts of a chain from its first end on, and the positions of the trunk behind which they end. */
export interface Division {
  readonly cuts: readonly number[];
  readonly parts: readonly Part[];
}

/** Parts are told apart by letters. */
const mostParts = 20;

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

/** A chain as parts at its positions and runs between them, with the way to put any stretch of it together. */
export class Stretches {
  readonly parts: readonly Part[];
  /** Behind each position but the last. */
  readonly between: readonly (Run | undefined)[];
  readonly #study: BusStudy;
  readonly #head: number;

  /** @param head the position of the head, on whose side of each place its repeater stands */
  constructor(study: BusStudy, positions: readonly number[], head: number) {
    const { bus, shape } = study;
    const parts: Part[] = shape.trunk.map(() => nothing);
    const between: (Run | undefined)[] = new Array<undefined>(Math.max(0, parts.length - 1)).fill(undefined);
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
    this.parts = parts;
    this.between = between;
    this.#study = study;
    this.#head = head;
  }

  /** What a stretch that ends behind a position has there: the near port of a repeater, or the far one and the run to it. */
  endBehind(position: number, ends: RepeaterEnds): Part {
    if (position === this.parts.length - 1) return nothing;
    return this.#head <= position ? ends.near : this.#farEnd(position, ends);
  }

  endBefore(position: number, ends: RepeaterEnds): Part {
    if (position === 0) return nothing;
    return this.#head < position ? this.#farEnd(position - 1, ends) : ends.near;
  }

  #farEnd(position: number, { far }: RepeaterEnds): Part {
    return { ...far, length: far.length + (this.between[position]?.length ?? 0) };
  }

  /**
   * Divisions whose parts keep their limits: into the fewest that do, then into more. Of as many parts the one whose
   * fullest part uses the least share of a limit.
   */
  *divisions(ends: RepeaterEnds): Generator<Division> {
    const last = this.parts.length - 1;
    // Per end of a stretch: the least share that the fullest part uses up to there, and where its last part begins.
    let before = this.parts.map((_, end) => ({ least: this.#share(0, end, ends), begin: 0 }));
    const rounds = [before];
    while (rounds.length < mostParts) {
      const next = this.parts.map(() => ({ least: Number.POSITIVE_INFINITY, begin: -1 }));
      for (let end = 1; end <= last; end++) {
        let stretch = this.parts[end]!;
        for (let begin = end; 0 < begin; begin--) {
          if (begin < end) stretch = together(this.#with(begin), stretch);
          const share = this.#shareOf(stretch, begin, end, ends);
          // What is far too much grows only worse, but for what a repeater at its end adds.
          if (2 < share) break;
          const least = Math.max(share, before[begin - 1]!.least);
          if (this.between[begin - 1] && least < next[end]!.least) next[end] = { least, begin };
        }
      }
      rounds.push(next);
      before = next;
      if (next[last]!.least <= 1) yield this.#divisionOf(rounds, ends);
    }
  }

  #divisionOf(rounds: readonly { begin: number }[][], ends: RepeaterEnds): Division {
    const cuts: number[] = [];
    const parts: Part[] = [];
    let end = this.parts.length - 1;
    for (const round of rounds.toReversed()) {
      const { begin } = round[end]!;
      parts.unshift(this.#closed(this.#stretch(begin, end), begin, end, ends));
      if (0 < begin) cuts.unshift(begin - 1);
      end = begin - 1;
    }
    return { cuts, parts };
  }

  /** The landing or run that is over a limit by itself, whatever else is taken away. */
  hopeless(ends: RepeaterEnds): { readonly position: number; readonly run?: Run; readonly part: Part } | undefined {
    for (const [position, part] of this.parts.entries()) {
      const alone = together(part, position === this.#head ? nothing : { ...ends.far, length: 0 });
      if (1 < shareUsed(this.#study, alone)) return { position, part };
      const run = this.between[position];
      const length = { ...nothing, length: run?.length ?? 0 };
      if (run && 1 < shareUsed(this.#study, length)) return { position, run, part: length };
    }
    return undefined;
  }

  #with(position: number): Part {
    return together(this.parts[position]!, { ...nothing, length: this.between[position]?.length ?? 0 });
  }

  #stretch(begin: number, end: number): Part {
    let stretch = this.parts[end]!;
    for (let position = end - 1; begin <= position; position--) stretch = together(this.#with(position), stretch);
    return stretch;
  }

  #closed(stretch: Part, begin: number, end: number, ends: RepeaterEnds): Part {
    return together(together(this.endBefore(begin, ends), stretch), this.endBehind(end, ends));
  }

  #shareOf(stretch: Part, begin: number, end: number, ends: RepeaterEnds): number {
    return shareUsed(this.#study, this.#closed(stretch, begin, end, ends));
  }

  #share(begin: number, end: number, ends: RepeaterEnds): number {
    return this.#shareOf(this.#stretch(begin, end), begin, end, ends);
  }
}

/** Whether a part of a bus needs or has bias; where the whole bus is biased, each part needs it. */
export const isBiased = ({ bus }: BusStudy, part: Part): boolean =>
  0 < bus.biases.length || 0 < part.biases || part.needsBias;

/** The largest share of a limit that a part uses: at most 1 where it keeps all. */
const shareUsed = (study: BusStudy, part: Part): number => fullest(study, part).share;

/** The limit that a part comes nearest to or exceeds most, by what it has of it. */
export function fullest(
  study: BusStudy,
  part: Part,
): { readonly share: number; readonly of: 'length' | 'loads' | 'devices' } {
  const { kind } = study.bus;
  const biases = { length: isBiased(study, part) ? 1 : 0 };
  const length = part.length / (lengthLimit(study)?.value ?? Number.POSITIVE_INFINITY);
  const [load, of] = Number.isNaN(part.loads)
    ? [kind === 'modbus-rtu' ? part.devices / deviceLimit(0 < biases.length).value : 0, 'devices' as const]
    : [part.loads / (loadLimit({ kind, biases })?.value ?? 1), 'loads' as const];
  return load < length ? { share: length, of: 'length' } : { share: load, of };
}
