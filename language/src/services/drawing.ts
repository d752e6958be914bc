/** The drawing of the store that a file is about, for an editor that shows it beside the text. */
import {
  type DrawingOptions,
  drawingStyle,
  drawStore,
  type Finding,
  type Part,
  type PartKind,
  pageColours,
  type Store,
  shapesSvg,
} from '@fieldpair/shared';
import type { Location, Position, TextEdit } from 'vscode-languageserver';
import { moveLanding } from '../edit/move-landing.js';
import type { Desk } from './desk.js';

export interface StoreDrawing {
  readonly title: string;
  readonly description: readonly string[];
  /** The style of all shapes, with the colours left to variables of the page. */
  readonly style: string;
  readonly width: number;
  readonly height: number;
  readonly parts: readonly DrawnPart[];
}

export interface DrawnPart {
  readonly key: string;
  readonly kind: PartKind;
  readonly group: string;
  readonly name: string;
  /** SVG elements. */
  readonly markup: string;
  readonly at: Location;
  readonly covers: readonly Location[];
  readonly findings: readonly {
    readonly severity: Finding['severity'];
    readonly message: string;
    readonly at: Location;
    /** Why it is waived, where it is. */
    readonly waived?: string;
  }[];
  /** The name of a landing that can be moved. */
  readonly landing?: string;
}

/** @param position chooses the store, where a file has several; the first one when it lies in none. */
export function storeDrawing(
  desk: Desk,
  file: string,
  position: Position | undefined,
  options: DrawingOptions,
): StoreDrawing | undefined {
  const store = storeAt(desk, file, position);
  if (!store) return undefined;
  const findings = [...filesOf(store)].flatMap((one) => desk.project.findingsOf(one));
  const studies = store.buses.map((bus) => desk.studyOf({ store, bus }));
  const scene = drawStore(store, studies, findings, options);
  return {
    title: scene.title,
    description: scene.description,
    style: drawingStyle(pageColours),
    width: scene.width,
    height: scene.height,
    parts: scene.parts.map((part) => drawnPart(desk, store, part)),
  };
}

function drawnPart(desk: Desk, store: Store, part: Part): DrawnPart {
  const { key, kind, group, name, shapes, place, covers, findings, landing } = part;
  const landed = landing && store.buses[landing.bus]?.landings[landing.index]?.name;
  return {
    key,
    kind,
    group,
    name,
    markup: shapesSvg(shapes),
    at: desk.locationOf(place),
    covers: covers.map((one) => desk.locationOf(one)),
    findings: findings.map((finding) => ({
      severity: finding.severity,
      message: finding.message,
      at: desk.locationOf(finding.place),
      ...(finding.waived && { waived: finding.waived.reason }),
    })),
    ...(landed !== undefined && { landing: landed }),
  };
}

/** The store in whose buses or name a position lies, else the last one that begins before it, else the first. */
function storeAt(desk: Desk, file: string, position: Position | undefined): Store | undefined {
  const stores = desk.project.storesOf(file);
  if (!position || stores.length < 2) return stores[0];
  const offset = desk.offsetOf(file, position);
  const begun = stores.filter(({ place }) => place.file === file && place.start <= offset);
  return begun.at(-1) ?? stores[0];
}

/** Every file that a store is written in. */
function filesOf(store: Store): Set<string> {
  const parts = [store, ...store.nodes, ...store.buses, ...store.networks];
  return new Set(parts.map(({ place }) => place.file));
}

export interface LandingMove {
  /** Of one file. */
  readonly edits: readonly { readonly uri: string; readonly edits: readonly TextEdit[] }[];
  /** How many lengths are left as they were and hold no longer. */
  readonly remeasured: number;
  /** Why nothing is moved. */
  readonly refused?: string;
}

/**
 * Moves a landing behind another one of its bus.
 *
 * @param at a place in the bus
 * @param after the name of that landing; undefined for the place before all others
 */
export function landingMove(
  desk: Desk,
  file: string,
  at: Position,
  landing: string,
  after: string | undefined,
): LandingMove {
  const found = desk.busAt(file, desk.offsetOf(file, at));
  const indexOf = (name: string) => found?.bus.landings.findIndex((one) => one.name === name) ?? -1;
  if (!found || indexOf(landing) < 0 || (after !== undefined && indexOf(after) < 0)) {
    return refusal('The drawing is older than the text; it will follow in a moment.');
  }
  const target = after === undefined ? undefined : indexOf(after);
  const move = moveLanding(found.bus, indexOf(landing), target, (one) => desk.project.textOf(one));
  if ('refused' in move) return refusal(move.refused);
  const edits = move.changes.map((change) => ({ range: desk.rangeOf(change), newText: change.text }));
  return { edits: edits.length ? [{ uri: file, edits }] : [], remeasured: move.remeasured };
}

const refusal = (refused: string): LandingMove => ({ edits: [], remeasured: 0, refused });
