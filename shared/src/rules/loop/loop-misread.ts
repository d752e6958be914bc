/** States of a loop that its input takes for something else. */

import { resistorText } from '../../figures/page/words.js';
import type { Fix } from '../../finding.js';
import { isUnknown, listed } from '../../known.js';
import type { Landing, LoopInput, LoopMeaning } from '../../network.js';
import type { LoopState } from '../../physics/contact-loop.js';
import { formatResistor, type Ohms, ohms } from '../../quantity.js';
import type { BusRule, Report } from '../rule.js';
import { loopExample, soundLoop } from './example.js';
import { isSound, type Loop, loopOf } from './loops.js';

export const loopMisread: BusRule = {
  id: 'loop-misread',
  scope: 'bus',
  severity: 'error',
  kinds: ['contact-loop'],
  check(study, report) {
    const loop = loopOf(study);
    const states = study.contactLoop;
    if (!loop || !isSound(loop) || isUnknown(states) || states.facts.windows.length === 0) return;
    const wrong = (state: LoopState) => (state.reading ?? 'unsure') !== dueOf(state);
    const [normal] = states.states;
    if (normal && wrong(normal)) report(normalReport(loop, normal, states.facts));
    const alarms = states.states.filter((state) => state.state === 'alarm' && wrong(state));
    const all = states.states.find(({ state }) => state === 'all alarms');
    // Contacts that are misread alike have one cause.
    const alike = new Map<string, LoopState[]>();
    for (const alarm of alarms) {
      const seen = `${alarm.reading} ${formatResistor(alarm.resistance.nominal)}`;
      const group = alike.get(seen);
      if (group) group.push(alarm);
      else alike.set(seen, [alarm]);
    }
    for (const group of alike.values()) report(alarmReport(loop, group, states.facts, normal));
    if (alarms.length === 0 && all && wrong(all)) report(alarmReport(loop, [all], states.facts, normal));
  },
  explanation: {
    what: 'The input takes a state of the loop for something else: at rest it does not read normal, or an alarm does not read as one.',
    why: 'An input knows only resistances. A contact that opens without a bridge leaves the loop open, as a cut wire does; two bridges in line may reach beyond what it takes for an alarm; the tolerance of resistors may carry a state over a border.',
    field: 'False alarms, or an alarm that is shown as a fault of the wiring and left until Monday.',
    mend: 'Bridge each contact, change the value of the bridges, or spread the contacts over more loops. Test each contact once with the panel watching.',
    bad: loopExample([
      '60 ft to call1 : CallButton breaks +',
      '25 ft to call2 : CallButton breaks + bridged 4.7 kohm terminate resistor 4.7 kohm',
    ]),
    good: loopExample(soundLoop),
    sources: [
      "The input's own documentation, as the catalogue repeats it",
      'Series and parallel connection of resistances: circuit theory',
    ],
    since: '0.1.0',
  },
};

const dueOf = ({ state }: LoopState): LoopMeaning => (state === 'normal' ? 'normal' : 'alarm');

/** The windows of a meaning: `3.6 kohm to 6.2 kohm`, `above 30 kohm`. */
function windowsText({ windows }: LoopInput, meaning: LoopMeaning): string {
  const texts = windows
    .filter((window) => window.meaning === meaning)
    .map(({ above, below }) => {
      if (above === undefined) return `below ${formatResistor(below!)}`;
      return below === undefined
        ? `above ${formatResistor(above)}`
        : `${formatResistor(above)} to ${formatResistor(below)}`;
    });
  return texts.join(' or ');
}

/** What it reads, and what it takes for what is due. */
function becauseOf({ resistance, reading }: LoopState, facts: LoopInput, due: LoopMeaning): string {
  const value = Number.isFinite(resistance.low) ? resistorText(resistance) : 'an open loop';
  const taken =
    reading === 'unsure'
      ? 'which lies between its readings'
      : `which it takes for ${reading === 'fault' ? 'a fault' : reading}`;
  const windows = windowsText(facts, due);
  const ranges =
    windows === ''
      ? `it has no reading for ${due}`
      : `it takes ${windows} for ${due === 'alarm' ? 'an alarm' : 'normal'}`;
  return `${value}, ${taken}; ${ranges}`;
}

/** By its stated value the state is read rightly, and only its tolerance reaches beyond. */
const isByTolerance = ({ resistance }: LoopState, { windows }: LoopInput, due: LoopMeaning): boolean =>
  windows.some(
    ({ meaning, above = 0, below = Number.POSITIVE_INFINITY }) =>
      meaning === due && above <= resistance.nominal && resistance.nominal <= below,
  );

function normalReport(loop: Loop, normal: LoopState, facts: LoopInput): Report {
  const byTolerance = isByTolerance(normal, facts, 'normal');
  return {
    severity: byTolerance ? 'warning' : 'error',
    message: `with nothing wrong, ${loop.input.name} sees ${becauseOf(normal, facts, 'normal')}${byTolerance ? '; resistors of closer tolerance may do' : ''}`,
    place: loop.input.place,
    at: loop.input.name,
  };
}

function alarmReport(
  loop: Loop,
  alarms: readonly LoopState[],
  facts: LoopInput,
  normal: LoopState | undefined,
): Report {
  const [first] = alarms as readonly [LoopState, ...LoopState[]];
  const contacts = alarms.flatMap(({ landing }) => (landing === undefined ? [] : [loop.bus.landings[landing]!]));
  const byTolerance = alarms.every((alarm) => isByTolerance(alarm, facts, 'alarm'));
  const who = contacts.length === 0 ? 'all contacts' : listed(contacts.map(({ name }) => name));
  const at = contacts[0] ?? loop.input;
  return {
    severity: byTolerance ? 'warning' : 'error',
    message: `while ${who} ${contacts.length === 1 ? 'is' : 'are'} in alarm${1 < contacts.length ? ', one at a time' : contacts.length === 0 ? ' at once' : ''}, ${loop.input.name} sees ${becauseOf(first, facts, 'alarm')}`,
    place: contacts[0]?.wiring?.place ?? loop.input.place,
    at: at.name,
    related: contacts.slice(1).map(({ name, wiring, place }) => ({
      message: `the alarm of ${name} is misread too`,
      place: wiring?.place ?? place,
    })),
    fixes: () => bridgeFixes(loop, contacts, facts, normal),
  };
}

/** A bridge as large as the end's resistor, where alarms are then read as such. */
function bridgeFixes(loop: Loop, contacts: readonly Landing[], facts: LoopInput, normal: LoopState | undefined): Fix[] {
  const due = facts.resistor?.resistance;
  const bare = contacts.filter(({ wiring }) => wiring?.kind === 'breaks' && wiring.bridge === undefined);
  if (due === undefined || !normal || bare.length === 0 || bare.length < contacts.length) return [];
  const withBridges = (count: number) => ohms(normal.resistance.nominal + count * due);
  const isAlarm = (resistance: Ohms) =>
    isByTolerance(
      { ...normal, resistance: { nominal: resistance, low: resistance, high: resistance } },
      facts,
      'alarm',
    );
  if (!isAlarm(withBridges(1)) || !isAlarm(withBridges(loop.contacts.length))) return [];
  const names = bare.length === 1 ? bare[0]!.name : `${bare.length} contacts`;
  return [
    {
      title: `Bridge ${names} with ${formatResistor(due)}${bare.length === 1 ? '' : ' each'}`,
      safe: false,
      edits: bare.map(({ index, wiring }) => ({
        kind: 'wire-contact',
        bus: loop.bus.index,
        landing: index,
        wiring: {
          kind: 'breaks',
          conductor: wiring?.kind === 'breaks' ? wiring.conductor : 'plus',
          bridge: due,
        },
      })),
    },
  ];
}
