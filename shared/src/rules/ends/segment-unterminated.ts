/** A free-topology segment without its terminator. */
import { occasion } from '../../figures/occasions.js';
import type { BusStudy } from '../../figures/study.js';
import { dueTermination } from '../../limits/due-terminator.js';
import { segmentForm, segmentStub } from '../../limits/free-topology.js';
import { segmentExample } from '../other-example.js';
import type { BusRule } from '../rule.js';
import { isBare, partsText, terminateEdit, terminateTitle } from './terminators.js';

export const segmentUnterminated: BusRule = {
  id: 'segment-unterminated',
  scope: 'bus',
  occasions: occasion.unusualTerminators,
  severity: 'error',
  kinds: ['free-topology'],
  check(study, report) {
    const { bus, head } = study;
    const [first] = bus.landings;
    if (bus.damaged || !first || bus.runs.length === 0 || segmentForm(study) !== 'free') return;
    // A device that is not known, or a switch that is not there, may be what was meant to terminate.
    if (!bus.landings.every(isBare)) return;
    const at = head ?? first;
    report({
      message: `segment ${bus.name} has no terminator; free topology takes one, anywhere on the segment: land ${partsText(dueTermination(bus, at, 'free'))} across the pair, best at ${at.name}`,
      place: bus.place,
      fixes: () => [
        { title: terminateTitle(bus, at, 'free'), safe: false, edits: [terminateEdit(bus, at, 'free')] },
        ...bothEndsFix(study, (index) => terminateEdit(bus, bus.landings[index]!)),
      ],
    });
  },
  explanation: {
    what: 'A free-topology segment carries no terminator. One is due, anywhere on it.',
    why: 'The terminator takes in what comes back from the many open ends of a tree. The capacitors in it block direct current, as the devices of the channel do, so that it is no plain resistor.',
    field:
      'Few devices on short cable work without it; with length and devices some stop answering, and which ones changes. An ohmmeter does not see the terminator, for its capacitors block direct current: look for it.',
    mend: 'Land a terminator of 52.3 ohm with two 100 uF capacitors back to back at one device, best at the head. A segment that is one chain may have 105 ohm at each end instead, and then runs farther.',
    bad: segmentExample(['from head : Panel', '120 ft to room1 : RoomUnit', 'from head', '90 ft to room2 : RoomUnit']),
    good: segmentExample([
      'from head : Panel terminate resistor 52.3 ohm capacitor 100 uF',
      '120 ft to room1 : RoomUnit',
      'from head',
      '90 ft to room2 : RoomUnit',
    ]),
    sources: [
      'Free topology transceiver data book: one terminator in free topology, two on a doubly terminated bus; 52.3 ohm and 105 ohm of 1 %, with two 100 uF, 50 V capacitors back to back',
    ],
    since: '0.1.0',
  },
};

/** A plain chain with short stubs may become a doubly terminated bus instead. */
function bothEndsFix({ shape: { ends, taps } }: BusStudy, edit: (landing: number) => ReturnType<typeof terminateEdit>) {
  return ends && taps.every(({ reach }) => reach <= segmentStub.value)
    ? [{ title: 'Terminate both ends with 105 ohm, as a doubly terminated bus', safe: false, edits: ends.map(edit) }]
    : [];
}
