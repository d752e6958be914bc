/** The catalogue that a file sees: its own entries, then those of its imports in their order, and of theirs. */
import type { Cable, Device, Store } from '@fieldpair/shared';
import type { Name } from '../generated/reader.js';
import { buildCable } from './cable.js';
import { buildDevice } from './device.js';
import { Notes } from './notes.js';
import type { NameUse, SourceText, TextReport } from './source.js';
import { didYouMean, nearest, renameFixes } from './suggest.js';
import { UniqueNames } from './unique.js';

/** What one file adds to the catalogue. Depends on that file's text alone, so it lives as long as the text does. */
export interface FileCatalogue {
  readonly file: string;
  readonly cables: ReadonlyMap<string, Cable>;
  readonly devices: ReadonlyMap<string, Device>;
  readonly reports: readonly TextReport[];
  readonly uses: readonly NameUse[];
}

export function buildCatalogue(source: SourceText, namesWanted = false): FileCatalogue {
  const notes = new Notes(source, namesWanted);
  const cables = new Map<string, Cable>();
  const devices = new Map<string, Device>();
  const uniqueCables = new UniqueNames('cable', notes);
  const uniqueDevices = new UniqueNames('device', notes);
  for (const declaration of source.sheet.declarations) {
    if (declaration.type === 'CableDeclaration') {
      notes.declare('cable', declaration.name);
      const cable = buildCable(declaration, notes);
      if (cable && uniqueCables.add(declaration.name)) cables.set(cable.name, cable);
    } else if (declaration.type === 'DeviceDeclaration') {
      notes.declare('device', declaration.name);
      const device = buildDevice(declaration, notes);
      if (device && uniqueDevices.add(declaration.name)) devices.set(device.name, device);
    }
  }
  return { file: source.file, cables, devices, reports: notes.reports, uses: notes.uses };
}

export class CatalogueScope {
  readonly #files: readonly FileCatalogue[];
  readonly #usedCables = new Map<string, Cable>();
  readonly #usedDevices = new Map<string, Device>();
  /** True when an import is missing: then an unknown name may well be declared in it. */
  readonly #incomplete: boolean;

  /** @param files the file itself first, then its imports, nearest first. */
  constructor(files: readonly FileCatalogue[], incomplete: boolean) {
    this.#files = files;
    this.#incomplete = incomplete;
  }

  cable(written: Name, notes: Notes): Cable | undefined {
    return this.#find('cable', written, notes, this.#usedCables, cablesOf);
  }

  device(written: Name, notes: Notes): Device | undefined {
    return this.#find('device', written, notes, this.#usedDevices, devicesOf);
  }

  /** The entries that were looked for and found: what a check of a store depends on. */
  get usedCables(): Iterable<Cable> {
    return this.#usedCables.values();
  }

  get usedDevices(): Iterable<Device> {
    return this.#usedDevices.values();
  }

  *devices(): Generator<Device> {
    for (const file of this.#files) yield* file.devices.values();
  }

  *cables(): Generator<Cable> {
    for (const file of this.#files) yield* file.cables.values();
  }

  /** Cables and repeaters by their names, those of nearer files first. */
  choices(): Store['choices'] {
    return new Choices(this.#files);
  }

  #find<Entry extends Cable | Device>(
    kind: 'cable' | 'device',
    written: Name,
    notes: Notes,
    used: Map<string, Entry>,
    entries: (file: FileCatalogue) => ReadonlyMap<string, Entry>,
  ): Entry | undefined {
    const { text } = written;
    if (text === undefined) return undefined;
    let found = used.get(text);
    if (!found) {
      for (const file of this.#files) {
        found = entries(file).get(text);
        if (found) break;
      }
      if (found) used.set(text, found);
    }
    if (found) notes.use(kind, written, found.place);
    else if (!this.#incomplete) {
      const likely = this.#reportUnknown(kind, written, text, notes, entries);
      // That nobody uses it either would be told of the same slip.
      for (const entry of likely) used.set(entry.name, entry);
      return likely.find(({ name }) => name.toLowerCase() === text.toLowerCase());
    }
    return found;
  }

  /** @returns what may have been meant */
  #reportUnknown<Entry>(
    kind: 'cable' | 'device',
    written: Name,
    text: string,
    notes: Notes,
    entries: (file: FileCatalogue) => ReadonlyMap<string, Entry>,
  ): Entry[] {
    const place = notes.place(written);
    const likely = nearest(
      text,
      this.#files.flatMap((file) => [...entries(file).keys()]),
    );
    notes.report(
      'unknown-name',
      `there is no ${kind} ${text} in this file or its imports${didYouMean(likely)}`,
      place,
      {
        at: text,
        fixes: () => renameFixes(place, likely),
      },
    );
    return likely.flatMap((name) => this.#files.flatMap((file) => entries(file).get(name) ?? []).slice(0, 1));
  }
}

const cablesOf = ({ cables }: FileCatalogue) => cables;
const devicesOf = ({ devices }: FileCatalogue) => devices;

/** Gathered when somebody asks, which for a sound store nobody does: a catalogue may have hundreds. */
class Choices {
  readonly #files: readonly FileCatalogue[];

  constructor(files: readonly FileCatalogue[]) {
    this.#files = files;
  }

  get cables(): Cable[] {
    return nearestOf(this.#files.flatMap(({ cables }) => [...cables.values()]));
  }

  get repeaters(): Device[] {
    const devices = this.#files.flatMap(({ devices: all }) => [...all.values()]);
    return nearestOf(devices.filter(({ role }) => role === 'repeater'));
  }
}

/** Of those with the same name the first. */
const nearestOf = <Entry extends { readonly name: string }>(entries: readonly Entry[]): Entry[] => {
  const byName = new Map<string, Entry>();
  for (const entry of entries) if (!byName.has(entry.name)) byName.set(entry.name, entry);
  return [...byName.values()];
};
