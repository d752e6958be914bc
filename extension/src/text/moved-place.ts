/** A place in a text; lines and UTF-16 units from 0. */
export interface Place {
  readonly line: number;
  readonly character: number;
}

/** One replacement of a stretch of text. */
export interface Change {
  readonly range: { readonly start: Place; readonly end: Place };
  readonly text: string;
}

/**
 * Where a place is after changes to the text around it. A place within replaced text goes to its start.
 *
 * @param changes as the editor reports them: each in terms of the text before all of them, the last one first
 */
export function movedBy(place: Place, changes: readonly Change[]): Place {
  let moved = place;
  for (const { range, text } of changes) {
    if (isBefore(moved, range.start)) continue;
    if (isBefore(moved, range.end)) {
      moved = range.start;
      continue;
    }
    const inserted = text.split('\n');
    const line = moved.line - range.end.line + range.start.line + inserted.length - 1;
    if (moved.line > range.end.line) {
      moved = { line, character: moved.character };
      continue;
    }
    const before = inserted.length === 1 ? range.start.character : 0;
    const last = inserted.at(-1)?.length ?? 0;
    moved = { line, character: moved.character - range.end.character + before + last };
  }
  return moved;
}

function isBefore(left: Place, right: Place): boolean {
  return left.line < right.line || (left.line === right.line && left.character < right.character);
}
