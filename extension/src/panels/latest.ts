/** Does one thing over and over, never twice at a time: whoever asks while it is being done gets it done once more. */
export class Latest {
  readonly #work: () => Promise<void>;
  #busy = false;
  #again = false;
  #disposed = false;

  /** @param work does not reject */
  constructor(work: () => Promise<void>) {
    this.#work = work;
  }

  ask(): void {
    if (this.#busy) {
      this.#again = true;
      return;
    }
    void this.#run();
  }

  /** What is being done ends; nothing begins any more. */
  dispose(): void {
    this.#disposed = true;
  }

  async #run(): Promise<void> {
    this.#busy = true;
    do {
      this.#again = false;
      if (this.#disposed) return;
      await this.#work();
    } while (this.#again);
    this.#busy = false;
  }
}
