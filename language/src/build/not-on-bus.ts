/** A mention of a landing that a bus does not have. */
import type { Landing } from '@fieldpair/shared';
import type { LandingReference } from '../generated/reader.js';
import type { Notes } from './notes.js';
import { didYouMean, nearest, writeFixes } from './suggest.js';

/** @param so what follows for the statement, as a clause: `this waives nothing`. */
export function reportNotOnBus(
  reference: LandingReference,
  bus: string,
  landings: readonly Landing[],
  so: string,
  notes: Notes,
): void {
  const port = reference.port?.text;
  const written = port === undefined ? (reference.node?.text ?? '') : `${reference.node?.text}.${port}`;
  const place = notes.place(reference);
  const likely = nearest(written, mentions(landings, port !== undefined));
  notes.report('not-on-bus', `${written} is not landed on bus ${bus}, so ${so}${didYouMean(likely)}`, place, {
    bus,
    at: written,
    fixes: () => writeFixes(place, likely),
  });
}

/** How landings may be mentioned: by the names of their nodes and splices, or with their ports. */
function mentions(landings: readonly Landing[], withPort: boolean): Set<string> {
  return new Set(
    landings.map(({ node, splice, port, name }) =>
      withPort ? (node && port ? `${node.name}.${port.name}` : name) : (splice ?? node?.name ?? name),
    ),
  );
}
