import type { Bus, Cable, Run } from '../network.js';

/** Runs that are in the circuit, by their cable, in the order of the text. Runs of unknown cable are left out. */
export function runsByCable({ runs }: Bus): Map<Cable, Run[]> {
  const result = new Map<Cable, Run[]>();
  for (const run of runs) {
    if (run.spare || !run.cable) continue;
    const same = result.get(run.cable);
    if (same) same.push(run);
    else result.set(run.cable, [run]);
  }
  return result;
}
