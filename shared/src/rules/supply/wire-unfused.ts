/** Wire that a strong source feeds without a fuse. */
import type { BusStudy } from '../../figures/study.js';
import type { Fix } from '../../finding.js';
import { isUnknown } from '../../known.js';
import type { Landing } from '../../network.js';
import { formatAmperes } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { soundSupply, supplyExample, withCare } from './example.js';
import { describedAt, soleFeeds } from './feeds.js';
import { fuseFixes } from './fuse-sizes.js';
import { drawnLimit, thinnestUnfused } from './protection.js';

export const wireUnfused: BusRule = {
  id: 'wire-unfused',
  scope: 'bus',
  severity: 'warning',
  kinds: ['supply'],
  check(study, report) {
    const { bus } = study;
    for (const { landing, source } of soleFeeds(study)) {
      const most = drawnLimit(source);
      // A class 2 source protects its wires itself: that is what its marking says.
      if (most === undefined || source.class === 2) continue;
      const thin = thinnestUnfused(bus, landing.index);
      if (!thin || most <= thin.limit.value) continue;
      const { run, limit } = thin;
      report({
        message: `${landing.name} can give ${formatAmperes(most)} into wire of bus ${bus.name} for which ${formatAmperes(limit.value as never)} is ${limit.meaning}, and no fuse lies between; fit one where the wire starts, as local code has it`,
        place: run.place,
        at: bus.landings[run.to ?? run.from]!.name,
        related: [describedAt(landing, source)],
        fixes: () => firstRunFixes(study, landing, limit.value),
      });
    }
  },
  explanation: {
    what: 'A source that is not marked class 2 can give more than the wire carries, and no fuse lies between them.',
    why: 'When the wires touch somewhere, the source gives all it can for as long as it can. Nothing opens before the insulation of the thinnest wire does.',
    field: 'A rail-mounted supply of 10 or 20 A with bell wire under its terminals.',
    mend: `Write the fuse where the run starts (\`40 ft fuse 4 A to board1\`) and fit it there, or take a source that is marked class 2. ${withCare}`,
    bad: supplyExample(soundSupply, { source: '24 V dc within 2 % limit 20 A' }),
    good: supplyExample(['40 ft fuse 4 A to board1 : Board', '25 ft to board2 : Board'], {
      source: '24 V dc within 2 % limit 20 A',
    }),
    sources: [
      'The maker of the cable, where its catalogue entry says what a conductor carries',
      'From memory of NFPA 70 (2017) 240.4(D) and 725.41: what class 2 wiring needs no further protection for; local code decides',
    ],
    since: '0.1.0',
  },
};

/** A fuse where the wire starts, when one run alone leaves the source. */
function firstRunFixes({ bus, supply }: BusStudy, source: Landing, most: number): Fix[] {
  const [first, second] = bus.runs.filter(
    ({ from, to, spare }) => !spare && (from === source.index || to === source.index),
  );
  if (!first || second || first.from !== source.index || isUnknown(supply)) return [];
  return fuseFixes(bus, first, supply, most);
}
