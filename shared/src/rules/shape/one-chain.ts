/** The fix that re-draws a bus as one chain. */
import type { BusStudy } from '../../figures/study.js';
import type { Fix } from '../../finding.js';
import { listed } from '../../known.js';
import type { Run } from '../../network.js';
import { metres } from '../../quantity.js';
import { terminatorEdits } from '../ends/terminators.js';
import { runText } from './names.js';
import { canRewire, courseOf, shortestChain, without } from './straighten.js';

/**
 * The bus as one chain, each new piece along the cable that is there, since nobody has measured it. `left` is a run that
 * is left out; what is said of its landings stays.
 */
export function oneChainFixes(study: BusStudy, left?: Run): Fix[] {
  const { bus, shape } = left ? without(study.bus, left.index) : study;
  if (!canRewire(bus, shape, left?.index)) return [];
  const chain = shortestChain(bus, shape);
  const last = chain.links.at(-1);
  if (!last) return [];
  return [
    {
      title: [...(left ? [`Leave out ${runText(bus, left.index, study.lengthText)}`] : []), ...chainText()].join(
        ', and ',
      ),
      safe: false,
      edits: [
        { kind: 'rewire', bus: bus.index, course: courseOf(bus, shape, chain) },
        ...terminatorEdits(bus, [chain.start, last.landing]),
      ],
    },
  ];

  function chainText(): string[] {
    const guessed = chain.links.filter(({ run }) => run === undefined).length;
    if (left && guessed === 0) return [];
    const isTrunk = (run: Run) => !run.spare && !run.tap && !shape.onTap.has(run.from);
    const old = bus.runs.reduce((sum, run) => (isTrunk(run) ? sum + run.length : sum), 0);
    const added = chain.links.reduce((sum, { length }) => sum + length, 0) - old;
    const landings = [chain.start, ...chain.links.map(({ landing }) => landing)];
    const names = listed(landings.map((index) => bus.landings[index]!.name));
    const lengths = guessed === 1 ? '1 new run is' : `${guessed} new runs are`;
    const text = `un one chain through ${names}: about ${study.lengthText(metres(added))} more cable (${lengths} not measured, taken along the cable that is there)`;
    return [left ? `r${text}` : `R${text}`];
  }
}
