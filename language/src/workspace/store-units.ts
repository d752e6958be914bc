/**
 * Which texts make which store, and the store that they make, built anew when a text that it depends on has changed.
 */
import { type Finding, ruleIds } from '@fieldpair/shared';
import { CatalogueScope } from '../build/scope.js';
import { type BuiltStore, buildStore, type StorePart } from '../build/store.js';
import type { Library } from './library.js';
import type { DeclaredEntry } from './part-check.js';

/** What is known of one store. */
export interface Unit {
  /** When the library was last asked whether the versions are still those of the texts. */
  asOf: number;
  readonly versions: readonly number[];
  /** Let go when its files are released, and built again when asked for. */
  built: BuiltStore | undefined;
  readonly named: boolean;
  readonly buses: number;
  /** Catalogue entries that it uses, as keys of usage. */
  readonly used: readonly string[];
  findings: readonly Finding[] | undefined;
}

export class StoreUnits {
  readonly #library: Library;
  readonly #units = new Map<string, Unit>();
  /** How many stores use each catalogue entry, by where it is declared; follows #units. */
  readonly #users = new Map<string, number>();

  constructor(library: Library) {
    this.#library = library;
  }

  /** Forgets what the rules said, of one store or of all; the stores stay. */
  forgetFindings(key?: string): void {
    const units = key === undefined ? this.#units.values() : [this.#units.get(key)];
    for (const unit of units) if (unit) unit.findings = undefined;
  }

  /** Whether any store that was looked at uses a catalogue entry. */
  isUsed({ kind, name, place }: DeclaredEntry): boolean {
    return 0 < (this.#users.get(usageKey(place.file, kind, name)) ?? 0);
  }

  /** Whether any store was looked at. */
  get any(): boolean {
    return 0 < this.#units.size;
  }

  /** Forgets a store that is no longer written anywhere. */
  forget(key: string): void {
    this.#count(this.#units.get(key), -1);
    this.#units.delete(key);
  }

  /** What is known of a store, if anything; not computed. */
  known(key: string): Unit | undefined {
    return this.#units.get(key);
  }

  /** The stores with a part in a file, as keys of units: the file and the name of the part that is not continued. */
  keysOf(file: string): string[] {
    const stores = this.#library.entry(file)?.stores ?? [];
    // Nearly all files have one store and no more.
    const [only, another] = stores;
    if (only && !another && !only.continued) return [`${file}\n${only.name}`];
    const keys = new Set<string>();
    for (const { name, continued } of stores) {
      const home = continued ? this.homeOf(file, name) : file;
      if (home !== undefined) keys.add(`${home}\n${name}`);
    }
    return [...keys];
  }

  /** Where the main part of a continued store is: in the file itself or in what it imports. */
  homeOf(file: string, name: string): string | undefined {
    return this.#library
      .closure(file)
      .files.find((one) => this.#library.entry(one)?.stores.some((store) => store.name === name && !store.continued));
  }

  /** The files of a store, the one with its main part first. */
  filesOf(key: string): string[] {
    const [home = '', name = ''] = key.split('\n');
    if (!this.#library.anyContinuing) return [home];
    const others = this.#library.continuing().filter((file) => file !== home && this.homeOf(file, name) === home);
    return [home, ...others];
  }

  partsOf(key: string): StorePart[] {
    const [home = '', name = ''] = key.split('\n');
    const parts: StorePart[] = [];
    for (const file of this.filesOf(key)) {
      const source = this.#library.source(file);
      const { files, incomplete } = this.#library.closure(file);
      for (const declaration of this.#library.storesIn(file)) {
        // A second store of the same name has its own finding.
        const wanted = file === home && !declaration.continued ? parts.length === 0 : declaration.continued;
        if (!source || declaration.name?.text !== name || !wanted) continue;
        const scope = new CatalogueScope(
          files.flatMap((one) => this.#library.entry(one)?.catalogue ?? []),
          incomplete,
        );
        parts.push({ source, declaration, scope });
      }
    }
    return parts;
  }

  versionsOf(files: readonly string[]): number[] {
    const [only = '', another] = files;
    const all =
      another === undefined
        ? this.#library.closure(only).files
        : [...new Set(files.flatMap((file) => this.#library.closure(file).files))];
    return all.map((file) => this.#library.entry(file)?.version ?? 0);
  }

  unit(key: string): Unit | undefined {
    const { generation } = this.#library;
    const known = this.#units.get(key);
    if (known?.asOf === generation) return known;
    const versions = this.versionsOf(this.filesOf(key));
    if (!versions.length) return undefined;
    if (known && sameNumbers(known.versions, versions)) {
      known.asOf = generation;
      return known;
    }
    const parts = this.partsOf(key);
    const built = buildStore(parts, ruleIds);
    const unit: Unit = {
      asOf: generation,
      versions,
      built,
      named: built !== undefined,
      buses: built?.store.buses.length ?? 0,
      used: usedBy(parts),
      findings: undefined,
    };
    this.#count(known, -1);
    this.#count(unit, 1);
    this.#units.set(key, unit);
    return unit;
  }

  builtUnit(key: string): Unit | undefined {
    const unit = this.unit(key);
    if (unit?.named) unit.built ??= buildStore(this.partsOf(key), ruleIds);
    return unit;
  }

  #count(unit: Unit | undefined, step: number): void {
    for (const entry of unit?.used ?? []) this.#users.set(entry, (this.#users.get(entry) ?? 0) + step);
  }
}

function usedBy(parts: readonly StorePart[]): string[] {
  const used = new Set<string>();
  for (const { scope } of parts) {
    for (const { place, name } of scope.usedCables) used.add(usageKey(place.file, 'cable', name));
    for (const { place, name } of scope.usedDevices) used.add(usageKey(place.file, 'device', name));
  }
  return [...used];
}

/** The key of a catalogue entry among those that are used, by the file that declares it. */
export const usageKey = (file: string, kind: 'cable' | 'device', name: string) => `${file}\n${kind} ${name}`;

export const sameNumbers = (left: readonly number[], right: readonly number[]) =>
  left.length === right.length && left.every((number, index) => number === right[index]);
