/** A contact whose rest hides the rest of the loop. */
import type { BusRule } from '../rule.js';
import { loopExample, soundLoop } from './example.js';
import { hides, loopOf } from './loops.js';

export const contactUnsuited: BusRule = {
  id: 'contact-unsuited',
  scope: 'bus',
  severity: 'error',
  kinds: ['contact-loop'],
  check(study, report) {
    const loop = loopOf(study);
    if (!loop) return;
    const { bus } = loop;
    for (const landing of loop.contacts) {
      const how = hides(loop, landing);
      if (how === undefined || !landing.wiring) continue;
      const { name, index } = landing;
      report({
        message:
          how === 'shorts'
            ? `the contact of ${name} is normally closed and lies across the pair, so that it shorts bus ${bus.name} while nothing is wrong and hides the rest of it; let it break a conductor, or take a normally open contact`
            : `the contact of ${name} is normally open and breaks a conductor, so that bus ${bus.name} is open there while nothing is wrong and nothing behind it is seen; wire it across the pair, or take a normally closed contact`,
        place: landing.wiring.place,
        at: name,
        fixes: () => [
          how === 'shorts'
            ? {
                title: `Let ${name} break the plus conductor`,
                safe: false,
                edits: [
                  {
                    kind: 'wire-contact',
                    bus: bus.index,
                    landing: index,
                    wiring: { kind: 'breaks', conductor: 'plus' },
                  },
                ],
              }
            : {
                title: `Wire ${name} across the pair`,
                safe: false,
                edits: [{ kind: 'wire-contact', bus: bus.index, landing: index, wiring: { kind: 'across' } }],
              },
        ],
      });
    }
  },
  explanation: {
    what: 'A normally closed contact lies across the pair, or a normally open one breaks a conductor, and something lies behind it.',
    why: 'Across the pair, a closed contact is a short: nothing behind it can be seen until it opens. In a conductor, an open contact is a gap with the same effect. Contacts that rest closed belong in line, contacts that rest open belong across.',
    field:
      'The loop reads short or open from the first day, the input is set to another mode until it is quiet, and contacts further on never alarm.',
    mend: 'Wire the contact the other way, or use its other pole: most relays have one of each.',
    bad: loopExample(
      ['60 ft to call1 : CallButton across', '25 ft to call2 : CallButton breaks + terminate resistor 4.7 kohm'],
      { input: ['expects resistor 4.7 kohm'] },
    ),
    good: loopExample(soundLoop),
    sources: ['Series and parallel connection of resistances: circuit theory'],
    since: '0.1.0',
  },
};
