/**
 * What the rules about contact loops share. A loop is judged in this order, and what comes first silences what follows
 * from it: one input, no ring, every contact placed and of a kind that can lie so, the resistor at the end; only then do
 * its resistances mean anything.
 */
import { type Outward, outwardFrom } from '../../figures/outward.js';
import type { BusStudy } from '../../figures/study.js';
import type { Bus, Landing, LandingIndex, LandingTermination } from '../../network.js';
import type { Ohms } from '../../quantity.js';

/** A loop with one input and without a ring. */
export interface Loop {
  readonly bus: Bus;
  readonly input: Landing;
  readonly outward: Outward;
  /** Joined to the input by cable, nearest first, the input's own landing too. */
  readonly landings: readonly Landing[];
  readonly contacts: readonly Landing[];
}

/** The loop of a bus; undefined where its text is damaged, where it has no one input, or where it is a ring. */
export function loopOf({ bus }: BusStudy): Loop | undefined {
  if (bus.damaged) return undefined;
  const [input, other] = bus.landings.filter(({ port }) => port?.input);
  if (!input || other) return undefined;
  const outward = outwardFrom(bus, input.index);
  if (outward.ring) return undefined;
  const landings = outward.order.map((index) => bus.landings[index]!);
  return { bus, input, outward, landings, contacts: landings.filter(({ port }) => port?.contact) };
}

/** Landings reached from one by a single run, away from the input. */
export const behind = ({ outward, bus }: Loop, landing: LandingIndex): Landing[] =>
  outward.parents.flatMap((parent, index) => (parent === landing ? [bus.landings[index]!] : []));

/** Landings with nothing behind them, the input's own aside. */
export function endsOf(loop: Loop): Landing[] {
  const inner = new Set(loop.outward.parents);
  return loop.landings.filter(({ index }) => index !== loop.input.index && !inner.has(index));
}

/** Resistors across the pair; a capacitor in series keeps one from being seen. */
export const resistorsAt = ({ terminations }: Landing): LandingTermination[] =>
  terminations.filter(({ capacitance }) => capacitance === undefined);

/** What is expected at the end, and where resistors are. */
export function endResistors(loop: Loop): { readonly due: Ohms | undefined; readonly at: readonly Landing[] } {
  return {
    due: loop.input.port?.input?.resistor?.resistance,
    at: loop.landings.filter((landing) => resistorsAt(landing).length > 0),
  };
}

/** Contacts of which the text does not say how they lie in the loop. */
export const unplaced = ({ contacts }: Loop): Landing[] => contacts.filter(({ wiring }) => !wiring);

/**
 * A contact that hides others while nothing is wrong: closed across the pair, or open in a conductor, without a resistor
 * of its own, where there is something to hide behind it or beside it.
 */
export function hides(loop: Loop, { index, port, wiring }: Landing): 'shorts' | 'opens' | undefined {
  if (!wiring || !port?.contact) return undefined;
  const beyond = behind(loop, index).length > 0 || resistorsAt(loop.bus.landings[index]!).length > 0;
  if (wiring.kind === 'across' && port.contact === 'closed' && wiring.through === undefined && beyond) return 'shorts';
  if (wiring.kind === 'breaks' && port.contact === 'open' && wiring.bridge === undefined && beyond) return 'opens';
  return undefined;
}

/** Resistors that are not at an end of the loop. */
export function misplaced(loop: Loop): Landing[] {
  const { due, at } = endResistors(loop);
  if (due === undefined) return [];
  const ends = new Set(endsOf(loop));
  return at.filter((landing) => !ends.has(landing));
}

/** Whether nothing else is wrong with the loop, so that what its input reads is worth a finding of its own. */
export function isSound(loop: Loop): boolean {
  const { due, at } = endResistors(loop);
  return (
    loop.contacts.length > 0 &&
    unplaced(loop).length === 0 &&
    !loop.contacts.some((contact) => hides(loop, contact) !== undefined) &&
    (due === undefined || at.length > 0) &&
    misplaced(loop).length === 0
  );
}
