/**
 * The texts of a project: reads them, follows imports, and lets go of trees that nobody looks at.
 *
 * A file that was released keeps what other files need to know of it (its catalogue, its imports, the names of its
 * stores) and its version; its text and tree are read again when somebody asks. A version changes only with the
 * text, so that an answer may be kept as long as the versions that it was computed from are the same.
 */
import { buildCatalogue, type FileCatalogue } from '../build/scope.js';
import type { SourceText } from '../build/source.js';
import type { StoreDeclaration } from '../generated/reader.js';
import { readSheet } from '../read/read-sheet.js';
import { type Import, readImports } from './imports.js';
import type { FileHost } from './project.js';

/** What is kept of a file. */
export interface Entry {
  readonly file: string;
  readonly version: number;
  readonly catalogue: FileCatalogue;
  readonly imports: readonly Import[];
  readonly stores: readonly { readonly name: string; readonly continued: boolean }[];
  /** Its text is the editor's, not the disk's, and cannot be read again. */
  readonly held: boolean;
  source: SourceText | undefined;
}

interface Closure {
  readonly files: readonly string[];
  readonly incomplete: boolean;
}

export interface Absence {
  readonly problem: string;
  readonly missing: boolean;
}

export class Library {
  readonly #host: FileHost;
  readonly #entries = new Map<string, Entry>();
  readonly #absent = new Map<string, Absence>();
  /** Files that continue a store of another file; follows #entries. */
  readonly #continuing = new Set<string>();
  /** Per file that is imported: who imports it; follows #entries. */
  readonly #importers = new Map<string, Set<string>>();
  /** Answers of {@link closure}, as of #generation. */
  readonly #closures = new Map<string, Closure>();
  #versions = 0;
  #generation = 0;

  constructor(host: FileHost) {
    this.#host = host;
  }

  /** Reads a file, or takes the text that an editor holds, and reads what it imports. */
  take(file: string, text?: string): void {
    const pending: { file: string; text: string | undefined }[] = [{ file, text }];
    for (let next = pending.pop(); next; next = pending.pop()) {
      const given = next.text === undefined ? this.#host.read(next.file) : { text: next.text };
      if ('problem' in given) {
        this.drop(next.file);
        this.#absent.set(next.file, { problem: given.problem, missing: given.missing ?? false });
        continue;
      }
      this.#absent.delete(next.file);
      const known = this.#entries.get(next.file);
      const held = next.text !== undefined;
      if (known?.held === held && known.source?.text === given.text) continue;
      const entry = this.#entryOf(next.file, given.text, held);
      for (const { target } of entry.imports) {
        if (target !== undefined && !this.#entries.has(target)) pending.push({ file: target, text: undefined });
      }
    }
  }

  /** Another number after every change that others can notice: as long as it is the same, so are all answers. */
  get generation(): number {
    return this.#generation;
  }

  drop(file: string): void {
    this.#absent.delete(file);
    const entry = this.#entries.get(file);
    if (!entry) return;
    this.#changed();
    for (const { target } of entry.imports) if (target !== undefined) this.#importers.get(target)?.delete(file);
    this.#entries.delete(file);
    this.#continuing.delete(file);
  }

  entry(file: string): Entry | undefined {
    return this.#entries.get(file);
  }

  absence(file: string): Absence | undefined {
    return this.#absent.get(file);
  }

  /** Whether any store is continued anywhere. */
  get anyContinuing(): boolean {
    return 0 < this.#continuing.size;
  }

  continuing(): string[] {
    return [...this.#continuing].sort();
  }

  /** The text and tree of a file, read again where they were released. */
  source(file: string): SourceText | undefined {
    const entry = this.#entries.get(file);
    if (!entry || entry.source) return entry?.source;
    const given = this.#host.read(file);
    if ('problem' in given) return undefined;
    entry.source = { file, text: given.text, ...readSheet(given.text) };
    return entry.source;
  }

  storesIn(file: string): StoreDeclaration[] {
    if (!this.#entries.get(file)?.stores.length) return [];
    return (this.source(file)?.sheet.declarations ?? []).filter(
      (one): one is StoreDeclaration => one.type === 'StoreDeclaration',
    );
  }

  /** Lets go of a file's text and tree, unless they could not be read again. */
  release(file: string): void {
    const entry = this.#entries.get(file);
    if (entry && !entry.held) entry.source = undefined;
  }

  /** A file and all that it imports, nearest first; incomplete where an import is missing. */
  closure(file: string): Closure {
    let closure = this.#closures.get(file);
    if (!closure) {
      closure = this.#closureOf(file);
      this.#closures.set(file, closure);
    }
    return closure;
  }

  #closureOf(file: string): Closure {
    const files: string[] = [];
    let incomplete = false;
    const seen = new Set([file]);
    // A set gives what is added to it while it is walked.
    for (const one of seen) {
      const entry = this.#entries.get(one);
      if (!entry) {
        incomplete = true;
        continue;
      }
      files.push(one);
      for (const { target } of entry.imports) {
        if (target === undefined) incomplete = true;
        else seen.add(target);
      }
    }
    return { files, incomplete };
  }

  /** All files that import this one, directly or through others. */
  importersOf(file: string): string[] {
    const seen = new Set([file]);
    for (const one of seen) for (const importer of this.#importers.get(one) ?? []) seen.add(importer);
    seen.delete(file);
    return [...seen];
  }

  #changed(): void {
    this.#generation++;
    this.#closures.clear();
  }

  #entryOf(file: string, text: string, held: boolean): Entry {
    const source: SourceText = { file, text, ...readSheet(text) };
    const imports = readImports(source, this.#host);
    const stores = source.sheet.declarations.flatMap((one) =>
      one.type === 'StoreDeclaration' && one.name?.text !== undefined
        ? { name: one.name.text, continued: one.continued }
        : [],
    );
    this.drop(file);
    const entry: Entry = {
      file,
      version: ++this.#versions,
      catalogue: buildCatalogue(source),
      imports,
      stores,
      held,
      source,
    };
    this.#entries.set(file, entry);
    this.#closures.delete(file);
    const continues = stores.some(({ continued }) => continued);
    if (continues) this.#continuing.add(file);
    // No answer can depend on any other file that was not there before.
    if (continues || this.#importers.has(file)) this.#changed();
    for (const { target } of imports) {
      if (target === undefined) continue;
      const importers = this.#importers.get(target);
      if (importers) importers.add(file);
      else this.#importers.set(target, new Set([file]));
    }
    return entry;
  }
}
