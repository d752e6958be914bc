/** Fixes that pull a supply on another cable. */
import type { BusStudy } from '../../figures/study.js';
import type { Fix } from '../../finding.js';
import type { Cable, Run } from '../../network.js';
import { cableResistance, conductorArea, resistanceOfLength } from '../../physics/conductor.js';
import { type Supply, supplyOf } from '../../physics/supply.js';
import type { Ohms } from '../../quantity.js';

const areaOf = (cable: Cable): number => conductorArea(cable) ?? 0;

/**
 * Pulls all of the bus on a cable of the store on which the supply is well, the thinnest such cables first; `isWell`
 * judges the supply that it would be.
 */
export function thickerFixes(study: BusStudy, isWell: (supply: Supply) => boolean): Fix[] {
  const { store, bus, shape, temperature } = study;
  const cables = new Set<Cable>();
  for (const { cable, runs } of store.buses) {
    for (const one of [cable, ...runs.map((run) => run.cable)]) if (one) cables.add(one);
  }
  const wouldDo = (cable: Cable): boolean => {
    const changed = { ...bus, runs: bus.runs.map((run) => ({ ...run, cable })) };
    const resistance = (run: Run) => resistanceOfLength<Ohms>(cableResistance(cable, temperature), run.length);
    return isWell(supplyOf(changed, shape, resistance));
  };
  return [...cables]
    .filter((cable) => bus.runs.some((run) => !run.spare && areaOf(run.cable ?? cable) < areaOf(cable)))
    .filter(wouldDo)
    .sort((left, right) => areaOf(left) - areaOf(right))
    .slice(0, 2)
    .map(({ name }) => ({
      title: `Pull bus ${bus.name} on ${name}, on which every device gets enough`,
      safe: false,
      edits: [
        { kind: 'set-bus-cable', bus: bus.index, cable: name },
        ...bus.runs
          .filter(({ cablePlace }) => cablePlace)
          .map(({ index }) => ({ kind: 'set-run-cable' as const, bus: bus.index, run: index })),
      ],
    }));
}
