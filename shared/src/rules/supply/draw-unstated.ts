/** A device of a supply that does not say what it draws. */
import { listed } from '../../known.js';
import type { BusRule } from '../rule.js';
import { soundSupply, supplyExample, withCare } from './example.js';
import { soleFeeds } from './feeds.js';

export const drawUnstated: BusRule = {
  id: 'draw-unstated',
  scope: 'bus',
  severity: 'info',
  kinds: ['supply'],
  check(study, report) {
    const { bus, shape } = study;
    for (const { landing: from } of soleFeeds(study)) {
      const part = shape.componentOf[from.index];
      const silent = bus.landings.filter(
        ({ index, port }) =>
          shape.componentOf[index] === part && port?.kind === 'supply' && !port.supplies && !port.draws,
      );
      const [first, ...others] = silent;
      if (!first) continue;
      report({
        message: `the catalogue does not say what ${listed(silent.map(({ name }) => name))} draw${others.length === 0 ? 's' : ''}, so that no voltage or current of bus ${bus.name} is known or judged; write it at the port, such as draws 0.4 A above 19 V`,
        place: first.place,
        at: first.name,
        related: others.map(({ name, place }) => ({ message: `nor what ${name} draws`, place })),
      });
    }
  },
  explanation: {
    what: 'A device on a supply does not state what it draws.',
    why: 'The current of one device lowers the voltage of all. Where one is not known, none can be computed, and a supply that is too weak or too long goes unnoticed.',
    field: 'Nothing shows until the last device is added.',
    mend: `Write what its label says: a current or a power, and the voltages between which it works. ${withCare}`,
    bad: supplyExample(soundSupply).replace(/ +draws .*\n/, ''),
    good: supplyExample(soundSupply),
    sources: ["Kirchhoff's laws: circuit theory"],
    since: '0.1.0',
  },
};
