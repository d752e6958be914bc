import {
  amperes,
  type Cable,
  cableClasses,
  faradsPerMetre,
  ohms,
  ohmsPerMetre,
  ratio,
  squareMetres,
} from '@fieldpair/shared';
import type { CableDeclaration, Conductor } from '../generated/reader.js';
import type { Notes } from './notes.js';
import { quantityOf } from './quantities.js';
import { repeatedFixes, type Said } from './repeated.js';
import { wordOf } from './words.js';

type Draft = { -readonly [Key in keyof Cable]: Cable[Key] };

const conductorMakes = ['solid', 'stranded', 'tinned', 'fluoropolymer', 'pvc'] as const;
/** Gauges that field cables come in; the formula of the gauge holds beyond, the trade does not go there. */
const gauges = { from: 0, to: 40 };

/** A cable of the catalogue. What its text leaves out is absent. */
export function buildCable(declaration: CableDeclaration, notes: Notes): Cable | undefined {
  const name = declaration.name?.text;
  if (name === undefined || !declaration.name) return undefined;
  const draft: Draft = { name, place: notes.place(declaration.name), colours: [] };
  if (declaration.label?.text !== undefined) draft.label = declaration.label.text;
  const documentation = notes.documentationAbove(declaration);
  if (documentation !== undefined) draft.documentation = documentation;
  const seen = new Map<string, Said>();
  for (const property of declaration.properties) {
    const said = { text: notes.textAt(property), place: notes.place(property) };
    const first = seen.get(property.type);
    if (first) {
      const message = `cable ${name} says this twice; remove one of the two: ${said.text}`;
      notes.report('statement-repeated', message, said.place, { at: name, fixes: () => repeatedFixes(first, said) });
      continue;
    }
    seen.set(property.type, said);
    switch (property.type) {
      case 'Conductor':
        readConductor(property, draft, notes);
        break;
      case 'Twist': {
        if (property.untwisted) draft.pairs = 0;
        else if (property.pairs?.value !== undefined) draft.pairs = property.pairs.value;
        break;
      }
      case 'CableShield': {
        const words = property.make.map((word) =>
          wordOf(word, ['foil', 'braid', 'none', 'drain'], 'kind of shield', notes),
        );
        const kinds = (['foil', 'braid'] as const).filter((kind) => words.includes(kind));
        if (kinds.length) draft.shield = kinds.join(' ') as 'foil' | 'braid' | 'foil braid';
        else if (words.includes('none')) draft.shield = 'none';
        if (words.includes('drain')) draft.drain = true;
        break;
      }
      case 'CableClass': {
        const name = wordOf(property.name, cableClasses, 'class of cable', notes);
        if (name) draft.class = name;
        break;
      }
      case 'Impedance': {
        const value = quantityOf(property.value, 'resistance', notes, { above: 0, to: 1e4 });
        if (value !== undefined) draft.impedance = ohms(value);
        break;
      }
      case 'Capacitance': {
        const value = quantityOf(property.value, 'capacitance per length', notes, { above: 0 });
        if (value !== undefined) draft.capacitance = faradsPerMetre(value);
        break;
      }
      case 'Velocity': {
        const value = quantityOf(property.value, 'ratio', notes, { above: 0, to: 1 });
        if (value !== undefined) draft.velocity = ratio(value);
        break;
      }
      case 'Resistance': {
        const value = quantityOf(property.value, 'resistance per length', notes, { from: 0 });
        if (value !== undefined) draft.resistance = ohmsPerMetre(value);
        break;
      }
      case 'Carries': {
        const value = quantityOf(property.current, 'current', notes, { above: 0, to: 1000 }, ['A', 'mA']);
        if (value !== undefined) draft.carries = amperes(value);
        break;
      }
      case 'CableColours':
        draft.colours = property.colours.flatMap(({ text }) => text ?? []);
        break;
    }
  }
  return draft;
}

function readConductor({ size, make }: Conductor, draft: Draft, notes: Notes): void {
  const unit = size?.unit?.text;
  if (unit === 'mm2') {
    const area = quantityOf(size, 'area', notes, { above: 0, to: 1e-3 });
    if (area !== undefined) draft.area = squareMetres(area);
  } else {
    const gauge = quantityOf(size, 'gauge', notes, gauges, ['AWG', 'mm2']);
    if (gauge !== undefined) draft.gauge = gauge;
  }
  for (const word of make) {
    const kind = wordOf(word, conductorMakes, 'make of conductor', notes);
    if (kind === 'tinned') draft.tinned = true;
    else if (kind === 'fluoropolymer' || kind === 'pvc') draft.insulation = kind;
    else if (kind) draft.stranding = kind;
  }
}
