/** What was chosen for each bus, kept in the workspace's memory from one session to the next. */
import type { WaveChoices } from '../../../../server/src/protocol.js';

/** The part of VS Code's `Memento` that is needed. */
export interface Memory {
  get(key: string): unknown;
  update(key: string, value: unknown): Thenable<void>;
}

const key = 'fieldpair.waves';
/** Buses beyond these are forgotten, those that were looked at longest ago first. */
const most = 200;

export class RememberedChoices {
  readonly #memory: Memory;

  constructor(memory: Memory) {
    this.#memory = memory;
  }

  /** What was chosen for a bus, without the bus's own name; undefined when nothing was. */
  of(uri: string, store: string, bus: string): WaveChoices | undefined {
    const name = nameOf(uri, store, bus);
    return this.#all().find(([one]) => one === name)?.[1];
  }

  async keep(uri: string, store: string, bus: string, choices: WaveChoices): Promise<void> {
    const name = nameOf(uri, store, bus);
    const others = this.#all().filter(([one]) => one !== name);
    await this.#memory.update(key, [[name, choices], ...others].slice(0, most));
  }

  /** What another version of the extension may have kept counts only as far as it has the shape of ours. */
  #all(): readonly (readonly [string, WaveChoices])[] {
    const kept = this.#memory.get(key);
    if (!Array.isArray(kept)) return [];
    return kept.filter(
      (one): one is [string, WaveChoices] =>
        Array.isArray(one) &&
        typeof one[0] === 'string' &&
        ['pattern', 'step', 'eye'].includes((one[1] as WaveChoices)?.view),
    );
  }
}

const nameOf = (...parts: readonly string[]) => JSON.stringify(parts);
