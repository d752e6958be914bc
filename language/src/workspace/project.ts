/**
 * All texts that belong together: puts stores together from them and answers what is wrong.
 *
 * Every answer is kept with the versions of the texts that it was computed from and given again only while they are
 * the same. Of files that no editor has open only answers are kept: their trees and networks are let go.
 */
import {
  type CheckSettings,
  checkStore,
  checkText,
  compareFindings,
  type Finding,
  type Place,
  ruleIds,
  type Store,
} from '@fieldpair/shared';
import { Notes } from '../build/notes.js';
import { buildCatalogue, type FileCatalogue } from '../build/scope.js';
import type { NameUse, SourceText } from '../build/source.js';
import { buildStore } from '../build/store.js';
import type { Import } from './imports.js';
import { Library } from './library.js';
import { type DeclaredEntry, type PartCheck, type ProjectCheck, unusedFindings, wholeCheck } from './part-check.js';
import { StoreUnits, sameNumbers } from './store-units.js';
import { textReports } from './text-reports.js';

/** Where texts come from. Files are named by any text that is the same for the same file: a path, a URI. */
export interface FileHost {
  /** The file that an import written in `from` means. */
  resolve(from: string, path: string): string;
  /** Its text, or why there is none, as a clause: 'it does not exist'. */
  read(file: string): { readonly text: string } | { readonly problem: string; readonly missing?: boolean };
}

export class Project {
  readonly #library: Library;
  #settings: CheckSettings;
  readonly #members = new Set<string>();
  /** Members that were added and not read yet. */
  readonly #unread = new Set<string>();
  readonly #units: StoreUnits;
  /** Findings of a file's text outside its stores, with the version and the settings that they are of. */
  readonly #texts = new Map<string, { asOf: number; versions: readonly number[]; findings: readonly Finding[] }>();

  constructor(host: FileHost, settings: CheckSettings = {}) {
    this.#library = new Library(host);
    this.#units = new StoreUnits(this.#library);
    this.#settings = settings;
  }

  /** Other settings; all findings are computed anew. */
  configure(settings: CheckSettings): void {
    this.#settings = settings;
    this.#units.forgetFindings();
    this.#texts.clear();
  }

  /**
   * Has the rules judge the stores of a file anew, because what was told them from outside has changed.
   *
   * @returns the files whose findings may be others now
   */
  reconsider(file: string): string[] {
    const files = new Set<string>();
    for (const key of this.#units.keysOf(file)) {
      this.#units.forgetFindings(key);
      for (const one of this.#units.filesOf(key)) files.add(one);
    }
    return [...files];
  }

  /** Takes a file in. Without a text it is read from the host, not before somebody asks. */
  add(file: string, text?: string): void {
    this.#members.add(file);
    if (text === undefined) this.#unread.add(file);
    else {
      this.#unread.delete(file);
      this.#change(file, () => this.#library.take(file, text));
    }
  }

  /** Forgets a file, as a member; as an import of others it is read again. */
  remove(file: string): void {
    this.#members.delete(file);
    this.#unread.delete(file);
    this.#texts.delete(file);
    this.#change(file, () => {
      this.#library.drop(file);
      // Whoever imports it goes on with what the host has, or has to be told that there is nothing any more.
      if (this.#library.importersOf(file).length) this.#library.take(file);
    });
  }

  /** Why a file could not be read, as a clause; undefined when it could. */
  problemOf(file: string): string | undefined {
    this.#read(file);
    return this.#library.absence(file)?.problem;
  }

  /** Computes what is to be known of one file and lets go of the rest: one step of reading a fleet in the background. */
  digest(file: string): void {
    this.#read(file);
    const keys = this.#units.keysOf(file);
    this.#textFindings(file);
    for (const key of keys) this.#units.unit(key);
    // Nothing of a tree is looked at once its stores are built.
    this.#library.release(file);
    for (const key of keys) this.#storeFindings(key);
    this.#release(file, keys);
  }

  /** Computes what was not asked for yet, of all members: only then is it known who mentions what. */
  digestAll(): void {
    for (const file of [...this.#unread].sort()) this.digest(file);
  }

  files(): string[] {
    return [...this.#members];
  }

  /** Members that add to the catalogue; that their entries are unused shows only once all stores were read. */
  catalogueFiles(): string[] {
    return this.files().filter((file) => {
      const catalogue = this.#library.entry(file)?.catalogue;
      return catalogue !== undefined && 0 < catalogue.cables.size + catalogue.devices.size;
    });
  }

  textOf(file: string): string | undefined {
    return this.sourceOf(file)?.text;
  }

  sourceOf(file: string): SourceText | undefined {
    this.#read(file);
    return this.#library.source(file);
  }

  catalogueOf(file: string): readonly FileCatalogue[] {
    this.#read(file);
    return this.#library.closure(file).files.flatMap((one) => this.#library.entry(one)?.catalogue ?? []);
  }

  importsOf(file: string): readonly Import[] {
    this.#read(file);
    return this.#library.entry(file)?.imports ?? [];
  }

  /** The stores that have a part in this file. */
  storesOf(file: string): Store[] {
    this.#read(file);
    return this.#units.keysOf(file).flatMap((key) => this.#units.builtUnit(key)?.built?.store ?? []);
  }

  /** Every mention of a name in this file. */
  usesOf(file: string): NameUse[] {
    const source = this.sourceOf(file);
    if (!source) return [];
    const uses = [...buildCatalogue(source, true).uses];
    for (const key of this.#units.keysOf(file)) {
      const built = buildStore(this.#units.partsOf(key), ruleIds, true);
      for (const use of built?.uses ?? []) if (use.place.file === file) uses.push(use);
    }
    return uses;
  }

  /** Files whose answers may change when this one does, itself left out. */
  dependents(file: string): string[] {
    const found = new Set(this.#library.importersOf(file));
    for (const key of this.#units.keysOf(file))
      for (const part of this.#units.partsOf(key)) found.add(part.source.file);
    found.delete(file);
    return [...found];
  }

  /** The files that answers about some files depend on, those that are imported and missing too. */
  filesBehind(files: readonly string[]): string[] {
    const behind = new Set<string>();
    for (const file of files) {
      for (const one of this.#library.closure(file).files) {
        behind.add(one);
        for (const { target } of this.#library.entry(one)?.imports ?? []) if (target !== undefined) behind.add(target);
      }
    }
    return [...behind];
  }

  /** What is wrong in one file. */
  findingsOf(file: string): Finding[] {
    this.#read(file);
    const findings = [...this.#textFindings(file)];
    for (const key of this.#units.keysOf(file)) {
      for (const finding of this.#storeFindings(key)) if (finding.place.file === file) findings.push(finding);
    }
    return [...findings, ...this.#unusedEntries(file)].sort(compareFindings);
  }

  /** What is wrong anywhere in the files that were added; in imports that were only followed nothing is. */
  check(): ProjectCheck {
    return wholeCheck([this.checkPart([...this.#members].sort())], this.#settings);
  }

  /** What is wrong in some of the files, which have the whole of each of their stores, as a part of a check. */
  checkPart(files: readonly string[]): PartCheck {
    this.digestAll();
    const part = new Set(files);
    const keys = [...new Set(files.flatMap((file) => this.#units.keysOf(file)))];
    const units = keys.flatMap((key) => this.#units.unit(key) ?? []);
    const named = units.filter((unit) => unit.named);
    const findings = files.flatMap((file) => this.#textFindings(file));
    for (const key of keys)
      for (const finding of this.#storeFindings(key)) if (part.has(finding.place.file)) findings.push(finding);
    return {
      files: files.length,
      stores: named.length,
      buses: named.reduce((sum, { buses }) => sum + buses, 0),
      findings,
      declared: files.flatMap((file) => this.#declaredIn(file)),
      used: [...new Set(units.flatMap(({ used }) => used))],
    };
  }

  #read(file: string): void {
    if (this.#unread.delete(file)) this.#change(file, () => this.#library.take(file));
  }

  /** Changes what is known of a file, and forgets stores that are not written any more. */
  #change(file: string, change: () => void): void {
    const before = this.#units.keysOf(file);
    change();
    const after = before.length ? this.#units.keysOf(file) : before;
    for (const key of before) if (!after.includes(key)) this.#units.forget(key);
  }

  #release(file: string, keys: readonly string[]): void {
    if (this.#library.entry(file)?.held) return;
    for (const key of keys) {
      const unit = this.#units.known(key);
      if (!unit) continue;
      unit.built = undefined;
      unit.findings = unit.findings?.map(withoutNetwork);
    }
    this.#library.release(file);
  }

  #storeFindings(key: string): readonly Finding[] {
    const unit = this.#units.unit(key);
    if (!unit?.named) return [];
    if (!unit.findings) {
      const built = this.#units.builtUnit(key)?.built;
      unit.findings = built ? checkStore(built.store, built.reports, this.#settings) : [];
    }
    return unit.findings;
  }

  #textFindings(file: string): readonly Finding[] {
    const { generation } = this.#library;
    const known = this.#texts.get(file);
    if (known?.asOf === generation) return known.findings;
    const versions = this.#units.versionsOf([file]);
    // An import that could not be read may have come back; that is asked of the host at each reading.
    if (known && sameNumbers(known.versions, versions)) {
      known.asOf = generation;
      return known.findings;
    }
    const source = this.#library.source(file);
    if (!source) return [];
    const notes = new Notes(source, false);
    textReports(source, this.#library, notes, (name) => this.#units.homeOf(file, name) !== undefined);
    const findings = checkText(
      [...notes.reports, ...(this.#library.entry(file)?.catalogue.reports ?? [])],
      this.#settings,
    );
    this.#texts.set(file, { asOf: generation, versions, findings });
    return findings;
  }

  /** Entries of a member's catalogue that no store uses; only known once every member was read. */
  #unusedEntries(file: string): Finding[] {
    if (this.#unread.size || !this.#members.has(file) || !this.#units.any) return [];
    return unusedFindings(this.#declaredIn(file), (entry) => this.#units.isUsed(entry), this.#settings);
  }

  #declaredIn(file: string): DeclaredEntry[] {
    const catalogue = this.#library.entry(file)?.catalogue;
    const entriesOf = (kind: DeclaredEntry['kind'], entries: Iterable<{ name: string; place: Place }> | undefined) =>
      [...(entries ?? [])].map(({ name, place }) => ({ kind, name, place }));
    return [...entriesOf('cable', catalogue?.cables.values()), ...entriesOf('device', catalogue?.devices.values())];
  }
}

/** A finding whose fixes are computed, so that it does not hold on to the network that they were computed from. */
function withoutNetwork(finding: Finding): Finding {
  const fixes = finding.fixes();
  return { ...finding, fixes: () => fixes };
}
