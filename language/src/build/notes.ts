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
  readonly #namesWanted: boolean;

  /** @param namesWanted whether the uses of names are kept; checks alone do not need them. */
  constructor(source: SourceText, namesWanted: boolean) {
    this.source = source;
    this.#namesWanted = namesWanted;
  }

  place({ start, end }: Spot): Place {
    return { file: this.source.file, start, end };
  }

  textAt({ start, end }: Spot): string {
    return this.source.text.slice(start, end);
  }

  report(
    rule: string,
    message: string,
    place: Place,
    more: Partial<Omit<TextReport, 'rule' | 'message' | 'place'>> = {},
  ): void {
    this.reports.push({ rule, message, place, ...more });
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

/** The `///` lines right above a declaration, without their marks; undefined when there are none. */
export function documentationAbove(text: string, start: number): string | undefined {
  let lineStart = text.lastIndexOf('\n', start - 1) + 1;
  if (text.slice(lineStart, start).trim() !== '') return undefined;
  const lines: string[] = [];
  while (lineStart > 0) {
    const previous = text.lastIndexOf('\n', lineStart - 2) + 1;
    const line = text.slice(previous, lineStart).trim();
    if (!line.startsWith('///')) break;
    lines.unshift(line.slice(3).replace(/^ /, ''));
    lineStart = previous;
  }
  return lines.length ? lines.join('\n') : undefined;
}
