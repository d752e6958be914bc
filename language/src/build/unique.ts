/** Declarations by name, with a report where a name is declared twice. */
import type { Fix, Place } from '@fieldpair/shared';
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
    const first = this.#first.get(name.text);
    if (first) {
      reportDuplicate(this.#what, name, first, notes);
      return false;
    }
    this.#first.set(name.text, notes.place(name));
    return true;
  }
}

/** Reports a second declaration of a name that was declared at `first`. */
export function reportDuplicate(
  what: string,
  name: Name,
  first: Place,
  notes: Notes,
  fixes: () => readonly Fix[] = () => [],
): void {
  const text = name.text ?? '';
  notes.report(
    'duplicate-name',
    `${what} ${text} is declared twice; rename one of the two or remove it`,
    notes.place(name),
    {
      related: [{ message: `${text} is declared here first`, place: first }],
      at: text,
      fixes,
    },
  );
}
