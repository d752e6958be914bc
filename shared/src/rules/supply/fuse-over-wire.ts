/** A fuse that lets more through than the wire behind it may carry. */
import { isUnknown } from '../../known.js';
import { formatAmperes } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { supplyExample, withCare } from './example.js';
import { soleFeeds } from './feeds.js';
import { fuseFixes } from './fuse-sizes.js';
import { thinnestBehind } from './protection.js';

export const fuseOverWire: BusRule = {
  id: 'fuse-over-wire',
  scope: 'bus',
  severity: 'warning',
  kinds: ['supply'],
  check(study, report) {
    const { bus } = study;
    for (const { landing } of soleFeeds(study)) {
      for (const { run, thinnest } of thinnestBehind(bus, landing.index)) {
        const { fuse } = run;
        const { limit } = thinnest;
        const { cable } = thinnest.run;
        if (!fuse || fuse.value <= limit.value) continue;
        report({
          message: `the fuse of ${formatAmperes(fuse.value)} protects wire of bus ${bus.name} for which ${formatAmperes(limit.value as never)} is ${limit.meaning}; fit a smaller fuse or thicker wire, as local code has it`,
          place: fuse.place,
          at: bus.landings[run.to ?? run.from]!.name,
          fixes: () => (isUnknown(study.supply) ? [] : fuseFixes(bus, run, study.supply, limit.value)),
          related: cable ? [{ message: `cable ${cable.name} is described here`, place: cable.place }] : [],
        });
      }
    }
  },
  explanation: {
    what: 'A fuse has a higher rating than the thinnest wire behind it may carry.',
    why: 'A fuse is there for the wire. Where the wire gets hot before the fuse opens, the wire is the fuse. What a wire may carry is a matter of the local code: its insulation, its bundle and its surroundings count, which this language does not know.',
    field:
      'A fuse that kept opening was replaced by a larger one, or a thin cable was added behind a fuse for a thick one.',
    mend: `Fit a fuse that suits the thinnest wire behind it, or one more where the wire gets thinner. ${withCare}`,
    bad: supplyExample(['40 ft fuse 15 A to board1 : Board'], {
      conductor: '18 AWG stranded',
      source: '24 V dc within 2 % limit 20 A',
    }),
    good: supplyExample(['40 ft fuse 4 A to board1 : Board'], {
      conductor: '18 AWG stranded',
      source: '24 V dc within 2 % limit 20 A',
    }),
    sources: [
      'The maker of the cable, where its catalogue entry says what a conductor carries',
      'From memory of NFPA 70 (2017) 240.4(D): 7 A before 18 AWG, 10 A before 16 AWG, 15, 20 and 30 A before 14, 12 and 10 AWG; local code decides',
    ],
    since: '0.1.0',
  },
};
