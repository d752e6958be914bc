/** Where the keyboard is: one part at a time can be reached with Tab, and keys lead from it to others. */
import type { PagePart } from '../messages.js';
import type { Stage } from './stage.js';

export class Walk {
  readonly #stage: Stage;
  readonly #changed: () => void;
  #key: string | undefined;

  constructor(stage: Stage, changed: () => void) {
    this.#stage = stage;
    this.#changed = changed;
    stage.element.addEventListener('focusin', ({ target }) => this.select(stage.keyOf(target)));
  }

  get key(): string | undefined {
    return this.#key;
  }

  get part(): PagePart | undefined {
    return this.#stage.partOf(this.#key);
  }

  /** After the drawing has changed: whoever stood on a part that is gone stands on the first one. */
  renew(): void {
    const key = this.part ? this.#key : this.#stage.parts[0]?.key;
    const elsewhere = this.#stage.elementOf(key);
    for (const part of this.#stage.parts) {
      const group = this.#stage.elementOf(part.key);
      if (group !== elsewhere && group?.getAttribute('tabindex') === '0') group.setAttribute('tabindex', '-1');
    }
    this.#key = undefined;
    this.select(key);
  }

  /** Makes a part the one that Tab reaches. */
  select(key: string | undefined): void {
    if (key === undefined || key === this.#key) return;
    this.#stage.elementOf(this.#key)?.setAttribute('tabindex', '-1');
    this.#stage.elementOf(key)?.setAttribute('tabindex', '0');
    this.#key = key;
    this.#changed();
  }

  /** Goes to a part, or back to where the keyboard was. */
  focus(key: string | undefined = this.#key): void {
    const group = this.#stage.elementOf(key);
    if (!group) return;
    group.focus({ preventScroll: true });
    this.#stage.reveal(key);
  }

  /**
   * To the next or the one before of some parts, in walking order, from wherever the keyboard is; round at the end.
   * Way 0 stays where it is when that is one of them.
   */
  step(parts: readonly PagePart[], way: 1 | 0 | -1): string | undefined {
    if (parts.length === 0) return undefined;
    if (way === 0 && parts.some(({ key }) => key === this.#key)) return this.#key;
    const places = new Map(this.#stage.parts.map(({ key }, index) => [key, index]));
    const now = places.get(this.#key ?? '') ?? -1;
    const placeOf = ({ key }: PagePart) => places.get(key) ?? -1;
    const next =
      way !== -1
        ? (parts.find((part) => now < placeOf(part)) ?? parts[0])
        : (parts.findLast((part) => placeOf(part) < now) ?? parts.at(-1));
    this.#reveal(next?.key);
    return next?.key;
  }

  /** Without taking the keyboard from where it is typed. */
  #reveal(key: string | undefined): void {
    const isTyping = document.activeElement instanceof HTMLInputElement;
    this.select(key);
    if (isTyping) this.#stage.reveal(key);
    else this.focus(key);
  }

  /** The landings of the bus that the keyboard is on, in walking order. */
  landings(group = this.part?.group): PagePart[] {
    return this.#stage.parts.filter((part) => part.kind === 'landing' && part.group === group);
  }
}
