import { isUnknown } from '../../known.js';
import { lengthLimit, limitedLength } from '../../limits/length.js';
import { answersAt, propagation, samplePointOf } from '../../physics/can.js';
import { formatNumber, formatRate, formatSeconds, seconds } from '../../quantity.js';
import { canExample } from '../other-example.js';
import type { BusRule } from '../rule.js';
import { slowerFixes } from './rate-too-fast-for-length.js';

/** The way there and back against the part of the bit before its sample. A line too long for its rate is told as that. */
export const propagationOverBudget: BusRule = {
  id: 'propagation-over-budget',
  severity: 'warning',
  kinds: ['can'],
  scope: 'bus',
  check: (study, report) => {
    const { bus, bitTime } = study;
    const limit = lengthLimit(study);
    if (bus.damaged || !bus.rate || isUnknown(bitTime)) return;
    if (limit && limit.value < limitedLength(study)) return;
    const found = propagation(study);
    if (isUnknown(found) || !found || 0 <= found.slack) return;
    const { from, to, time, slack } = found;
    const unsaid = [from, to].filter(({ port }) => port?.delay === undefined);
    const assumed = unsaid.length > 0 ? ', taking 255 ns for a transceiver that states no delay' : '';
    const share = formatNumber(samplePointOf(bus) * 100, 1);
    report({
      message: `a bit needs ${formatSeconds(time)} from ${from.name} to ${to.name} and back${assumed}; at ${formatRate(bus.rate.value)} and a sample at ${share} % it has ${formatSeconds(seconds(time + slack))} (${formatSeconds(seconds(-slack))} short): slow bus ${bus.name} down, shorten it, or sample later`,
      place: bus.samplePoint?.place ?? bus.rate.place,
      severity: unsaid.length > 0 ? 'warning' : 'error',
      fixes: () => slowerFixes(study, (rate) => answersAt(study, rate)),
    });
  },
  explanation: {
    what: 'A bit does not get from one node to the other and back before it is sampled.',
    why: 'On CAN all nodes send the identifier at once and compare, bit by bit, and acknowledge within the frame. Each must see what the farthest one answers before it samples: t = 2 (t transceiver + t cable), isolators counted at both ends.',
    field:
      'Short messages between near nodes work; as soon as far ones speak at the same time, nodes fall silent with error counters at their limit.',
    mend: 'Lower the rate, shorten the line, use faster transceivers or isolators, or move the sample point back as far as all controllers allow. Write the delay of a port, from its data sheet, in the catalogue.',
    bad: canExample(
      ['from head : RackHead terminate switch', '60 ft to valve1 : ValveBoard address 1 terminate resistor 120 ohm'],
      { rate: '800 kbit/s', delay: '480 ns' },
    ),
    good: canExample(
      ['from head : RackHead terminate switch', '60 ft to valve1 : ValveBoard address 1 terminate resistor 120 ohm'],
      { rate: '800 kbit/s', delay: '210 ns' },
    ),
    sources: [
      'Microchip DS70005340A, equations 5 to 9: t = 2 (t loop + t bus), a loop of at most 255 ns; Philips AN96116, equation 5',
      'CiA bit timing table: sample point as near to 87.5 % as possible, where the bus says none',
    ],
    since: '0.1.0',
  },
};
