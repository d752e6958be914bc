/**
 * Faults that somebody wants to see the effect of, in words:
 *
 *     no terminator at caseA2            short 5 ohm from head.field1 to caseA1 at 40 %
 *     terminator 120 ohm at caseA1       open from head.field1 to caseA1
 *     crossed at caseA1                  length 30 ft from caseA1 to probe1
 *                                        cable Pair24 from caseA1 to caseA2
 */
import {
  type Bus,
  type Cable,
  type Fault,
  type Landing,
  listed,
  metres,
  ohms,
  type Run,
  ratio,
} from '@fieldpair/shared';
import { landingNamed, landingText, quantityFrom, Refusal, wordsOf } from './words.js';

/** Where an open or a short is when a phrase does not say: in the middle of its run. */
const usualPlace = 0.5;
/** Bare wires that touch, in ohm. */
const usualShort = 0.1;

/** One phrase as a fault of a bus. @param cableNamed finds the cable of a name among those that the store knows. */
export function readFault(bus: Bus, phrase: string, cableNamed: (name: string) => Cable | undefined): Fault | Refusal {
  const words = wordsOf(phrase);
  const split = words.findIndex((word) => word === 'at' || word === 'from');
  if (split < 0) return unread(phrase);
  const what = words.slice(0, split);
  const where = words.slice(split);
  if (what[0] === 'crossed' && what.length === 1)
    return atLanding(bus, where, phrase, ({ index }) => ({ kind: 'crossed', landing: index }));
  if (what[0] === 'no' && what[1] === 'terminator' && what.length === 2) {
    return atLanding(bus, where, phrase, ({ index }) => ({ kind: 'terminators', landing: index, terminations: [] }));
  }
  if (what[0] === 'terminator') {
    const resistance = quantityFrom(what.slice(1).join(' '), 'resistance', { least: 1, most: 1e6 });
    if (resistance instanceof Refusal) return resistance;
    return atLanding(bus, where, phrase, ({ index }) => ({
      kind: 'terminators',
      landing: index,
      terminations: [{ resistance: ohms(resistance) }],
    }));
  }
  return inRun(bus, what, where, phrase, cableNamed);
}

const unread = (phrase: string) =>
  new Refusal(
    `fault "${phrase}" is not understood; say it like "no terminator at X", "terminator 120 ohm at X", "crossed at X", "open from X to Y", "short 5 ohm from X to Y at 40 %", "length 30 ft from X to Y" or "cable NAME from X to Y"`,
  );

function atLanding(
  bus: Bus,
  where: readonly string[],
  phrase: string,
  made: (landing: Landing) => Fault,
): Fault | Refusal {
  const [at, name, ...rest] = where;
  if (at !== 'at' || name === undefined || rest.length) return unread(phrase);
  const landing = landingNamed(bus, name);
  return landing instanceof Refusal ? landing : made(landing);
}

function inRun(
  bus: Bus,
  what: readonly string[],
  where: readonly string[],
  phrase: string,
  cableNamed: (name: string) => Cable | undefined,
): Fault | Refusal {
  const [from, start, to, end, at, ...shareWords] = where;
  if (from !== 'from' || start === undefined || to !== 'to' || end === undefined || (at !== undefined && at !== 'at'))
    return unread(phrase);
  const run = runBetween(bus, start, end);
  if (run instanceof Refusal) return run;
  const share = at === undefined ? usualPlace : quantityFrom(shareWords.join(' '), 'ratio', { least: 0, most: 1 });
  if (share instanceof Refusal) return share;
  // The share counts from the landing that the phrase names first, the run's own from where it starts in the text.
  const place = ratio(run.turned ? 1 - share : share);
  const { index } = run.run;
  const [kind, ...value] = what;
  switch (kind) {
    case 'open':
      return value.length ? unread(phrase) : { kind: 'open', run: index, at: place };
    case 'short': {
      const resistance = value.length
        ? quantityFrom(value.join(' '), 'resistance', { least: 0, most: 1e6 })
        : usualShort;
      return resistance instanceof Refusal
        ? resistance
        : { kind: 'short', run: index, at: place, resistance: ohms(resistance) };
    }
    case 'length': {
      if (at !== undefined) return unread(phrase);
      const length = quantityFrom(value.join(' '), 'length', { least: 0, most: 1e5 });
      return length instanceof Refusal ? length : { kind: 'length', run: index, length: metres(length) };
    }
    case 'cable': {
      if (at !== undefined || value.length !== 1) return unread(phrase);
      const cable = cableNamed(value[0]!);
      return cable
        ? { kind: 'cable', run: index, cable }
        : new Refusal(`there is no cable ${value[0]} in the catalogue of bus ${bus.name}`);
    }
    default:
      return unread(phrase);
  }
}

function runBetween(bus: Bus, start: string, end: string): { readonly run: Run; readonly turned: boolean } | Refusal {
  const from = landingNamed(bus, start);
  if (from instanceof Refusal) return from;
  const to = landingNamed(bus, end);
  if (to instanceof Refusal) return to;
  for (const run of bus.runs) {
    if (run.spare) continue;
    if (run.from === from.index && run.to === to.index) return { run, turned: false };
    if (run.from === to.index && run.to === from.index) return { run, turned: true };
  }
  const others = from.runs.flatMap((index) => {
    const run = bus.runs[index]!;
    const other = run.from === from.index ? run.to : run.from;
    return other === undefined ? [] : [bus.landings[other]!.name];
  });
  return new Refusal(
    `no run of bus ${bus.name} joins ${from.name} and ${to.name}; from ${from.name} runs lead to ${listed(others) || 'nothing'}`,
  );
}

export interface FaultChoices {
  readonly group: string;
  readonly phrases: readonly string[];
}

/** The faults that installers make most, for every place of a bus, as phrases that {@link readFault} understands. */
export function faultChoices(bus: Bus): FaultChoices[] {
  const names = bus.landings.map(landingText);
  const terminated = bus.landings.flatMap(({ index, terminations }) => (terminations.length ? [names[index]!] : []));
  const bare = bus.landings.flatMap(({ index, terminations }) => (terminations.length ? [] : [names[index]!]));
  const runs = bus.runs.flatMap(({ from, to, spare }) =>
    spare || to === undefined || to === from ? [] : [`from ${names[from]} to ${names[to]}`],
  );
  return [
    { group: 'Terminator missing', phrases: terminated.map((name) => `no terminator at ${name}`) },
    { group: 'Terminator too many', phrases: bare.map((name) => `terminator 120 ohm at ${name}`) },
    { group: 'Pair crossed', phrases: names.map((name) => `crossed at ${name}`) },
    { group: 'Cable open', phrases: runs.map((run) => `open ${run}`) },
    { group: 'Cable shorted', phrases: runs.map((run) => `short 1 ohm ${run}`) },
  ].filter(({ phrases }) => phrases.length);
}
