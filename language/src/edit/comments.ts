/** The comments that belong to a statement: those on the lines above it, and those behind it on its line. */
import type { Place } from '@fieldpair/shared';

export interface Commented {
  /** The statement with its comments. */
  readonly place: Place;
  /** One comment each, as written. */
  readonly above: readonly string[];
  readonly beside?: string;
}

/** Nothing before `from`, where the block of the statement begins, is looked at. */
export function withComments(place: Place, text: string, from: number): Commented {
  const above: string[] = [];
  let { start, end } = place;
  let lineStart = text.lastIndexOf('\n', start - 1) + 1;
  if (from < lineStart && text.slice(lineStart, start).trim() === '') {
    while (from < lineStart) {
      const [line, at] = commentBefore(text, lineStart, from);
      if (at === undefined) break;
      lineStart = at;
      if (line === '') continue;
      above.unshift(line);
      start = at + (/^[ \t]*/.exec(text.slice(at))?.[0].length ?? 0);
    }
  }
  const beside = /^[ \t]*((?:\/\*.*?\*\/[ \t]*)*(?:\/\/.*)?)$/.exec(text.slice(end, endOfLine(text, end)).trimEnd());
  if (!beside?.[1]) return { place: { file: place.file, start, end }, above };
  end += beside[0].length;
  return { place: { file: place.file, start, end }, above, beside: beside[1] };
}

const endOfLine = (text: string, at: number) => {
  const end = text.indexOf('\n', at);
  return end < 0 ? text.length : end;
};

/** The comment that ends on the line before `lineStart`, or an empty line, with where it begins; nothing else counts. */
function commentBefore(text: string, lineStart: number, from: number): [comment: string, at: number | undefined] {
  // From a negative place lastIndexOf would look at the first character.
  const at = lineStart < 2 ? 0 : text.lastIndexOf('\n', lineStart - 2) + 1;
  const line = text.slice(at, lineStart).trim();
  if (at < from) return ['', undefined];
  if (line === '' || line.startsWith('//')) return [line, at];
  if (!line.endsWith('*/')) return ['', undefined];
  const open = text.lastIndexOf('/*', lineStart);
  const openLine = text.lastIndexOf('\n', open - 1) + 1;
  const isAlone = from <= openLine && text.slice(openLine, open).trim() === '' && !text.slice(open, at).includes('*/');
  return isAlone ? [text.slice(open, lineStart).trim(), openLine] : ['', undefined];
}
