/** The statements of a bus by the headings that they are written under. */
import type { Area, BusStatement, From, Run } from '../generated/reader.js';

type Step = From | Run;

/** A heading of an area and the course below it. */
export interface AreaGroup {
  readonly area: Area;
  readonly steps: readonly Step[];
}

/** Steps before the first heading and behind an empty one stand alone. */
export function byAreas(statements: readonly BusStatement[]): (Step | AreaGroup)[] {
  const groups: (Step | AreaGroup)[] = [];
  let steps: Step[] | undefined;
  for (const statement of statements) {
    if (statement.type === 'Area') {
      steps = statement.name?.text?.trim() ? [] : undefined;
      if (steps) groups.push({ area: statement, steps });
    } else if (statement.type === 'From' || statement.type === 'Run') (steps ?? groups).push(statement);
  }
  return groups;
}
