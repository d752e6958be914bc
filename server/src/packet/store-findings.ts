import type { Project } from '@fieldpair/language';
import type { Finding, Store } from '@fieldpair/shared';

/** What is wrong with a store, and with the texts that it is written in. */
export function findingsOf(project: Project, store: Store, files: readonly string[]): Finding[] {
  return files
    .flatMap((file) => project.findingsOf(file))
    .filter((finding) => finding.store === undefined || finding.store === store.name);
}
