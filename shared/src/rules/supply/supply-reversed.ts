/** A supply that is landed the wrong way round. */
import type { BusRule } from '../rule.js';
import { supplyExample, withCare } from './example.js';
import { soleFeeds } from './feeds.js';

export const supplyReversed: BusRule = {
  id: 'supply-reversed',
  scope: 'bus',
  severity: 'error',
  kinds: ['supply'],
  check(study, report) {
    const { bus, shape } = study;
    for (const { landing: from, source, loads } of soleFeeds(study)) {
      const part = shape.componentOf[from.index];
      for (const { index, name, crossed, port, splice } of bus.landings) {
        if (!crossed || shape.componentOf[index] !== part) continue;
        // One device alone on an alternating supply is as well served either way.
        if (port?.polarity === 'free' && (source.form !== 'ac' || loads.length < 2)) continue;
        const strict = source.form === 'dc' && port?.polarity !== 'free';
        const what = splice === undefined ? `${name} gets` : `everything behind splice ${name} gets`;
        report({
          severity: strict ? 'error' : 'warning',
          message: strict
            ? `the wires are swapped at ${name}: ${what} plus where minus is due; swap them back`
            : `the wires are swapped at ${name}; devices with a rectifier for one half wave that share a source must all have the same wire as common, or they short it: swap them back`,
          place: crossed,
          at: name,
          fixes: () => [
            {
              title: `Swap the wires back at ${name}`,
              safe: false,
              edits: [{ kind: 'uncross', bus: bus.index, landing: index }],
            },
          ],
        });
      }
    }
  },
  explanation: {
    what: 'The two wires of a supply are swapped at a landing.',
    why: 'Direct current the wrong way round damages what has no diode against it. On alternating current, devices that rectify one half wave tie one wire to their common; two of them the opposite way round short the source through their commons, the more so where the commons are joined by a bus or by earth.',
    field: 'A fuse opens, a board smells, or a transformer that fed one device well gets hot with the second.',
    mend: `Swap the wires back and take out \`crossed\`. Keep one wire as common from the source to the last device, and earth it at one place if the maker asks for it. ${withCare}`,
    bad: supplyExample(['40 ft to board1 : Board crossed', '25 ft to board2 : Board']),
    good: supplyExample(['40 ft to board1 : Board', '25 ft to board2 : Board']),
    sources: ["The device's own documentation, as the catalogue repeats it", 'Common practice, no published source'],
    since: '0.1.0',
  },
};
