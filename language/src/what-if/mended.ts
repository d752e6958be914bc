/** A store as it would be once a fix is applied; the texts stay as they are. */
import type { Bus, Finding, Fix, Store } from '@fieldpair/shared';
import { applyChanges, changesOfFix } from '../edit/safe-fixes.js';
import { Project } from '../workspace/project.js';

/** The store and the bus after the fix, or undefined when the fix leaves no such bus. @param file the text that the finding is in. */
export function mendedBus(
  project: Project,
  file: string,
  finding: Finding,
  fix: Fix,
  bus: Bus,
): { readonly store: Store; readonly bus: Bus } | undefined {
  const changes = changesOfFix(project, file, finding, fix);
  const changed = new Map<string, string>();
  for (const one of new Set(changes.map((change) => change.file))) {
    const text = project.textOf(one);
    if (text !== undefined)
      changed.set(
        one,
        applyChanges(
          text,
          changes.filter((change) => change.file === one),
        ),
      );
  }
  if (changed.size === 0) return undefined;
  const mended = new Project({
    resolve: (from, path) => project.importsOf(from).find((one) => one.path === path)?.target ?? path,
    read: (one) => {
      const text = changed.get(one) ?? project.textOf(one);
      return text === undefined ? { problem: 'it cannot be read' } : { text };
    },
  });
  // A file that continues the store imports this one.
  for (const one of [file, ...project.dependents(file)]) mended.add(one);
  for (const store of mended.storesOf(file)) {
    if (store.name !== finding.store) continue;
    const found = store.buses.find(({ name }) => name === bus.name);
    if (found) return { store, bus: found };
  }
  return undefined;
}
