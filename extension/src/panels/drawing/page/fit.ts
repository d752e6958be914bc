/**
 * Seeing all of the drawing at once. A narrow page makes a drawing of many short rows, which would be a thin strip when
 * all of it is shown; so it is laid out anew, as wide for its height as the page is.
 */
import type { Stage } from './stage.js';

/** Rows longer than this are hard to follow from end to end. */
const widest = 6000;

export class Fit {
  readonly #stage: Stage;
  /** The width that the drawing is laid out for while all of it is to be seen. */
  #width: number | undefined;
  /** Whether the zoom follows the drawing's size; not any more once somebody has zoomed. */
  #follows = false;

  constructor(stage: Stage) {
    this.#stage = stage;
  }

  get isOn(): boolean {
    return this.#width !== undefined;
  }

  /** What to lay the drawing out for. */
  get width(): number {
    return this.#width ?? this.#stage.element.clientWidth;
  }

  /** All of it, or its full size again. */
  toggle(): void {
    if (this.isOn && this.#follows) {
      this.#width = undefined;
      this.#follows = false;
      this.#stage.zoomTo(1);
    } else {
      this.#follows = true;
      this.renew();
    }
  }

  /** After the page has another size: the same area of drawing, in the page's proportions. */
  renew(): void {
    if (!this.#follows) return;
    const { clientWidth, clientHeight } = this.#stage.element;
    const { width, height } = this.#stage.size;
    const wanted = Math.sqrt((width * height * clientWidth) / Math.max(1, clientHeight));
    this.#width = Math.min(widest, Math.max(clientWidth, Math.floor(wanted)));
    this.apply();
  }

  /** The zoom at which all of what is drawn now is seen. */
  apply(): void {
    if (!this.#follows) return;
    const { clientWidth, clientHeight } = this.#stage.element;
    const { width, height } = this.#stage.size;
    // A pixel less, so that no scroll bar comes and takes room away.
    this.#stage.zoomTo(Math.min(1, (clientWidth - 1) / Math.max(1, width), (clientHeight - 1) / Math.max(1, height)));
  }

  /** Somebody zooms: the layout stays as it is until the page is fitted again. */
  leave(): void {
    this.#follows = false;
  }
}
