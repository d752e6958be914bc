/** From a place in a text to the part of the drawing that it is about. */
import type { DrawingPart, Position, Range } from '../../../../server/src/protocol.js';

/**
 * The smallest part whose stretches of text hold a position; of a line that only a run holds, the run.
 *
 * @param isFile whether a URI of the server means the text
 */
export function partAt(
  parts: readonly DrawingPart[],
  isFile: (uri: string) => boolean,
  position: Position,
): DrawingPart | undefined {
  let best: DrawingPart | undefined;
  let bestSize = Number.POSITIVE_INFINITY;
  for (const part of parts) {
    for (const { uri, range } of part.covers) {
      if (!holds(range, position) || !isFile(uri)) continue;
      const size = (range.end.line - range.start.line) * 10_000 + range.end.character - range.start.character;
      if (bestSize <= size) continue;
      best = part;
      bestSize = size;
    }
  }
  return best;
}

const holds = ({ start, end }: Range, position: Position): boolean =>
  compare(start, position) <= 0 && compare(position, end) <= 0;

const compare = (one: Position, other: Position): number => one.line - other.line || one.character - other.character;
