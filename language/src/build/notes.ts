/** Collects what building finds out beside the network: reports about the text, and the uses of names. */
import type { Place } from '@fieldpair/shared';
import type { Name } from '../generated/reader.js';
import type { NameKind, NameUse, SourceText, TextReport } from './source.js';

/** Anything of the tree: it has offsets. */
export interface Spot {
  readonly start: number;
  readonly end: number;
}

export class Notes {
  readonly reports: TextReport[] = [];
  readonly uses: NameUse[] = [];
  readonly source: SourceText;
  readonly #file: string;
  readonly #namesWanted: boolean;
  /** Whether the text has any documentation; most stores have none. */
  readonly #documented: boolean;

  /** @param namesWanted whether the uses of names are kept; checks alone do not need them. */
  constructor(source: SourceText, namesWanted: boolean) {
    this.source = source;
    this.#file = source.file;
    this.#namesWanted = namesWanted;
    this.#documented = source.text.includes('///');
  }

  place({ start, end }: Spot): Place {
    return this.between(start, end);
  }

  /** For the places of which there are thousands: reading offsets where it is known of what they are is faster. */
  between(start: number, end: number): Place {
    return { file: this.#file, start, end };
  }

  textAt({ start, end }: Spot): string {
    return this.source.text.slice(start, end);
  }

  /** The `///` lines right above a declaration, without their marks; undefined when there are none. */
  documentationAbove({ start }: Spot): string | undefined {
    const { text } = this.source;
    if (!this.#documented) return undefined;
    let lineStart = start;
    while (isBlank(text.charCodeAt(lineStart - 1))) lineStart--;
    if (0 < lineStart && text.charCodeAt(lineStart - 1) !== lineFeed) return undefined;
    let lines: string[] | undefined;
    while (lineStart > 0) {
      let previous = lineStart - 1;
      while (0 < previous && text.charCodeAt(previous - 1) !== lineFeed) previous--;
      let mark = previous;
      while (isBlank(text.charCodeAt(mark))) mark++;
      if (!text.startsWith('///', mark)) break;
      lines ??= [];
      lines.unshift(
        text
          .slice(mark + 3, lineStart)
          .trimEnd()
          .replace(/^ /, ''),
      );
      lineStart = previous;
    }
    return lines?.join('\n');
  }

  report(
    rule: string,
    message: string,
    place: Place,
    more: Partial<Omit<TextReport, 'rule' | 'message' | 'place'>> = {},
  ): void {
    if (rule !== 'syntax' && this.#isEcho(place)) return;
    this.reports.push({ rule, message, place, ...more });
  }

  /** Whether a place lies where the text has a mistake already, from which anything may follow. */
  #isEcho({ start }: Spot): boolean {
    return this.source.problems.some(({ echoes }) => echoes && echoes.start <= start && start <= echoes.end);
  }

  /** Whether some of a stretch could not be read. */
  isDamaged({ start, end }: Spot): boolean {
    return this.source.problems.some((problem) => problem.echoes && start <= problem.end && problem.start <= end);
  }

  declare(kind: NameKind, name: Name | undefined): void {
    if (this.#namesWanted && name?.text !== undefined) {
      const place = this.place(name);
      this.uses.push({ kind, name: name.text, place, target: place });
    }
  }

  use(kind: NameKind, name: Spot & { readonly text?: string | undefined }, target: Place): void {
    if (this.#namesWanted) this.uses.push({ kind, name: name.text ?? '', place: this.place(name), target });
  }
}

const lineFeed = 10;
const isBlank = (code: number) => code === 32 || code === 9;
