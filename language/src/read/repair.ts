/** A stretch of a text that somebody most likely meant otherwise. */
export interface Repair {
  readonly message: string;
  readonly start: number;
  readonly end: number;
  /** What may stand there instead, the likeliest first; an empty text where nothing should. */
  readonly instead: readonly [string, ...string[]];
}

/** The text with the likeliest of each repair made, and the way from its offsets back to those of the text. */
export function repaired(text: string, repairs: readonly Repair[]): { text: string; back: Back } {
  const inOrder = repairs.toSorted((left, right) => left.start - right.start);
  const spots: Spot[] = [];
  let result = '';
  let from = 0;
  for (const { start, end, instead } of inOrder) {
    result += text.slice(from, start);
    spots.push({ start: result.length, end: result.length + instead[0].length, source: { start, end } });
    result += instead[0];
    from = end;
  }
  return { text: result + text.slice(from), back: backThrough(spots) };
}

/** Where in the source an offset is; within a repair its beginning, for what ends there its end. */
export type Back = (offset: number, isEnd: boolean) => number;

interface Spot {
  readonly start: number;
  readonly end: number;
  readonly source: { readonly start: number; readonly end: number };
}

function backThrough(spots: readonly Spot[]): Back {
  return (offset, isEnd) => {
    let [low, high] = [0, spots.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (isEnd ? spots[middle]!.start < offset : spots[middle]!.start <= offset) low = middle + 1;
      else high = middle;
    }
    const before = spots[low - 1];
    if (!before) return offset;
    if (before.end <= offset) return offset - before.end + before.source.end;
    return isEnd ? before.source.end : before.source.start;
  };
}
