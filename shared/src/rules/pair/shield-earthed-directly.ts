import { shieldNetwork } from '../../limits/free-topology.js';
import { segmentExample } from '../other-example.js';
import type { BusRule } from '../rule.js';
import { isPartlyShielded } from './cables.js';

const shielded = (earth: string) =>
  segmentExample([
    'from head : Panel terminate resistor 52.3 ohm capacitor 100 uF',
    '120 ft to room1 : RoomUnit',
    earth,
  ]).replace('shield none', 'shield foil drain');

export const shieldEarthedDirectly: BusRule = {
  id: 'shield-earthed-directly',
  scope: 'bus',
  severity: 'warning',
  kinds: ['free-topology'],
  explanation: {
    what: 'The shield of a free-topology segment is led to earth without the resistor and capacitor that it wants.',
    why:
      'Free topology earths the shield for high frequencies alone: 0.1 uF leads noise away, 470 kohm across it keeps ' +
      'the shield from charging, and no mains current flows along it however many devices earth it.',
    field: 'Hum on the shield where panels have earths of their own; the opposite habit comes from RS-485.',
    mend: 'Put 470 kohm and 0.1 uF in parallel between shield and earth, at one point at least, better at each device.',
    bad: shielded('shield earthed at head'),
    good: shielded('shield earthed at head through 470 kohm capacitor 100 nF'),
    sources: ['Free topology transceiver data book: 0.1 uF (10 %, 100 V) with 470 kohm, 1/4 W, in parallel'],
    since: '0.1.0',
  },
  check({ bus, runsByCable }, report) {
    if (!isPartlyShielded({ runsByCable })) return;
    for (const { landing: index, through, place } of bus.earths) {
      const landing = index === undefined ? undefined : bus.landings[index];
      if (!landing || through?.capacitance !== undefined) continue;
      report({
        message: `the shield of segment ${bus.name} is earthed at ${landing.name} ${through ? 'through a resistor alone' : 'directly'}; on free topology it goes to earth through 470 kohm with 0.1 uF across: fit the two there`,
        place,
        at: landing.name,
        fixes: () => [
          {
            title: `Earth the shield at ${landing.name} through 470 kohm and 0.1 uF`,
            safe: false,
            edits: [{ kind: 'earth-shield', bus: bus.index, landing: landing.index, through: shieldNetwork }],
          },
        ],
      });
    }
  },
};
