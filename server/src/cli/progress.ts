/** Says on a terminal how far long work has come. Work that is done at once draws nothing. */
import type { Terminal } from './terminal.js';

const firstAfterMs = 400;
const nextAfterMs = 100;
const eraseLine = '\r\x1b[K';

export class Progress {
  readonly #terminal: Terminal;
  readonly #now: () => number;
  #nextAt: number;
  #drawn = false;

  constructor(terminal: Terminal, now: () => number = () => performance.now()) {
    this.#terminal = terminal;
    this.#now = now;
    this.#nextAt = terminal.drawsProgress ? now() + firstAfterMs : Number.POSITIVE_INFINITY;
  }

  /** Draws over what was drawn before, unless it is too soon to be read. */
  show(text: () => string): void {
    if (!this.#terminal.drawsProgress) return;
    const now = this.#now();
    if (now < this.#nextAt) return;
    this.#nextAt = now + nextAfterMs;
    this.#drawn = true;
    this.#terminal.error(`${eraseLine}${text()}`);
  }

  /** Takes the line away, so that what follows starts on a clean one. */
  end(): void {
    if (this.#drawn) this.#terminal.error(eraseLine);
    this.#drawn = false;
  }
}
