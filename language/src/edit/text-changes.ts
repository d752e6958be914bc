/** From a fix's network edits to changes of text: this folder alone knows how a fact is written. */
import type { Bus, NetworkEdit, Store } from '@fieldpair/shared';
import { nameText } from '../build/suggest.js';
import { divide } from './divide.js';
import { atLanding } from './landing-changes.js';
import { removal } from './lines.js';
import { biasText, plainNumber, referenceOf } from './phrases.js';
import { rewire } from './rewire.js';
import { insert, replace, type TextChange, type TextOf } from './text-change.js';

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
  const rewired = new Set(needed.flatMap((edit) => (edit.kind === 'rewire' ? [edit.bus] : [])));
  // A new course writes the landings anew: what changes at them is written with it.
  const isAmendment = (edit: NetworkEdit) => 'landing' in edit && rewired.has(edit.bus);
  const amendments = inOrder(needed.filter(isAmendment).flatMap((edit) => changesFor(store, edit, [], textOf)));
  const others = needed.filter((edit) => !isAmendment(edit));
  return inOrder(others.flatMap((edit) => changesFor(store, edit, amendments, textOf)));
}

/** In the order of the text; of changes that overlap, the first. */
function inOrder(changes: readonly TextChange[]): TextChange[] {
  const sorted = [...changes].sort((left, right) => left.start - right.start || left.end - right.end);
  return sorted.filter(
    (change, index) =>
      index === 0 ||
      (sorted[index - 1] as TextChange).file !== change.file ||
      (sorted[index - 1] as TextChange).end <= change.start,
  );
}

function changesFor(
  store: Store | undefined,
  edit: NetworkEdit,
  amendments: readonly TextChange[],
  textOf: TextOf,
): TextChange[] {
  if (edit.kind === 'write') return [edit.text === '' ? removal(edit.place, textOf) : replace(edit.place, edit.text)];
  if (!store) return [];
  if (edit.kind === 'set-revision') return revisionChanges(store, edit);
  const bus = store.buses[edit.bus];
  if (!bus) return [];
  if ('landing' in edit) {
    const landing = bus.landings[edit.landing];
    return landing ? atLanding(bus, landing, edit, textOf) : [];
  }
  return edit.kind === 'divide' ? divide(store, bus, edit, textOf) : ofBus(bus, edit, amendments, textOf);
}

type BusEdit = Exclude<
  NetworkEdit,
  { readonly landing: number } | { readonly kind: 'write' | 'set-revision' | 'divide' }
>;

function ofBus(bus: Bus, edit: BusEdit, amendments: readonly TextChange[], textOf: TextOf): TextChange[] {
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
      return bias && landing
        ? [replace(bias.place, biasText(referenceOf(landing), edit.up, edit.down, bias.supply))]
        : [];
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
    case 'set-fuse': {
      const run = bus.runs[edit.run];
      const text = `fuse ${plainNumber(edit.amperes)} A`;
      if (run?.fuse) return [replace(run.fuse.place, text)];
      return run ? [insert(run.lengthPlace.file, run.lengthPlace.end, ` ${text}`)] : [];
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
      return rewire(bus, edit.course, amendments, textOf);
  }
}

function revisionChanges(store: Store, edit: Extract<NetworkEdit, { kind: 'set-revision' }>): TextChange[] {
  const node = store.nodes.find(({ name }) => name === edit.node);
  if (!node) return [];
  if (node.revision) return [replace(node.revision.place, nameText(edit.revision))];
  const after = node.devicePlace ?? node.place;
  return [insert(after.file, after.end, ` revision ${nameText(edit.revision)}`)];
}
