/** One font, with what was found out about it kept for the next packets, whose words are much the same. */
import type { Font, GlyphRun } from 'fontkit';

const mostWords = 20_000;

export class Face {
  /** Unlike that of another font of the same document. */
  readonly name: string;
  readonly font: Font;
  readonly ascent: number;
  readonly #characters: ReadonlySet<number>;
  readonly #runs = new Map<string, GlyphRun>();
  readonly #widths = new Map<string, number>();

  constructor(name: string, font: Font) {
    this.name = name;
    this.font = font;
    this.ascent = font.ascent / font.unitsPerEm;
    this.#characters = new Set(font.characterSet);
    this.#shapeOnce();
  }

  has(character: string): boolean {
    return this.#characters.has(character.codePointAt(0) ?? 0);
  }

  /** The width of a text at one point. @param measure finds it out */
  width(text: string, measure: () => number): number {
    let width = this.#widths.get(text);
    if (width === undefined) {
      width = measure();
      if (mostWords <= this.#widths.size) this.#widths.clear();
      this.#widths.set(text, width);
    }
    return width;
  }

  /** Who sets a word scales its positions in place, and so gets ones of its own. */
  #shapeOnce(): void {
    const layout = this.font.layout.bind(this.font);
    this.font.layout = (text, ...how) => {
      if (how.some(Boolean)) return layout(text, ...how);
      let run = this.#runs.get(text);
      if (!run) {
        run = layout(text);
        if (mostWords <= this.#runs.size) this.#runs.clear();
        this.#runs.set(text, run);
      }
      const positions = run.positions.map((position) => ({ ...position }));
      return Object.create(run, { positions: { value: positions } }) as GlyphRun;
    };
  }
}
