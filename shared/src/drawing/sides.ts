/** What sits on a landing besides its device: terminators and bias, at the end of the line or on a lead above it. */
import type { BusBias, Landing, LandingTermination } from '../network.js';
import type { BusContext } from './bus-drawing.js';
import type { Stop } from './strands.js';
import { biasLabel, terminatorLabel } from './words.js';

/** One symbol on the lead above a landing, with its label over it. */
export interface Side {
  readonly label: readonly string[];
  readonly height: number;
  readonly terminator?: LandingTermination;
  readonly bias?: { readonly index: number; readonly bias: BusBias };
}

export interface StopSides {
  /** The terminator that closes the line where it ends. */
  readonly end: { readonly terminator: LandingTermination; readonly way: -1 | 1 } | undefined;
  readonly endLabel: readonly string[];
  /** From the lowest up. */
  readonly above: readonly Side[];
  readonly height: number;
}

const none: StopSides = { end: undefined, endLabel: [], above: [], height: 0 };

export function sidesOf({ study }: BusContext, stop: Stop, position: 'first' | 'between' | 'last'): StopSides {
  const { bus } = study;
  const landing: Landing | undefined =
    stop.landing === undefined || stop.again ? undefined : bus.landings[stop.landing];
  if (!landing) return none;
  const [first, ...others] = landing.terminations;
  const end =
    first && position !== 'between' ? ({ terminator: first, way: position === 'first' ? -1 : 1 } as const) : undefined;
  const above: Side[] = (end ? others : landing.terminations).map((terminator) =>
    side({ label: terminatorLabel(terminator), terminator }),
  );
  for (const [index, bias] of bus.biases.entries()) {
    if (bias.landing === landing.index) above.push(side({ label: biasLabel(bias), bias: { index, bias } }));
  }
  return {
    end,
    endLabel: end ? terminatorLabel(end.terminator) : [],
    above,
    height: above.reduce((sum, { height }) => sum + height, 0),
  };
}

const side = (one: Omit<Side, 'height'>): Side => ({ ...one, height: one.label.length * 12 + 22 });
