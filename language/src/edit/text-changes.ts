/** From a fix's network edits to changes of text: the only place that knows how a fact is written. */
import {
  type Bus,
  formatSignificant,
  type Landing,
  metresPerFoot,
  type NetworkEdit,
  type Place,
  type Store,
} from '@fieldpair/shared';
import { nameText } from '../build/suggest.js';
import { lineOf, removal, statementAfter } from './lines.js';
import { rewire } from './rewire.js';

/** Replaces a stretch of one file's text. */
export interface TextChange {
  readonly file: string;
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** The text of a file; places of the store refer to it. */
export type TextOf = (file: string) => string | undefined;

/**
 * The changes that write edits down, in the order of the text, not overlapping. `store` is the network that the fix
 * was made for; edits that only write text need none.
 */
export function textChangesFor(store: Store | undefined, edits: readonly NetworkEdit[], textOf: TextOf): TextChange[] {
  // A new terminator takes the place of those that are written, so that nothing is left to remove.
  const replaced = (edit: NetworkEdit) =>
    edit.kind === 'unterminate' &&
    edits.some((other) => other.kind === 'terminate' && other.bus === edit.bus && other.landing === edit.landing);
  const needed = edits.filter((edit) => !replaced(edit));
  const changes = needed.flatMap((edit) => changesFor(store, edit, textOf));
  changes.sort((left, right) => left.start - right.start || left.end - right.end);
  return changes.filter(
    (change, index) =>
      index === 0 ||
      (changes[index - 1] as TextChange).file !== change.file ||
      (changes[index - 1] as TextChange).end <= change.start,
  );
}

const replace = ({ file, start, end }: Place, text: string): TextChange => ({ file, start, end, text });
const insert = (file: string, at: number, text: string): TextChange => ({ file, start: at, end: at, text });

function changesFor(store: Store | undefined, edit: NetworkEdit, textOf: TextOf): TextChange[] {
  if (edit.kind === 'write') return [edit.text === '' ? removal(edit.place, textOf) : replace(edit.place, edit.text)];
  if (!store) return [];
  if (edit.kind === 'set-revision') {
    const node = store.nodes.find(({ name }) => name === edit.node);
    if (!node) return [];
    if (node.revision) return [replace(node.revision.place, nameText(edit.revision))];
    const after = node.devicePlace ?? node.place;
    return [insert(after.file, after.end, ` revision ${nameText(edit.revision)}`)];
  }
  const bus = store.buses[edit.bus];
  if (!bus) return [];
  if ('landing' in edit) {
    const landing = bus.landings[edit.landing];
    return landing ? atLanding(bus, landing, edit, textOf) : [];
  }
  switch (edit.kind) {
    case 'remove-earth': {
      const earth = bus.earths[edit.earth];
      return earth ? [removal(earth.place, textOf)] : [];
    }
    case 'remove-bias': {
      const bias = bus.biases[edit.bias];
      return bias ? [removal(bias.place, textOf)] : [];
    }
    case 'set-bias': {
      const bias = bus.biases[edit.bias];
      const landing = bias?.landing === undefined ? undefined : bus.landings[bias.landing];
      return bias && landing ? [replace(bias.place, biasText(landing, edit.up, edit.down))] : [];
    }
    case 'set-run-cable': {
      const run = bus.runs[edit.run];
      if (!run) return [];
      const text = edit.cable === undefined ? '' : `on ${nameText(edit.cable)}`;
      if (!run.cablePlace) return text ? [insert(run.lengthPlace.file, run.lengthPlace.end, ` ${text}`)] : [];
      const source = textOf(run.cablePlace.file) ?? '';
      const start = source.lastIndexOf('on', run.cablePlace.start);
      return [
        text ? { ...replace(run.cablePlace, text), start } : { ...replace(run.cablePlace, ''), start: start - 1 },
      ];
    }
    case 'set-bus-cable': {
      if (bus.cablePlace) return [replace(bus.cablePlace, nameText(edit.cable))];
      const after = bus.format?.place ?? bus.rate?.place ?? bus.kindPlace;
      return after ? [insert(after.file, after.end, ` on ${nameText(edit.cable)}`)] : [];
    }
    case 'set-rate':
      if (bus.rate) return [replace(bus.rate.place, String(edit.rate))];
      return bus.kindPlace ? [insert(bus.kindPlace.file, bus.kindPlace.end, ` ${edit.rate}`)] : [];
    case 'set-format': {
      if (bus.format) return [replace(bus.format.place, edit.format)];
      return bus.rate ? [insert(bus.rate.place.file, bus.rate.place.end, ` ${edit.format}`)] : [];
    }
    case 'mark-spare': {
      const run = bus.runs[edit.run];
      return run ? [insert(run.lengthPlace.file, run.lengthPlace.end, ' spare')] : [];
    }
    case 'remove-run': {
      const run = bus.runs[edit.run];
      if (!run) return [];
      // Whatever is pulled next starts where this run ended; without it that must be said.
      const target = run.to === undefined ? undefined : bus.landings[run.to];
      const next = bus.runs[edit.run + 1];
      const lifted =
        next && bus.pens.some(({ place }) => run.place.end <= place.start && place.end <= next.place.start);
      if (!run.tap && !run.spare && target && next && !lifted)
        return [replace(run.place, `from ${referenceOf(target)}`)];
      return [removal(run.place, textOf)];
    }
    case 'rewire':
      return rewire(bus, edit.course, textOf);
  }
}

type LandingEdit = Extract<NetworkEdit, { readonly landing: number }>;

function atLanding(bus: Bus, landing: Landing, edit: LandingEdit, textOf: TextOf): TextChange[] {
  const visit = landing.visits[0];
  if (!visit) return [];
  const append = (text: string) => insert(visit.place.file, visit.place.end, ` ${text}`);
  switch (edit.kind) {
    case 'terminate': {
      const text = edit.means === 'switch' ? 'terminate switch' : resistorText(edit.resistance, edit.capacitance);
      const [first, ...others] = writtenTerminators(landing);
      const changes = [first ? replace(first, text) : append(text), ...others.map((place) => removal(place, textOf))];
      if (edit.means === 'switch' && landing.switchedOff) changes.push(removal(landing.switchedOff, textOf));
      return changes;
    }
    case 'unterminate':
      return writtenTerminators(landing).map((place) => removal(place, textOf));
    case 'set-address':
      return [
        landing.address ? replace(landing.address.place, String(edit.address)) : append(`address ${edit.address}`),
      ];
    case 'uncross':
      return landing.crossed ? [removal(landing.crossed, textOf)] : [];
    case 'set-port':
      return landing.visits.map(({ referencePlace }) =>
        replace(referencePlace, `${nameText(landing.node?.name ?? landing.name)}.${nameText(edit.port)}`),
      );
    case 'set-shield':
      if (!landing.shieldPlace) return [append(`shield ${edit.treatment}`)];
      return [
        edit.treatment === 'through'
          ? removal(landing.shieldPlace, textOf)
          : replace(landing.shieldPlace, `shield ${edit.treatment}`),
      ];
    case 'earth-shield':
      return [newStatement(bus, `shield earthed at ${referenceOf(landing)}`, textOf)];
    case 'add-bias':
      return [newStatement(bus, biasText(landing, edit.up, edit.down), textOf)];
  }
}

/** Where a landing is said to be terminated, a switch that is not there included. */
const writtenTerminators = ({ terminations, missingSwitch }: Landing): Place[] => [
  ...terminations.flatMap(({ place }) => place ?? []),
  ...(missingSwitch ? [missingSwitch] : []),
];

const resistorText = (resistance: number, capacitance: number | undefined) =>
  `terminate resistor ${plainNumber(resistance)} ohm${capacitance === undefined ? '' : ` capacitor ${plainNumber(capacitance * 1e9)} nF`}`;

const biasText = (landing: Landing, up: number, down: number) =>
  `bias at ${referenceOf(landing)} ${up === down ? `${plainNumber(up)} ohm` : `${plainNumber(up)} ohm to + ${plainNumber(down)} ohm to -`}`;

/** Digits that the grammar reads: no grouping. */
export const plainNumber = (value: number): string => formatSignificant(value, 6).replace(/,/g, '');

/** A length in a unit of people, to a tenth. */
export const lengthText = (length: number, unit: 'ft' | 'm'): string =>
  `${Number((unit === 'ft' ? length / metresPerFoot : length).toFixed(1))} ${unit}`;

/** How a later statement names a landing. */
export function referenceOf(landing: Landing): string {
  if (landing.splice !== undefined) return nameText(landing.splice);
  const node = nameText(landing.node?.name ?? landing.name);
  return landing.portPlace && landing.port ? `${node}.${nameText(landing.port.name)}` : node;
}

/** A statement of its own line, last in the bus, indented like the ones before. */
function newStatement(bus: Bus, text: string, textOf: TextOf): TextChange {
  const { file, start } = bus.endPlace;
  const source = textOf(file) ?? '';
  const last = [...bus.runs.map(({ place }) => place), ...bus.pens.map(({ place }) => place)].at(-1);
  const indent = last ? lineOf(source, last.start).indent : `${lineOf(source, bus.blockPlace.start).indent}  `;
  return insert(file, statementAfter(source, start), `${source.includes('\r\n') ? '\r\n' : '\n'}${indent}${text}`);
}
