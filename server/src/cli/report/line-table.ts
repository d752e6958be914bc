/** Lines and columns of a text, counted from 1 in UTF-16 units; lines end as the Language Server Protocol says. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

export class LineTable {
  readonly #text: string;
  readonly #starts: number[];

  constructor(text: string) {
    this.#text = text;
    this.#starts = [0];
    for (const end of text.matchAll(/\r\n|\n|\r/g)) {
      this.#starts.push(end.index + end[0].length);
    }
  }

  /** Offsets outside the text count as its nearer end. */
  position(offset: number): Position {
    const within = Math.max(0, Math.min(offset, this.#text.length));
    let low = 0;
    let high = this.#starts.length;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if ((this.#starts[middle] ?? 0) <= within) low = middle;
      else high = middle;
    }
    return { line: low + 1, column: within - (this.#starts[low] ?? 0) + 1 };
  }

  /** A line without its end; empty for a line that does not exist. */
  line(line: number): string {
    const start = this.#starts[line - 1];
    if (start === undefined) return '';
    return this.#text.slice(start, this.#starts[line]).replace(/[\r\n]+$/, '');
  }
}
