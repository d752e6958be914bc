/**
 * Answers of an earlier check, given again while every file that they were computed from holds the same text.
 *
 * They are kept in `.fieldpair/check.json` in the working folder. Answers of another fieldpair, or about other rules, do
 * not count.
 */
import { createHash } from 'node:crypto';
import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { PartCheck } from '@fieldpair/language';
import { makeFolder } from '../../files/make-folder.js';
import { fileProblem } from '../../files/node-files.js';
import type { FileGroup, GroupCheck } from './check-groups.js';
import { type PlainPart, partOfPlain, plainPart } from './plain-part.js';

interface Kept {
  /** Each file that the answer was computed from and the fingerprint of its text; null where it could not be read. */
  readonly read: readonly (readonly [file: string, print: string | null])[];
  readonly part: PlainPart;
}

interface Book {
  /** What else the answers depend on. */
  readonly of: string;
  /** By the files of a group, a line each. */
  readonly groups: Readonly<Record<string, Kept>>;
}

export class CheckCache {
  readonly #folder: string;
  readonly #of: string;
  readonly #known: Book['groups'];
  readonly #kept: Record<string, Kept> = {};
  readonly #prints = new Map<string, string | null>();

  /** @param of what the answers depend on beside the files. */
  constructor(workingFolder: string, of: string) {
    this.#folder = join(workingFolder, '.fieldpair');
    this.#of = of;
    this.#known = this.#read();
  }

  /** The answer for a group of files, where one was kept and still holds. */
  find(group: FileGroup): PartCheck | undefined {
    const key = group.join('\n');
    const known = Object.hasOwn(this.#known, key) ? this.#known[key] : undefined;
    if (!known?.read.every(([file, print]) => this.#printOf(file) === print)) return undefined;
    this.#kept[key] = known;
    return partOfPlain(known.part);
  }

  keep(group: FileGroup, { part, read }: GroupCheck): void {
    this.#kept[group.join('\n')] = {
      read: read.map((file) => [file, this.#printOf(file)] as const),
      part: plainPart(part),
    };
  }

  /** Writes down the answers that hold. @returns as a clause, why they could not be written */
  save(): string | undefined {
    const book: Book = { of: this.#of, groups: this.#kept };
    try {
      makeFolder(this.#folder);
      // Nobody wants it in a commit.
      writeFileSync(join(this.#folder, '.gitignore'), '*\n');
      // Who reads it meanwhile reads the whole of the old one.
      const draft = join(this.#folder, `check-${process.pid}.json`);
      writeFileSync(draft, JSON.stringify(book));
      renameSync(draft, join(this.#folder, 'check.json'));
      return undefined;
    } catch (error) {
      return fileProblem(error);
    }
  }

  /** What was kept, if it can be read and is an answer to the same question. */
  #read(): Book['groups'] {
    try {
      const book = JSON.parse(readFileSync(join(this.#folder, 'check.json'), 'utf8')) as Partial<Book> | null;
      return (book?.of === this.#of && book.groups) || {};
    } catch {
      return {};
    }
  }

  #printOf(file: string): string | null {
    let print = this.#prints.get(file);
    if (print === undefined) {
      print = fingerprint(file);
      this.#prints.set(file, print);
    }
    return print;
  }
}

/** Tells texts apart; null where a file cannot be read. */
export function fingerprint(file: string | URL): string | null {
  try {
    return createHash('sha256').update(readFileSync(file)).digest('base64');
  } catch {
    return null;
  }
}
