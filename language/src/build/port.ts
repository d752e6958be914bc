/** The properties of a port, one by one. */
import {
  type BusKind,
  bitsPerSecond,
  type Fix,
  farads,
  type Ohms,
  ohms,
  type Port,
  seconds,
  type Termination,
  type Volts,
  volts,
} from '@fieldpair/shared';
import type { BiasResistors, Name, PortProperty, Quantity } from '../generated/reader.js';
import { addressCoding } from './address-coding.js';
import type { Notes } from './notes.js';
import { quantityOf } from './quantities.js';
import { drawOf, inputWith, sourceOf } from './two-wire.js';
import { kindOf, wordOf } from './words.js';

export type PortDraft = { -readonly [Key in keyof Port]: Port[Key] };

/** The supply of a bias network whose text names none: 5 V, as the Modbus serial line guide V1.02, 3.4.6 has it. */
const usualBiasSupply = volts(5);

export function readPortProperty(
  property: PortProperty,
  draft: PortDraft,
  revisionOf: (used: Name) => string | undefined,
  notes: Notes,
): void {
  switch (property.type) {
    case 'Terminals': {
      const names = { '+': 'plus', '-': 'minus', shield: 'shield', common: 'common' } as const;
      const terminals: { plus?: string; minus?: string; shield?: string; common?: string } = {};
      for (const { role, mark } of property.terminals)
        if (role && mark?.text !== undefined) terminals[names[role]] = mark.text;
      draft.terminals = terminals;
      break;
    }
    case 'Speaks':
      draft.speaks = property.kinds
        .map((word) => kindOf(word, notes))
        .filter((kind): kind is BusKind => kind !== undefined);
      break;
    case 'Polarity': {
      const polarity = wordOf(property.value, ['required', 'free'], 'polarity', notes);
      if (polarity) draft.polarity = polarity;
      break;
    }
    case 'Load': {
      const share = (property.numerator ?? 0) / (property.denominator ?? 1);
      if (Number.isFinite(share) && 0 <= share && share <= 32) draft.unitLoad = share;
      else
        notes.report(
          'value-impossible',
          `${notes.textAt(property)} is no share of a unit load; write 1, 1/2, 1/4 or 1/8`,
          notes.place(property),
        );
      break;
    }
    case 'Capacitance': {
      const value = quantityOf(property.value, 'capacitance', notes, { from: 0 });
      if (value !== undefined) draft.capacitance = farads(value);
      break;
    }
    case 'Resistance': {
      const value = quantityOf(property.value, 'resistance', notes, { above: 0 }, ['kohm', 'ohm']);
      if (value !== undefined) draft.resistance = ohms(value);
      break;
    }
    case 'PortTerminator': {
      const termination = terminationOf(property.resistance, property.capacitance, notes);
      if (termination && property.means) draft.terminator = { mode: property.means, ...termination };
      break;
    }
    case 'PortBias': {
      if (property.needed) draft.needsBias = true;
      const resistors = biasOf(property.resistors, notes);
      if (resistors && property.means) draft.bias = { mode: property.means, ...resistors };
      break;
    }
    case 'PortAddress': {
      const means = wordOf(property.means, ['dial', 'switches', 'software'], 'way to set an address', notes);
      const low = property.low?.value ?? 0;
      const high = property.high?.value ?? 255;
      if (low > high)
        notes.report(
          'value-impossible',
          `an address range runs from low to high; ${notes.textAt(property)} does not`,
          notes.place(property),
          { fixes: () => [turnedRange(property, notes)] },
        );
      else if (means) draft.address = { means, low, high, ...addressCoding(property, means, high, notes) };
      break;
    }
    case 'Rates':
      draft.rates = property.rates.flatMap((rate) => {
        const value = quantityOf(rate, 'rate', notes, { above: 0 });
        return value === undefined ? [] : [bitsPerSecond(value)];
      });
      break;
    case 'Edge': {
      const time = quantityOf(property.time, 'time', notes, { above: 0 }, ['ns', 'us']);
      if (time !== undefined) draft.edge = seconds(time);
      break;
    }
    case 'Delay': {
      const time = quantityOf(property.time, 'time', notes, { from: 0 }, ['ns', 'us']);
      if (time !== undefined) draft.delay = seconds(time);
      break;
    }
    case 'Reserved': {
      const revisions = property.revisions.flatMap((name) => revisionOf(name) ?? []);
      const reason = property.reason?.text;
      // Unknown revisions have their finding; with none left the port would wrongly be reserved on all.
      if (property.revisions.length && !revisions.length) break;
      draft.reserved = { revisions, place: notes.place(property), ...(reason === undefined ? {} : { reason }) };
      break;
    }
    case 'Twin': {
      const reason = property.reason?.text;
      if (property.port?.text === undefined) break;
      draft.twinOf = {
        port: property.port.text,
        place: notes.place(property),
        ...(reason === undefined ? {} : { reason }),
      };
      break;
    }
    case 'Supplies': {
      const source = sourceOf(property, notes);
      if (source) draft.supplies = source;
      break;
    }
    case 'Draws': {
      const load = drawOf(property, notes);
      if (load) draft.draws = load;
      break;
    }
    case 'Normally':
      if (property.state) draft.contact = property.state;
      break;
    case 'Expects':
    case 'AtMost':
    case 'Reads': {
      const input = inputWith(draft.input, property, notes);
      if (input) draft.input = input;
      break;
    }
  }
}

/** An address range the other way round. */
function turnedRange({ low, high }: Extract<PortProperty, { type: 'PortAddress' }>, notes: Notes): Fix {
  const place = notes.place({ start: low?.start ?? 0, end: high?.end ?? 0 });
  const text = `${high?.value}..${low?.value}`;
  return { title: `Write ${text}`, safe: false, edits: [{ kind: 'write', place, text }] };
}

/** A terminator's values, or undefined when its resistance is missing or wrong. */
export function terminationOf(
  resistance: Quantity | undefined,
  capacitance: Quantity | undefined,
  notes: Notes,
): Termination | undefined {
  const value = quantityOf(resistance, 'resistance', notes, { above: 0 }, ['ohm', 'kohm']);
  const series = quantityOf(capacitance, 'capacitance', notes, { above: 0 }, ['nF', 'uF', 'pF']);
  if (value === undefined) return undefined;
  return { resistance: ohms(value), ...(series === undefined ? {} : { capacitance: farads(series) }) };
}

/** The resistors and the supply of a bias network. */
export function biasOf(
  resistors: BiasResistors | undefined,
  notes: Notes,
): { up: Ohms; down: Ohms; supply: Volts } | undefined {
  const up = quantityOf(resistors?.up, 'resistance', notes, { above: 0 }, ['ohm', 'kohm']);
  if (up === undefined) return undefined;
  const down = resistors?.down ? quantityOf(resistors.down, 'resistance', notes, { above: 0 }, ['ohm', 'kohm']) : up;
  const supply = resistors?.supply
    ? quantityOf(resistors.supply, 'voltage', notes, { above: 0, to: 60 }, ['V'])
    : usualBiasSupply;
  if (down === undefined || supply === undefined) return undefined;
  return { up: ohms(up), down: ohms(down), supply: volts(supply) };
}
