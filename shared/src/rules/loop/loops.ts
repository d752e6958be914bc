/**
 * What the rules about contact loops share. A loop is judged in this order, and what comes first silences what follows
 * from it: one input, no ring, every contact placed and of a kind that can lie so, the resistor at the end; only then do
 * its resistances mean anything.
 */
import { outwardFrom } from '../../figures/outward.js';
import type { BusStudy } from '../../figures/study.js';
import type { Bus, Landing, LandingIndex, LandingTermination } from '../../network.js';
import { terminatorTolerance } from '../../physics/tolerance.js';
import type { Ohms } from '../../quantity.js';

/** A loop with one input and without a ring. */
export interface Loop {
  readonly bus: Bus;
  readonly input: Landing;
  /** Joined to the input by cable, nearest first, the input's own landing too. */
  readonly landings: readonly Landing[];
  readonly contacts: readonly Landing[];
  /** Landings with others behind them. */
  readonly inner: ReadonlySet<LandingIndex>;
  /** Landings where a resistor or a contact lies across the pair. */
  readonly crossing: ReadonlySet<LandingIndex>;
}

/**
 * The loop of a bus; undefined where its text is damaged or names what is not there, where it has no one input, or where
 * it is a ring.
 */
export function loopOf({ bus }: BusStudy): Loop | undefined {
  if (bus.damaged) return undefined;
  const [input, other] = bus.landings.filter(({ port }) => port?.input);
  if (!input || other) return undefined;
  const outward = outwardFrom(bus, input.index);
  if (outward.ring) return undefined;
  const landings = outward.order.map((index) => bus.landings[index]!);
  // Nothing is known of what a landing without a port hangs on the loop.
  if (landings.some(({ node, port }) => node && !port)) return undefined;
  const crosses = (landing: Landing) => resistorsAt(landing).length > 0 || landing.wiring?.kind === 'across';
  return {
    bus,
    input,
    landings,
    contacts: landings.filter(({ port }) => port?.contact),
    inner: new Set(outward.parents),
    crossing: new Set(landings.filter(crosses).map(({ index }) => index)),
  };
}

/** Landings with nothing behind them, the input's own aside. */
export const endsOf = ({ landings, inner, input }: Loop): Landing[] =>
  landings.filter(({ index }) => index !== input.index && !inner.has(index));

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
 * A contact that hides others while nothing is wrong: closed across the pair where anything else lies across it, or open
 * in a conductor with something behind it, in both cases without a resistor of its own.
 */
export function hides(loop: Loop, landing: Landing): 'shorts' | 'opens' | undefined {
  const { index, port, wiring } = landing;
  if (!wiring || !port?.contact) return undefined;
  if (wiring.kind === 'across') {
    if (port.contact === 'open' || wiring.through !== undefined) return undefined;
    const others = 1 < loop.crossing.size || resistorsAt(landing).length > 0;
    return others || loop.inner.has(index) ? 'shorts' : undefined;
  }
  if (port.contact === 'closed' || wiring.bridge !== undefined) return undefined;
  return loop.inner.has(index) || resistorsAt(landing).length > 0 ? 'opens' : undefined;
}

/** Resistors that are not at an end of the loop. */
export function misplaced(loop: Loop): Landing[] {
  const { due, at } = endResistors(loop);
  if (due === undefined) return [];
  const ends = new Set(endsOf(loop));
  return at.filter((landing) => !ends.has(landing));
}

/** Landings whose one resistor has another value than the input expects. */
export function misvalued(loop: Loop): Landing[] {
  const { due, at } = endResistors(loop);
  if (due === undefined) return [];
  return at.filter((landing) => {
    const [resistor, second] = resistorsAt(landing);
    return resistor && !second && terminatorTolerance < Math.abs(resistor.resistance / due - 1);
  });
}

/** Whether nothing else is wrong with the loop, so that what its input reads is worth a finding of its own. */
export function isSound(loop: Loop): boolean {
  const { due, at } = endResistors(loop);
  return (
    loop.contacts.length > 0 &&
    unplaced(loop).length === 0 &&
    !loop.contacts.some((contact) => hides(loop, contact) !== undefined) &&
    (due === undefined || at.length > 0) &&
    misplaced(loop).length === 0 &&
    misvalued(loop).length === 0
  );
}
