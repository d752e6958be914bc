/** A fuse that the load alone opens. */
import { isUnknown } from '../../known.js';
import { formatAmperes } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { supplyExample, withCare } from './example.js';
import { fuseFixes } from './fuse-sizes.js';
import { mostBehind } from './protection.js';

export const fuseUnderLoad: BusRule = {
  id: 'fuse-under-load',
  scope: 'bus',
  severity: 'error',
  kinds: ['supply'],
  check({ bus, supply }, report) {
    if (bus.damaged || isUnknown(supply)) return;
    for (const run of bus.runs) {
      const { fuse } = run;
      const current = supply.amperes[run.index]!;
      if (!fuse || isUnknown(current) || current.high <= fuse.value) continue;
      const always = fuse.value < current.nominal;
      report({
        severity: always ? 'error' : 'warning',
        message: `${formatAmperes(current.nominal)}${always ? '' : `, at the worst ${formatAmperes(current.high)},`} flows through the fuse of ${formatAmperes(fuse.value)} with nothing wrong; divide the loads over more runs, or fit a larger fuse if the wire behind it allows one`,
        place: fuse.place,
        at: bus.landings[run.to ?? run.from]!.name,
        fixes: () => fuseFixes(bus, run, supply, mostBehind(bus, run)),
      });
    }
  },
  explanation: {
    what: 'The loads behind a fuse draw more than its rating.',
    why: 'The fuse opens in normal service, at once or after hours. Near its rating it ages, more so in a warm panel. What loads draw as they are switched on comes on top of it and is not known here.',
    field: 'A fuse opens on the hottest day, is replaced, and opens again; then it is replaced by a larger one.',
    mend: `Divide the loads. A larger fuse is right only where the wire behind it carries as much. ${withCare}`,
    bad: supplyExample(['40 ft fuse 0.5 A to board1 : Board', '25 ft to board2 : Board']),
    good: supplyExample(['40 ft fuse 2 A to board1 : Board', '25 ft to board2 : Board']),
    sources: ["Kirchhoff's laws: circuit theory", "The device's own documentation, as the catalogue repeats it"],
    since: '0.1.0',
  },
};
