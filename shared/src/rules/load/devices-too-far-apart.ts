import { isUnknown } from '../../known.js';
import { apartLimit, segmentLength } from '../../limits/free-topology.js';
import { metres } from '../../quantity.js';
import { segmentExample } from '../other-example.js';
import type { BusRule } from '../rule.js';

/** The longest way between two devices. A segment with too much wire in all is told as that alone. */
export const devicesTooFarApart: BusRule = {
  id: 'devices-too-far-apart',
  severity: 'error',
  kinds: ['free-topology'],
  scope: 'bus',
  check: (study, report) => {
    const { bus, shape, farthest } = study;
    const limit = apartLimit(study);
    if (bus.damaged || !limit || isUnknown(farthest) || !farthest || farthest.length <= limit.value) return;
    if (segmentLength(study).value < study.length) return;
    const [from, to] = [bus.landings[farthest.from]!, bus.landings[farthest.to]!];
    const round = shape.closing.length > 0 ? ' the longest way round' : '';
    const over = study.lengthText(metres(farthest.length - limit.value));
    report({
      message: `${from.name} and ${to.name} are ${study.lengthText(metres(farthest.length))} apart${round} on segment ${bus.name}; ${study.lengthText(metres(limit.value))} is ${limit.meaning} (${over} over): lead the cable another way or divide the segment with a repeater`,
      place: bus.place,
      related: [
        { message: `${from.name} is one of the two`, place: from.place },
        { message: `${to.name} is the other`, place: to.place },
      ],
      at: to.name,
    });
  },
  explanation: {
    what: 'Two devices of a free-topology segment are farther apart along the cable than its class allows. The terminator counts as a device, and in a loop the longer way counts.',
    why: 'The signal weakens with every metre between sender and receiver, and what comes back from each open branch lies over it. A segment of free form pays for its shape with reach.',
    field: 'The two devices and their neighbours miss each other, while each of them works with those in the middle.',
    mend: 'Start the branches nearer to the middle, pull cable of a better class, divide the segment with a repeater, or run it as one chain with a terminator at each end.',
    bad: segmentExample([
      'from head : Panel terminate resistor 52.3 ohm capacitor 100 uF',
      '700 ft to room1 : RoomUnit',
      'from head',
      '750 ft to room2 : RoomUnit',
      'from head',
      '20 ft to room3 : RoomUnit',
    ]),
    good: segmentExample([
      'from head : Panel terminate resistor 52.3 ohm capacitor 100 uF',
      '600 ft to room1 : RoomUnit',
      'from head',
      '650 ft to room2 : RoomUnit',
      'from head',
      '20 ft to room3 : RoomUnit',
    ]),
    sources: [
      'Free topology transceiver data book, free topology specifications: device to device, 250 m on category 5 to 500 m on 16 AWG with fluoropolymer insulation; the terminator counts; in a loop the longest path',
    ],
    since: '0.1.0',
  },
};
