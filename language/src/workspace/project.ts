/**
 * All texts that belong together: reads them, follows imports, puts stores together and answers what is wrong.
 *
 * Every answer is cached with the texts that it was computed from, and is given again only while all of them are the
 * same objects; a changed text is a new object, so nothing stale can come back.
 */
import { type CheckSettings, checkStore, checkText, compareFindings, type Finding, ruleIds, type Store } from '@fieldpair/shared';
import type { StoreDeclaration } from '../generated/reader.js';
import { Notes } from '../build/notes.js';
import { buildCatalogue, CatalogueScope, type FileCatalogue } from '../build/scope.js';
import type { NameUse, SourceText, TextReport } from '../build/source.js';
import { type BuiltStore, buildStore, type StorePart } from '../build/store.js';
import { UniqueNames } from '../build/unique.js';
import { readSheet } from '../read/read-sheet.js';
import { type Import, readImports } from './imports.js';

/** Where texts come from. Files are named by any text that is the same for the same file: a path, a URI. */
export interface FileHost {
  /** The file that an import written in `from` means. */
  resolve(from: string, path: string): string;
  /** Its text, or why there is none, as a clause: 'it does not exist'. */
  read(file: string): { readonly text: string } | { readonly problem: string; readonly missing?: boolean };
}

interface Entry {
  readonly source: SourceText;
  readonly catalogue: FileCatalogue;
  readonly imports: readonly Import[];
}

interface Unit {
  readonly from: readonly SourceText[];
  readonly built: BuiltStore | undefined;
  readonly scopes: readonly CatalogueScope[];
  findings?: readonly Finding[];
}

/** What a check of everything found. */
export interface ProjectCheck {
  readonly files: number;
  readonly stores: number;
  readonly buses: number;
  readonly findings: readonly Finding[];
}

export class Project {
  readonly #host: FileHost;
  #settings: CheckSettings;
  readonly #entries = new Map<string, Entry>();
  /** Files that could not be read, with the reason; asked for again after any change. */
  readonly #absent = new Map<string, { problem: string; missing: boolean }>();
  readonly #members = new Set<string>();
  /** Files that continue a store of another file; follows #entries. */
  readonly #continuing = new Set<string>();
  readonly #units = new Map<string, Unit>();

  constructor(host: FileHost, settings: CheckSettings = {}) {
    this.#host = host;
    this.#settings = settings;
  }

  /** Other settings; all findings are computed anew. */
  configure(settings: CheckSettings): void {
    this.#settings = settings;
    for (const unit of this.#units.values()) delete unit.findings;
  }

  /** Takes a file in, or its new text; without a text it is read. Its imports are read along. */
  add(file: string, text?: string): void {
    this.#members.add(file);
    this.#absent.delete(file);
    this.#take(file, text);
  }

  /** Forgets a file; who imports it will look for it again. */
  remove(file: string): void {
    this.#members.delete(file);
    this.#entries.delete(file);
    this.#absent.delete(file);
    this.#continuing.delete(file);
  }

  files(): string[] {
    return [...this.#members];
  }

  textOf(file: string): string | undefined {
    return this.#entries.get(file)?.source.text;
  }

  sourceOf(file: string): SourceText | undefined {
    return this.#entries.get(file)?.source;
  }

  catalogueOf(file: string): readonly FileCatalogue[] {
    return this.#closure(file).files.flatMap((one) => this.#entries.get(one)?.catalogue ?? []);
  }

  importsOf(file: string): readonly Import[] {
    return this.#entries.get(file)?.imports ?? [];
  }

  /** The stores that have a part in this file. */
  storesOf(file: string): Store[] {
    return this.#keysOf(file).flatMap((key) => this.#unit(key)?.built?.store ?? []);
  }

  /** Every mention of a name in this file. */
  usesOf(file: string): NameUse[] {
    const entry = this.#entries.get(file);
    if (!entry) return [];
    const uses = [...buildCatalogue(entry.source, true).uses];
    for (const key of this.#keysOf(file)) {
      const built = buildStore(this.#partsOf(key), ruleIds, true);
      for (const use of built?.uses ?? []) if (use.place.file === file) uses.push(use);
    }
    return uses;
  }

  /** Files whose answers may change when this one does, itself left out. */
  dependents(file: string): string[] {
    const found = new Set<string>();
    for (const other of this.#entries.keys()) {
      if (other === file) continue;
      const closure = this.#closure(other);
      if (closure.files.includes(file)) found.add(other);
    }
    for (const key of this.#keysOf(file)) for (const part of this.#partsOf(key)) found.add(part.source.file);
    found.delete(file);
    return [...found];
  }

  /** What is wrong in one file. */
  findingsOf(file: string): Finding[] {
    const findings = [...this.#textFindings(file)];
    for (const key of this.#keysOf(file)) {
      for (const finding of this.#storeFindings(key)) if (finding.place.file === file) findings.push(finding);
    }
    return findings.sort(compareFindings);
  }

  /** What is wrong anywhere in the files that were added, imports that were only followed left out. */
  check(): ProjectCheck {
    const findings: Finding[] = [];
    let stores = 0;
    let buses = 0;
    const used = new Set<unknown>();
    const members = [...this.#members].sort();
    for (const file of members) findings.push(...this.#textFindings(file));
    for (const key of new Set(members.flatMap((file) => this.#keysOf(file)))) {
      const unit = this.#unit(key);
      if (!unit?.built) continue;
      stores++;
      buses += unit.built.store.buses.length;
      for (const scope of unit.scopes) for (const entry of scope.used.values()) used.add(entry);
      for (const finding of this.#storeFindings(key)) if (this.#members.has(finding.place.file)) findings.push(finding);
    }
    findings.push(...checkText(this.#unusedEntries(members, used), this.#settings));
    return { files: members.length, stores, buses, findings: findings.sort(compareFindings) };
  }

  #take(file: string, text: string | undefined): void {
    const pending: { file: string; text: string | undefined }[] = [{ file, text }];
    for (let next = pending.pop(); next; next = pending.pop()) {
      const given = next.text === undefined ? this.#host.read(next.file) : { text: next.text };
      if ('problem' in given) {
        this.#entries.delete(next.file);
        this.#continuing.delete(next.file);
        this.#absent.set(next.file, { problem: given.problem, missing: given.missing ?? false });
        continue;
      }
      const known = this.#entries.get(next.file);
      if (known?.source.text === given.text) continue;
      const source: SourceText = { file: next.file, text: given.text, ...readSheet(given.text) };
      const imports = readImports(source, this.#host);
      const entry: Entry = { source, catalogue: buildCatalogue(source), imports };
      this.#entries.set(next.file, entry);
      if (storesIn(entry).some(({ continued }) => continued)) this.#continuing.add(next.file);
      else this.#continuing.delete(next.file);
      for (const { target } of imports) {
        if (target !== undefined && !this.#entries.has(target)) pending.push({ file: target, text: undefined });
      }
    }
  }

  /** A file and all that it imports, nearest first. */
  #closure(file: string): { files: string[]; incomplete: boolean } {
    const files: string[] = [];
    const seen = new Set<string>();
    let incomplete = false;
    let level = [file];
    while (level.length) {
      const next: string[] = [];
      for (const one of level) {
        if (seen.has(one)) continue;
        seen.add(one);
        const entry = this.#entries.get(one);
        if (!entry) {
          incomplete = true;
          continue;
        }
        files.push(one);
        for (const { target } of entry.imports) {
          if (target === undefined) incomplete = true;
          else next.push(target);
        }
      }
      level = next;
    }
    return { files, incomplete };
  }

  #scope(file: string): CatalogueScope {
    const { files, incomplete } = this.#closure(file);
    return new CatalogueScope(files.flatMap((one) => this.#entries.get(one)?.catalogue ?? []), incomplete);
  }

  /** The stores with a part in a file, as keys of units: the file and the name of the part that is not continued. */
  #keysOf(file: string): string[] {
    const keys = new Set<string>();
    for (const declaration of storesIn(this.#entries.get(file))) {
      const name = declaration.name?.text;
      if (name === undefined) continue;
      const home = declaration.continued ? this.#homeOf(file, name) : file;
      if (home !== undefined) keys.add(keyOf(home, name));
    }
    return [...keys];
  }

  /** Where the main part of a continued store is: in the file itself or in what it imports. */
  #homeOf(file: string, name: string): string | undefined {
    return this.#closure(file).files.find((one) =>
      storesIn(this.#entries.get(one)).some((store) => store.name?.text === name && !store.continued),
    );
  }

  #partsOf(key: string): StorePart[] {
    const [home = '', name = ''] = splitKey(key);
    const parts: StorePart[] = [];
    const gather = (file: string, wanted: (store: StoreDeclaration) => boolean) => {
      const entry = this.#entries.get(file);
      for (const declaration of storesIn(entry)) {
        if (entry && declaration.name?.text === name && wanted(declaration)) {
          parts.push({ source: entry.source, declaration, scope: this.#scope(file) });
        }
      }
    };
    gather(home, (store) => !store.continued);
    parts.splice(1); // A second store of the same name has its own finding.
    for (const file of [...this.#continuing].sort()) {
      if (this.#homeOf(file, name) === home) gather(file, (store) => store.continued);
    }
    return parts;
  }

  #unit(key: string): Unit | undefined {
    const parts = this.#partsOf(key);
    if (!parts.length) return undefined;
    const from = [...new Set(parts.flatMap(({ source }) => this.#closure(source.file).files))].flatMap(
      (file) => this.#entries.get(file)?.source ?? [],
    );
    const known = this.#units.get(key);
    if (known && known.from.length === from.length && known.from.every((source, index) => source === from[index])) return known;
    const unit: Unit = { from, built: buildStore(parts, ruleIds), scopes: parts.map(({ scope }) => scope) };
    this.#units.set(key, unit);
    return unit;
  }

  #storeFindings(key: string): readonly Finding[] {
    const unit = this.#unit(key);
    if (!unit?.built) return [];
    unit.findings ??= checkStore(unit.built.store, unit.built.reports, this.#settings);
    return unit.findings;
  }

  #textFindings(file: string): Finding[] {
    const entry = this.#entries.get(file);
    if (!entry) return [];
    const { source } = entry;
    const notes = new Notes(source, false);
    for (const { message, start, end } of source.problems) notes.report('syntax', message, notes.place({ start, end }));
    this.#reportImports(entry, notes);
    const unique = new UniqueNames('store', notes);
    for (const declaration of storesIn(entry)) {
      if (!declaration.continued) unique.add(declaration.name);
      else if (declaration.name?.text !== undefined && this.#homeOf(file, declaration.name.text) === undefined) {
        const message = `there is no store ${declaration.name.text} to continue; import the file that declares it, or leave out continued`;
        notes.report('unknown-name', message, notes.place(declaration.name));
      }
    }
    return checkText([...notes.reports, ...entry.catalogue.reports], this.#settings);
  }

  #reportImports(entry: Entry, notes: Notes): void {
    for (const { path, place, target } of entry.imports) {
      if (target === undefined) {
        notes.report('import-missing', 'this import names no file; write its path in quotes', place);
        continue;
      }
      const absent = this.#absent.get(target);
      if (absent) {
        const rule = absent.missing ? 'import-missing' : 'import-unreadable';
        notes.report(rule, `${path} cannot be read: ${absent.problem}; correct the path`, place);
      } else if (target === entry.source.file) {
        notes.report('import-cycle', 'this file imports itself; remove the import', place);
      } else if (this.#closure(target).files.includes(entry.source.file)) {
        notes.report('import-cycle', `${path} imports this file in turn; move what both need into a third file`, place);
      }
    }
  }

  #unusedEntries(members: readonly string[], used: ReadonlySet<unknown>): TextReport[] {
    const reports: TextReport[] = [];
    for (const file of members) {
      const catalogue = this.#entries.get(file)?.catalogue;
      for (const [what, entries] of [['cable', catalogue?.cables], ['device', catalogue?.devices]] as const) {
        for (const entry of entries?.values() ?? []) {
          if (used.has(entry)) continue;
          const message = `no store that was checked uses ${what} ${entry.name}; keep it for others, or remove it`;
          reports.push({ rule: 'unused-entry', message, place: entry.place, at: entry.name, unnecessary: true });
        }
      }
    }
    return reports;
  }
}

const storesIn = (entry: Entry | undefined): StoreDeclaration[] =>
  (entry?.source.sheet.declarations ?? []).filter((one): one is StoreDeclaration => one.type === 'StoreDeclaration');

const keyOf = (file: string, name: string) => `${file}\n${name}`;
const splitKey = (key: string) => key.split('\n');
