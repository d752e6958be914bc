/** What ports and landings state about supplies and contact loops, from the tree to the network. */
import {
  type Amperes,
  amperes,
  type ContactWiring,
  type LoopInput,
  type LoopWindow,
  loopMeanings,
  ohms,
  type Port,
  ratio,
  units,
  volts,
  type Watts,
  watts,
} from '@fieldpair/shared';
import type { Across, AtMost, Breaks, Draws, Expects, Quantity, Reads, Supplies } from '../generated/reader.js';
import type { Notes } from './notes.js';
import { quantityOf } from './quantities.js';
import { wordOf } from './words.js';

/** Above this nothing is extra-low voltage, and this language plans nothing (IEC 61140: 50 V ac, 120 V dc). */
const voltageBounds = { above: 0, to: 120 };
const resistances = ['kohm', 'ohm'];

type Amount = { readonly amperes: Amperes } | { readonly watts: Watts };

/** A current or a power, told apart by the unit; a report asks for either where it is neither. */
function amountOf(quantity: Quantity | undefined, notes: Notes): Amount | undefined {
  const measured = units.get(quantity?.unit?.text ?? '')?.dimension;
  const dimension = measured === 'power' ? 'power' : 'current';
  const value = quantityOf(quantity, dimension, notes, { above: 0, to: 1e4 }, ['A', 'mA', 'W', 'VA']);
  if (value === undefined) return undefined;
  return dimension === 'power' ? { watts: watts(value) } : { amperes: amperes(value) };
}

/** The source that a port is; undefined without a voltage. */
export function sourceOf(property: Supplies, notes: Notes): Port['supplies'] {
  const voltage = quantityOf(property.voltage, 'voltage', notes, voltageBounds, ['V']);
  const form = wordOf(property.form, ['ac', 'dc'], 'form of a supply', notes);
  const tolerance = quantityOf(property.tolerance, 'ratio', notes, { from: 0, to: 0.5 });
  const limit = amountOf(property.limit, notes);
  const marked = property.marked?.value;
  if (marked !== undefined && ![1, 2, 3].includes(marked)) {
    notes.report(
      'value-impossible',
      `there is no supply of class ${marked}; the classes are 1, 2 and 3`,
      notes.place(property.marked ?? property),
    );
  }
  if (voltage === undefined) return undefined;
  return {
    voltage: volts(voltage),
    ...(form && { form }),
    ...(tolerance !== undefined && { tolerance: ratio(tolerance) }),
    ...(limit && { limit }),
    ...(marked !== undefined && [1, 2, 3].includes(marked) && { class: marked }),
    place: notes.place(property),
  };
}

/** The load that a port is; undefined without an amount. */
export function drawOf(property: Draws, notes: Notes): Port['draws'] {
  const amount = amountOf(property.amount, notes);
  const form = wordOf(property.form, ['ac', 'dc'], 'form of a supply', notes);
  const least = quantityOf(property.low, 'voltage', notes, voltageBounds, ['V']);
  const most = quantityOf(property.high, 'voltage', notes, voltageBounds, ['V']);
  const bounds = inOrder(least, most, 'working voltages run', property, notes);
  if (!amount) return undefined;
  return {
    amount,
    ...(form && { form }),
    ...(bounds.low !== undefined && { least: volts(bounds.low) }),
    ...(bounds.high !== undefined && { most: volts(bounds.high) }),
    place: notes.place(property),
  };
}

/** A port's input with one more statement about it. */
export function inputWith(
  input: LoopInput | undefined,
  property: Expects | AtMost | Reads,
  notes: Notes,
): LoopInput | undefined {
  const known: LoopInput = input ?? { windows: [] };
  const place = notes.place(property);
  switch (property.type) {
    case 'Expects': {
      const resistance = quantityOf(property.resistance, 'resistance', notes, { above: 0 }, resistances);
      return resistance === undefined ? input : { ...known, resistor: { resistance: ohms(resistance), place } };
    }
    case 'AtMost':
      return atMost(known, property, notes);
    case 'Reads': {
      const window = windowOf(property, notes);
      if (!window || contradicts(known.windows, window, notes)) return input;
      return { ...known, windows: [...known.windows, window] };
    }
  }
}

function atMost(input: LoopInput, property: AtMost, notes: Notes): LoopInput {
  const place = notes.place(property);
  if (!property.contacts) {
    const resistance = quantityOf(property.amount, 'resistance', notes, { above: 0 }, ['ohm', 'kohm']);
    return resistance === undefined ? input : { ...input, mostCable: { resistance: ohms(resistance), place } };
  }
  const { amount } = property;
  if (amount?.value === undefined) return input;
  if (amount.unit || amount.negative || !Number.isInteger(amount.value) || amount.value < 1) {
    notes.report(
      'value-impossible',
      `${notes.textAt(amount)} is no number of contacts; write a whole number from 1 up`,
      notes.place(amount),
    );
    return input;
  }
  return { ...input, mostContacts: { count: amount.value, place } };
}

function windowOf(property: Reads, notes: Notes): LoopWindow | undefined {
  const meaning = wordOf(property.meaning, loopMeanings, 'reading of an input', notes);
  const above = quantityOf(property.low, 'resistance', notes, { from: 0 }, resistances);
  const below = quantityOf(property.high, 'resistance', notes, { above: 0 }, resistances);
  const bounds = inOrder(above, below, 'the resistances of a reading run', property, notes);
  if (!meaning || (bounds.low === undefined && bounds.high === undefined)) return undefined;
  return {
    meaning,
    ...(bounds.low !== undefined && { above: ohms(bounds.low) }),
    ...(bounds.high !== undefined && { below: ohms(bounds.high) }),
    place: notes.place(property),
  };
}

/** Reports a window in which an earlier one reads something else. */
function contradicts(windows: readonly LoopWindow[], window: LoopWindow, notes: Notes): boolean {
  const { above: low = 0, below: high = Number.POSITIVE_INFINITY } = window;
  const other = windows.find(
    ({ meaning, above = 0, below = Number.POSITIVE_INFINITY }) =>
      meaning !== window.meaning && above < high && low < below,
  );
  if (!other) return false;
  notes.report(
    'value-impossible',
    `${notes.textAt(window.place)} and ${notes.textAt(other.place)} overlap; one resistance has one reading`,
    window.place,
    { related: [{ message: 'the other reading is said here', place: other.place }] },
  );
  return true;
}

/** Both bounds when they are in order; neither, with a report, when they are not. */
function inOrder(
  low: number | undefined,
  high: number | undefined,
  what: string,
  spot: { readonly start: number; readonly end: number },
  notes: Notes,
): { readonly low?: number; readonly high?: number } {
  if (low !== undefined && high !== undefined && high <= low) {
    notes.report('value-impossible', `${what} from low to high; ${notes.textAt(spot)} does not`, notes.place(spot));
    return {};
  }
  return { ...(low !== undefined && { low }), ...(high !== undefined && { high }) };
}

/** How a contact lies in its loop. */
export function wiringOf(property: Breaks | Across, notes: Notes): ContactWiring | undefined {
  const place = notes.place(property);
  if (property.type === 'Across') {
    const through = quantityOf(property.through, 'resistance', notes, { above: 0 }, resistances);
    return { kind: 'across', ...(through !== undefined && { through: ohms(through) }), place };
  }
  if (!property.conductor) return undefined;
  const bridge = quantityOf(property.bridge, 'resistance', notes, { above: 0 }, resistances);
  const conductor = property.conductor === '+' ? 'plus' : 'minus';
  return { kind: 'breaks', conductor, ...(bridge !== undefined && { bridge: ohms(bridge) }), place };
}
