import { isUnknown } from '../../known.js';
import { canWireLimit } from '../../limits/can.js';
import { limitedLength } from '../../limits/length.js';
import { wireReach } from '../../physics/can.js';
import { formatSignificant, metres } from '../../quantity.js';
import { canExample } from '../other-example.js';
import type { BusRule } from '../rule.js';

/** The conductor's resistance against what the farthest receiver needs, then against the classes of CiA. */
export const wireTooThinForLength: BusRule = {
  id: 'wire-too-thin-for-length',
  severity: 'warning',
  kinds: ['can'],
  scope: 'bus',
  check: (study, report) => {
    const { bus, shape, loopResistance } = study;
    if (bus.damaged || !shape.ends || isUnknown(loopResistance)) return;
    const length = limitedLength(study);
    const perMetre = loopResistance.nominal / 2 / length;
    const resistance = `${formatSignificant(perMetre * 1000)} ohm/km`;
    const reach = wireReach(study);
    if (!isUnknown(reach) && reach < length) {
      const nodes = bus.landings.filter(({ node }) => node).length;
      report({
        message: `bus ${bus.name} runs ${study.lengthText(length)} on conductors of ${resistance}; with its ${nodes} nodes and its terminators ${study.lengthText(reach)} is as far as the level reaches (${study.lengthText(metres(length - reach))} over): pull thicker cable or shorten it`,
        place: bus.cablePlace ?? bus.place,
      });
      return;
    }
    const limit = canWireLimit(length);
    if (!limit || perMetre <= limit.value) return;
    report({
      message: `bus ${bus.name} runs ${study.lengthText(length)} on conductors of ${resistance}; ${limit.value * 1000} ohm/km is ${limit.meaning}; thicker cable keeps a margin`,
      place: bus.cablePlace ?? bus.place,
      severity: 'info',
    });
  },
  explanation: {
    what: 'The conductors of a CAN bus resist too much for its length.',
    why: 'The far terminator and every node draw current through the copper, and the level falls along the line. A driver gives 1.5 V at least and a receiver needs up to 1 V, so that little may be lost, whatever the rate.',
    field:
      'The far node sees error frames whenever the other end sends; it gets worse in the heat and with each node that is added. A dominant level of 0.9 V or less at the far end tells it.',
    mend: 'Pull thicker cable, shorten the line, or take terminators of a larger value on a long line, which draw less.',
    bad: canExample(
      [
        'from head : RackHead terminate switch',
        '500 ft to valve1 : ValveBoard address 1',
        '500 ft to valve2 : ValveBoard address 2 terminate resistor 120 ohm',
      ],
      { rate: '125 kbit/s', conductor: '26 AWG stranded' },
    ),
    good: canExample(
      [
        'from head : RackHead terminate switch',
        '500 ft to valve1 : ValveBoard address 1',
        '500 ft to valve2 : ValveBoard address 2 terminate resistor 120 ohm',
      ],
      { rate: '125 kbit/s', conductor: '18 AWG stranded' },
    ),
    sources: [
      'Philips AN96116, equation 11 and appendix 3, with the values behind its table: 1.5 V, 1 V, a margin of 20 %, 20 kohm per node that states no resistance',
      'from memory of CiA 303-1: resistance per metre by length, as a note only',
    ],
    since: '0.1.0',
  },
};
