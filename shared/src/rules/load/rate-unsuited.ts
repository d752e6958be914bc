import { fastestCan } from '../../limits/can.js';
import { ethernetRates } from '../../limits/ethernet.js';
import { segmentRate } from '../../limits/free-topology.js';
import type { Bus } from '../../network.js';
import { bitsPerSecond, formatRate } from '../../quantity.js';
import { segmentExample } from '../other-example.js';
import type { BusRule } from '../rule.js';

const statements = ['from head : Panel terminate resistor 52.3 ohm capacitor 100 uF', '120 ft to room1 : RoomUnit'];

/** A rate that the kind of bus does not have. */
export const rateUnsuited: BusRule = {
  id: 'rate-unsuited',
  severity: 'warning',
  kinds: ['can', 'free-topology', 'ethernet'],
  scope: 'bus',
  check: ({ bus }, report) => {
    const { rate } = bus;
    const known = rate && ratesOf(bus, rate.value);
    if (!rate || known === undefined) return;
    report({
      message: `bus ${bus.name} runs at ${formatRate(rate.value)}; ${known}: write the rate that its devices are set to`,
      place: rate.place,
      fixes: () =>
        bus.kind === 'free-topology'
          ? [
              {
                title: `Run at ${formatRate(bitsPerSecond(segmentRate))}`,
                safe: false,
                edits: [{ kind: 'set-rate', bus: bus.index, rate: bitsPerSecond(segmentRate) }],
              },
            ]
          : [],
    });
  },
  explanation: {
    what: 'A bus has a rate that its kind does not have. Free topology runs at 78.125 kbit/s, classic CAN at up to 1 Mbit/s, Ethernet at a few fixed rates.',
    why: 'Such a rate is mostly a slip of the keyboard, or the rate of another bus. Lengths that depend on it cannot be judged.',
    field: 'No device can be set to it.',
    mend: 'Write the rate that the devices have, or leave it out where the kind has only one.',
    bad: segmentExample(statements).replace('free-topology on', 'free-topology 9600 on'),
    good: segmentExample(statements).replace('free-topology on', 'free-topology 78125 on'),
    sources: [
      'from memory of ISO/IEC 14908-2 (free topology) and of IEEE 802.3 (Ethernet)',
      'ISO 11898-2 as quoted in TI SLOA101B: up to 1 Mbit/s; the faster data phase of later editions is not judged here',
    ],
    since: '0.1.0',
  },
};

/** What a bus of the kind runs at, where it is not this. */
function ratesOf({ kind }: Bus, rate: number): string | undefined {
  if (kind === 'free-topology' && rate !== segmentRate)
    return `free topology has ${formatRate(bitsPerSecond(segmentRate))} and no other rate`;
  if (kind === 'can' && fastestCan.value < rate)
    return `${formatRate(bitsPerSecond(fastestCan.value))} is ${fastestCan.meaning}`;
  if (kind !== 'ethernet' || ethernetRates.includes(rate)) return undefined;
  return `Ethernet over pairs has ${ethernetRates.map((one) => formatRate(bitsPerSecond(one))).join(', ')}`;
}
