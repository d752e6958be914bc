/** What the runs of a bus come to, told in one walk. */
import type { Bus, Cable, Run } from '../network.js';
import { type Metres, metres } from '../quantity.js';

export interface RunCensus {
  /** Of all runs, spares aside. */
  readonly length: Metres;
  /** Runs that are in the circuit, by their cable, in the order of the text. Runs of unknown cable are left out. */
  readonly byCable: ReadonlyMap<Cable, readonly Run[]>;
  /** The text draws one chain from end to end: each run leads from the landing reached last to a new one. */
  readonly isChain: boolean;
  /** Every run in the circuit is on known cable. */
  readonly isOnCable: boolean;
  /** Patch cords, which are of Ethernet alone, are written at some run. */
  readonly hasCords: boolean;
}

export function runCensusOf({ landings, runs }: Bus): RunCensus {
  const cable = runs[0]?.cable;
  let length = 0;
  let isChain = 0 < runs.length && landings.length === runs.length + 1;
  let isOneCable = cable !== undefined;
  let isOnCable = true;
  let hasCords = false;
  for (let index = 0; index < runs.length; index++) {
    const run = runs[index]!;
    if (run.from !== index || run.to !== index + 1 || run.tap || run.spare) isChain = false;
    if (run.cords) hasCords = true;
    if (run.spare || run.cable !== cable) isOneCable = false;
    if (run.spare) continue;
    if (!run.cable) isOnCable = false;
    length += run.length;
  }
  // Nearly all buses are on one cable.
  const byCable = cable && isOneCable ? new Map([[cable, runs]]) : runsByCable(runs);
  return { length: metres(length), byCable, isChain, isOnCable, hasCords };
}

function runsByCable(runs: readonly Run[]): Map<Cable, Run[]> {
  const result = new Map<Cable, Run[]>();
  for (const run of runs) {
    if (run.spare || !run.cable) continue;
    const same = result.get(run.cable);
    if (same) same.push(run);
    else result.set(run.cable, [run]);
  }
  return result;
}
