/** Declarations by name, with a report where a name is declared twice. */
import type { Place } from '@fieldpair/shared';
import type { Name } from '../generated/reader.js';
import type { Notes } from './notes.js';

export class UniqueNames {
  readonly #first = new Map<string, Place>();
  readonly #what: string;
  readonly #notes: Notes;

  constructor(what: string, notes: Notes) {
    this.#what = what;
    this.#notes = notes;
  }

  /** Whether this is the first declaration of its name; the second one is reported and left out of the network. */
  add(name: Name | undefined, notes = this.#notes): boolean {
    if (name?.text === undefined) return false;
    const place = notes.place(name);
    const first = this.#first.get(name.text);
    if (!first) {
      this.#first.set(name.text, place);
      return true;
    }
    notes.report(
      'duplicate-name',
      `${this.#what} ${name.text} is declared twice; rename one of the two or remove it`,
      place,
      {
        related: [{ message: `${name.text} is declared here first`, place: first }],
        at: name.text,
      },
    );
    return false;
  }
}
