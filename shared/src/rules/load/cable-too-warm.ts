import { segmentWarmth } from '../../limits/free-topology.js';
import { formatNumber } from '../../quantity.js';
import { segmentExample } from '../other-example.js';
import type { BusRule } from '../rule.js';

const segment = [
  'from head : Panel terminate resistor 52.3 ohm capacitor 100 uF',
  '120 ft to room1 : RoomUnit',
  'from head',
  '90 ft to room2 : RoomUnit',
];

/** The temperature that the bus states for its cable. */
export const cableTooWarm: BusRule = {
  id: 'cable-too-warm',
  severity: 'error',
  kinds: ['free-topology'],
  scope: 'bus',
  check: ({ bus }, report) => {
    const { ambient } = bus;
    if (!ambient || ambient.value <= segmentWarmth.value) return;
    report({
      message: `the cable of segment ${bus.name} is at ${formatNumber(ambient.value, 1)} degC; ${segmentWarmth.value} degC is ${segmentWarmth.meaning}: lead it another way, or plan for a shorter reach`,
      place: ambient.place,
    });
  },
  explanation: {
    what: 'The cable of a free-topology segment is warmer than its lengths are given for.',
    why: 'Copper resists 0.4 % more with each degree, and the lengths of the data book are given for an average of at most 55 degC, with no piece above 85 degC.',
    field: 'A segment that works in winter loses its far devices in summer, or when the plant behind the wall runs.',
    mend: 'Keep the cable away from hot ducts and roofs. `ambient` is the average of the whole segment.',
    bad: segmentExample([...segment, 'ambient 60 degC']),
    good: segmentExample([...segment, 'ambient 40 degC']),
    sources: [
      'Free topology transceiver data book: average wire temperature at most 55 degC, any piece at most 85 degC',
    ],
    since: '0.1.0',
  },
};
