import { segmentLimits, segmentRow } from '../../limits/free-topology.js';
import { metres } from '../../quantity.js';
import { segmentExample } from '../other-example.js';
import type { BusRule } from '../rule.js';
import { cablePlaceOf } from './cables.js';

const statements = ['from head : Panel terminate resistor 52.3 ohm capacitor 100 uF', '120 ft to room1 : RoomUnit'];

export const cableClassUnstated: BusRule = {
  id: 'cable-class-unstated',
  scope: 'bus',
  severity: 'info',
  kinds: ['free-topology'],
  explanation: {
    what: 'A cable of a free-topology segment does not say which class it is of, and its make does not tell.',
    why:
      'The reach of free topology depends on the class of the cable, by a factor of three. Without it only what no ' +
      'cable may exceed is checked.',
    field: 'Nothing yet; a segment that is too long for its cable is not seen on the plan.',
    mend:
      "Write the class that the maker prints on the jacket into the cable's entry: `class level-4`, `class category-5`, " +
      '`category-5e`, `category-6`, `category-6a`, or `jysty-08` for J-Y(St)Y 2x2x0.8. A stranded pair of 16 AWG needs none.',
    bad: segmentExample(statements, 'velocity 66 %'),
    good: segmentExample(statements),
    sources: ['Free topology transceiver data book: cables and their lengths'],
    since: '0.1.0',
  },
  check({ bus, lengthText, runsByCable }, report) {
    for (const [cable, [first]] of runsByCable) {
      if (segmentRow(cable)) continue;
      const { total, apart } = segmentLimits(bus);
      report({
        message: `cable ${cable.name} does not say its class, so that segment ${bus.name} is only held against ${lengthText(metres(total))} of wire and ${lengthText(metres(apart))} between devices; write its class, such as class level-4`,
        place: cablePlaceOf(bus, first),
        related: [{ message: `cable ${cable.name} is described here`, place: cable.place }],
        at: cable.name,
      });
    }
  },
};
