/** Files that can be checked apart from each other: each store is whole in one group. */
import { Library } from './library.js';
import type { FileHost } from './project.js';
import { StoreUnits } from './store-units.js';

/**
 * Groups in the order of their first files, each in the order of its files. A file is in a group of its own unless it
 * continues a store: then it is in one group with the rest of that store.
 */
export function fileGroups(files: readonly string[], host: FileHost): string[][] {
  const library = new Library(host);
  const units = new StoreUnits(library);
  const groups = new Map(files.map((file) => [file, [file]]));
  const join = (one: string[], other: string[]) => {
    if (one === other) return;
    one.push(...other);
    for (const file of other) groups.set(file, one);
  };
  /** Per file with the main part of a store, which may be none of ours: the group of those that continue it. */
  const homes = new Map<string, string[]>();
  for (const file of files) {
    const given = host.read(file);
    // Without the word nothing is continued: most files need not be understood.
    if ('problem' in given || !given.text.includes('continued')) continue;
    library.take(file);
    for (const key of units.keysOf(file)) {
      const [home = ''] = key.split('\n');
      const group = groups.get(home) ?? homes.get(home);
      if (group) join(group, groups.get(file)!);
      else homes.set(home, groups.get(file)!);
    }
    library.release(file);
  }
  const place = new Map(files.map((file, index) => [file, index]));
  const byPlace = (left: string, right: string) => place.get(left)! - place.get(right)!;
  return [...new Set(groups.values())]
    .map((group) => group.sort(byPlace))
    .sort(([left = ''], [right = '']) => byPlace(left, right));
}
