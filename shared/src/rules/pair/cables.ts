/** Which cables a bus runs on, and which of them is its main one. */
import { runCensusOf } from '../../figures/run-census.js';
import type { BusStudy } from '../../figures/study.js';
import type { Fix } from '../../finding.js';
import type { Bus, Cable, Run } from '../../network.js';
import { formatNumber } from '../../quantity.js';

/** The bus's own cable where a run uses it, else the one that most of its length runs on. */
export function mainCable(
  bus: Bus,
  byCable: ReadonlyMap<Cable, readonly Run[]> = runCensusOf(bus).byCable,
): Cable | undefined {
  if (bus.cable && byCable.has(bus.cable)) return bus.cable;
  let main: Cable | undefined;
  let most = -1;
  for (const [cable, runs] of byCable) {
    const length = runs.reduce((sum, run) => sum + run.length, 0);
    if (most < length) {
      main = cable;
      most = length;
    }
  }
  return main;
}

/** Pulls some runs of a bus on another cable. */
export function recable(bus: Bus, runs: readonly Run[], cable: Cable): Fix {
  const count = runs.length === 1 ? 'this run' : `${runs.length} runs`;
  return {
    title: `Pull ${count} on ${cable.name}`,
    safe: false,
    edits: runs.map(({ index }) => ({
      kind: 'set-run-cable',
      bus: bus.index,
      run: index,
      ...(cable === bus.cable ? {} : { cable: cable.name }),
    })),
  };
}

/** Where a run's cable is written: at the run, or in the first line of the bus. */
export const cablePlaceOf = (bus: Bus, run: Run | undefined) =>
  run?.cablePlace ?? bus.cablePlace ?? run?.place ?? bus.place;

/** True, false, or undefined where the cable does not say. */
export const isShielded = (cable: Cable | undefined): boolean | undefined =>
  cable?.shield === undefined ? undefined : cable.shield !== 'none';

/** Whether any run in the circuit is on cable that is known to have a shield. */
export function isPartlyShielded({ runsByCable }: Pick<BusStudy, 'runsByCable'>): boolean {
  for (const cable of runsByCable.keys()) if (isShielded(cable)) return true;
  return false;
}

/** `22 AWG` or `0.34 mm2`, as the cable has it. */
export const sizeOf = (cable: Cable) =>
  cable.area === undefined ? `${cable.gauge} AWG` : `${formatNumber(cable.area * 1e6, 3)} mm2`;
