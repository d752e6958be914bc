/** Renaming: every mention of a name in all files, unless the new name would stand for two things. */
import type { Place, Store } from '@fieldpair/shared';
import { LSPErrorCodes, type Position, type Range, ResponseError, type WorkspaceEdit } from 'vscode-languageserver';
import { type NameUse, samePlace } from '../build/source.js';
import { nameText } from '../build/suggest.js';
import { quote } from '../read/text-value.js';
import type { Desk } from './desk.js';
import { mentionsOf, useUnder } from './names.js';

/** The stretch that a rename would replace; undefined where there is no name, or one that nothing declares. */
export function prepareRename(desk: Desk, file: string, position: Position): Range | undefined {
  const use = useUnder(desk, file, position);
  return use && desk.rangeOf(use.place);
}

/**
 * Renames in every file that mentions the name. A new name that needs quotes gets them.
 * @throws ResponseError with a line for the reader, when the new name is empty or taken.
 */
export function rename(desk: Desk, file: string, position: Position, newName: string): WorkspaceEdit | undefined {
  const use = useUnder(desk, file, position);
  if (!use) return undefined;
  const typed = newName.trim();
  const name = /^".*"$/.test(typed) ? typed.slice(1, -1) : typed;
  if (name.trim() === '') throw refusal('a name cannot be empty; write at least one character');
  const mentions = mentionsOf(desk, file, use);
  if (name !== use.name) {
    const taken = takenBy(desk, use, name);
    if (taken) throw refusal(`${taken} is called ${name} already; choose another name for ${use.kind} ${use.name}`);
  }
  // Areas are called as people call them, which mostly takes quotes.
  const newText = use.kind === 'area' ? quote(name) : nameText(name);
  const changes: NonNullable<WorkspaceEdit['changes']> = {};
  for (const { place } of mentions) {
    changes[place.file] ??= [];
    changes[place.file]?.push({ range: desk.rangeOf(place), newText });
  }
  return { changes };
}

const refusal = (message: string) => new ResponseError(LSPErrorCodes.RequestFailed, message);

/** What has the new name where the old one is seen, such as `another node of store northgate`. */
function takenBy(desk: Desk, use: NameUse, name: string): string | undefined {
  switch (use.kind) {
    case 'cable':
    case 'device':
      return takenInCatalogue(desk, use.kind, use, name);
    case 'port':
    case 'revision':
      return takenInDevice(desk, use, name);
    case 'indicator':
      return undefined;
    case 'area':
      return takenByArea(desk, use, name);
    default:
      return takenInStore(desk, use, name);
  }
}

/** By any file that sees the entry: one that uses the other of that name without seeing both would see this one. */
function takenInCatalogue(desk: Desk, kind: 'cable' | 'device', { target }: NameUse, name: string) {
  const isTaken = [target.file, ...desk.project.dependents(target.file)].some((file) =>
    desk.project.catalogueOf(file).some(({ cables, devices }) => (kind === 'cable' ? cables : devices).has(name)),
  );
  return isTaken ? `another ${kind}` : undefined;
}

function takenInDevice(desk: Desk, { kind, target }: NameUse, name: string): string | undefined {
  for (const { devices } of desk.project.catalogueOf(target.file)) {
    for (const { name: device, ports, revisions, revisionPlaces } of devices.values()) {
      const places = kind === 'port' ? ports.map(({ place }) => place) : revisionPlaces;
      if (!places.some((place) => samePlace(place, target))) continue;
      const names = kind === 'port' ? ports.map((port) => port.name) : revisions;
      return names.includes(name) ? `another ${kind} of device ${device}` : undefined;
    }
  }
  return undefined;
}

function takenByArea(desk: Desk, { target }: NameUse, name: string): string | undefined {
  const isIn = (place: Place, whole: Place) =>
    place.file === whole.file && whole.start <= place.start && place.end <= whole.end;
  const store = desk.project
    .storesOf(target.file)
    .find(({ buses }) => buses.some(({ blockPlace }) => isIn(target, blockPlace)));
  const files = new Set(store?.buses.map(({ place }) => place.file));
  const isTaken = [...files].some((file) =>
    desk.project
      .usesOf(file)
      .some(
        (one) =>
          one.kind === 'area' &&
          one.name === name &&
          store?.buses.some(({ blockPlace }) => isIn(one.place, blockPlace)),
      ),
  );
  return isTaken ? `another area of store ${store?.name}` : undefined;
}

/** Stores of one name are parts of one store where a file sees both. */
function takenByStore(desk: Desk, target: Place, name: string): string | undefined {
  const files = [target.file, ...desk.project.dependents(target.file)];
  const isTaken = files.some((file) => desk.project.storesOf(file).some((store) => store.name === name));
  return isTaken ? 'another store that a file with this one sees' : undefined;
}

/** A waiver of a store names nodes, splices and buses alike, so that there none may have the name of another. */
function takenInWaiver({ name, waivers, nodes, buses }: Store, kind: NameUse['kind'], old: string, wanted: string) {
  const isInBus = ({ start, end, file }: Place) =>
    buses.some(({ blockPlace: whole }) => whole.file === file && whole.start <= start && end <= whole.end);
  const named = waivers
    .filter(({ place }) => !isInBus(place))
    .flatMap(({ at, bus }) => at ?? (bus === undefined ? [] : buses[bus]!.name));
  if (!named.some((one) => [old, wanted].includes(one.split('.')[0]!))) return undefined;
  const isSplice = buses.some(({ landings }) => landings.some(({ splice }) => splice === wanted));
  if (kind !== 'bus')
    return buses.some((bus) => bus.name === wanted) ? `a bus of store ${name}, where rules are waived,` : undefined;
  if (isSplice) return `a splice of store ${name}, where rules are waived,`;
  return nodes.some((node) => node.name === wanted) ? `a node of store ${name}, where rules are waived,` : undefined;
}

function takenInStore(desk: Desk, { kind, target, name: old }: NameUse, name: string): string | undefined {
  const stores = desk.project.storesOf(target.file);
  if (kind === 'store') return takenByStore(desk, target, name);
  const isTarget = ({ place }: { readonly place: Place }) => samePlace(place, target);
  for (const one of stores) {
    const { name: store, nodes, buses, networks } = one;
    const splices = buses.flatMap(({ landings }) => landings.filter(({ splice }) => splice !== undefined));
    if (![...nodes, ...splices, ...buses, ...networks].some(isTarget)) continue;
    const has = (all: readonly { readonly name: string }[]) => all.some((one) => one.name === name);
    if (kind === 'bus' || kind === 'network') {
      if (has(kind === 'bus' ? buses : networks)) return `another ${kind} of store ${store}`;
    }
    const waived = kind === 'network' ? undefined : takenInWaiver(one, kind, old, name);
    if (waived) return waived;
    if (kind === 'bus' || kind === 'network') return undefined;
    // Nodes and splices are landed by their names alone.
    if (has(nodes)) return `${kind === 'node' ? 'another' : 'a'} node of store ${store}`;
    if (has(splices)) return `${kind === 'splice' ? 'another' : 'a'} splice of store ${store}`;
  }
  return undefined;
}
