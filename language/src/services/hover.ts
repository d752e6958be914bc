/** Hovers: what is known and computed about the thing under the cursor. */

import { hasWaves, type Place } from '@fieldpair/shared';
import type { Hover, Position } from 'vscode-languageserver';
import { showWavesCommand } from './code-lens.js';
import { type BusInStore, contains, type Desk } from './desk.js';
import { areaFacts, busFacts, landingFacts, runFacts } from './hover-bus.js';
import { cableFacts, deviceFacts, documented, portFacts } from './hover-catalogue.js';
import { referenceLines, toldAt } from './hover-reference.js';

export function hover(desk: Desk, file: string, position: Position): Hover | undefined {
  const offset = desk.offsetOf(file, position);
  const found =
    named(desk, file, offset) ?? worded(desk, file, offset) ?? wired(desk, file, offset) ?? headed(desk, file, offset);
  if (!found) return undefined;
  return { range: desk.rangeOf(found.place), contents: { kind: 'markdown', value: found.lines.join('\n\n') } };
}

interface Found {
  readonly place: Place;
  readonly lines: readonly string[];
}

/** What a name stands for. */
function named(desk: Desk, file: string, offset: number): Found | undefined {
  const use = desk.useAt(file, offset);
  if (!use) return undefined;
  const { place, target, kind, name } = use;
  const at = (other: Place) => other.file === target.file && other.start === target.start;
  const catalogue = desk.project.catalogueOf(file);
  switch (kind) {
    case 'cable': {
      const cable = catalogue.map(({ cables }) => cables.get(name)).find((one) => one && at(one.place));
      return cable && { place, lines: cableFacts(cable) };
    }
    case 'device':
    case 'revision': {
      const devices = catalogue.flatMap((one) => [...one.devices.values()]);
      const device = devices.find((one) => at(one.place));
      return device && { place, lines: deviceFacts(device) };
    }
    case 'port': {
      const ports = catalogue.flatMap((one) => [...one.devices.values()].flatMap((device) => device.ports));
      const port = ports.find((one) => at(one.place));
      return port && { place, lines: portFacts(port) };
    }
    case 'store': {
      const store = desk.project.storesOf(file).find((one) => at(one.place));
      return store && { place, lines: documented('store', store) };
    }
    case 'bus': {
      const found = desk.project.storesOf(file).flatMap((store) => store.buses.map((bus) => ({ store, bus })));
      const bus = found.find((one) => at(one.bus.place));
      return bus && { place, lines: [...busFacts(desk.studyOf(bus)), ...wavesLink(desk, bus)] };
    }
    case 'node':
    case 'splice':
      return landed(desk, file, offset, place) ?? declared(desk, file, target, place);
    default:
      return undefined;
  }
}

/** A way to the waveforms, for an editor that follows links to commands. */
function wavesLink(desk: Desk, { bus }: BusInStore): string[] {
  if (!desk.commandLinks || !hasWaves(bus)) return [];
  const { file } = bus.place;
  const parameters = encodeURIComponent(JSON.stringify([file, desk.rangeOf(bus.place).start]));
  return [`[Show waveforms](command:${showWavesCommand}?${parameters})`];
}

/** A landing, where its name is written inside a bus. */
function landed(desk: Desk, file: string, offset: number, place: Place): Found | undefined {
  const inside = desk.busAt(file, offset);
  const landing = inside?.bus.landings.find(({ visits }) =>
    visits.some((visit) => contains(visit.referencePlace, offset)),
  );
  return inside && landing && { place, lines: landingFacts(desk.studyOf(inside), landing) };
}

function declared(desk: Desk, file: string, target: Place, place: Place): Found | undefined {
  for (const store of desk.project.storesOf(file)) {
    const node = store.nodes.find((one) => one.place.file === target.file && one.place.start === target.start);
    if (!node) continue;
    const lines = documented('node', node);
    if (node.device) lines.push(...deviceFacts(node.device));
    return { place, lines };
  }
  return undefined;
}

/** A run, anywhere in its statement in front of the landing. */
function wired(desk: Desk, file: string, offset: number): Found | undefined {
  const inside: BusInStore | undefined = desk.busAt(file, offset);
  const run = inside?.bus.runs.find((one) => contains(one.place, offset));
  if (!inside || !run) return undefined;
  const place = contains(run.lengthPlace, offset) ? run.lengthPlace : run.place;
  return { place, lines: runFacts(desk.studyOf(inside), run) };
}

/** A word of a statement, with what is known of the very run or area where it belongs to one. */
function worded(desk: Desk, file: string, offset: number): Found | undefined {
  const source = desk.project.sourceOf(file);
  const told = source && toldAt(source.sheet, source.text, offset);
  if (!told) return undefined;
  const isRun = told.entry.name === 'Run';
  // A length is that of its run, which has more to tell.
  if (isRun && !told.entry.keywords.includes(told.word)) return undefined;
  const own = isRun ? wired(desk, file, offset) : headed(desk, file, offset);
  const place = { file, start: told.start, end: told.end };
  return { place, lines: [...(own?.lines ?? []), ...referenceLines(told, desk.commandLinks)] };
}

/** An area, anywhere in its heading. */
function headed(desk: Desk, file: string, offset: number): Found | undefined {
  const inside = desk.busAt(file, offset);
  const place = inside?.bus.areas.find((one) => contains(one, offset));
  return inside && place && { place, lines: areaFacts(desk.studyOf(inside), place) };
}
