/** A run as a part of the drawing: what one can point at. */
import type { Run } from '../network.js';
import type { BusContext } from './bus-drawing.js';
import type { Part, Shape } from './scene.js';
import { runName } from './words.js';

export function runPart({ study, marks, group, keyOf }: BusContext, run: Run, shapes: readonly Shape[]): Part {
  const name = runName(study, run);
  return {
    key: keyOf(`${group} ${name}`),
    kind: 'run',
    name,
    findings: marks.runs.get(run.index) ?? [],
    group,
    place: run.lengthPlace,
    covers: [run.place],
    shapes,
  };
}
