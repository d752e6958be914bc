/** Two sources on one supply. */
import { listed } from '../../known.js';
import type { BusRule } from '../rule.js';
import { soundSupply, supplyExample, withCare } from './example.js';

export const sourceDoubled: BusRule = {
  id: 'source-doubled',
  scope: 'bus',
  severity: 'warning',
  kinds: ['supply'],
  check({ bus, shape }, report) {
    if (bus.damaged) return;
    for (const component of shape.components) {
      const sources = component.map((index) => bus.landings[index]!).filter(({ port }) => port?.supplies);
      const [first, second, ...others] = sources;
      if (!first || !second) continue;
      report({
        message: `bus ${bus.name} joins the outputs of ${sources.length} sources, ${listed(sources.map(({ name }) => name))}; the higher one feeds all until it gives way, and a class 2 circuit may have one source only unless they are listed for it: give each its own loads`,
        place: second.place,
        at: second.name,
        related: [first, ...others].map(({ name, place }) => ({ message: `${name} is a source too`, place })),
      });
    }
  },
  explanation: {
    what: 'The outputs of two or more sources are joined.',
    why: 'No two sources have the same voltage, so that one carries the load and the other idles, or feeds back into it. Together they give more than the cable was chosen for, and the circuit is no longer limited as class 2 is. Transformers that are joined the wrong way round short each other.',
    field:
      'One supply runs hot, or a fuse opens as the second one is switched on. A circuit that was switched off stays live from the other end.',
    mend: `Part the supply so that each source feeds its own loads. Supplies in parallel need to be made and listed for it. ${withCare}`,
    bad: supplyExample([...soundSupply, '10 ft to second : PowerBox']),
    good: supplyExample(soundSupply),
    sources: ['From memory of NFPA 70 (2017) 725.121(B): interconnection of class 2 sources; local code decides'],
    since: '0.1.0',
  },
};
