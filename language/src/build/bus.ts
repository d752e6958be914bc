/** One bus: from its declaration to landings, runs and what is said of it as a whole. */
import {
  type BitsPerSecond,
  type Bus,
  type BusBias,
  type BusKind,
  bitsPerSecond,
  type Cable,
  type Celsius,
  type CharacterFormat,
  canGuideNames,
  celsius,
  type LengthUnit,
  type Pen,
  type Place,
  type Ratio,
  type Run,
  ratio,
  type ShieldEarth,
  type Sourced,
} from '@fieldpair/shared';
import type { BusDeclaration, BusStatement, Waiver } from '../generated/reader.js';
import { none } from '../short-list.js';
import { fixedBias, readBias } from './bias.js';
import { Course } from './course.js';
import type { DoubleNodes } from './double-node.js';
import type { LandingDraft } from './landing-draft.js';
import { Landings } from './landings.js';
import type { NodeDraft } from './node-draft.js';
import type { Notes } from './notes.js';
import { terminationOf } from './port.js';
import { quantityOf } from './quantities.js';
import { repeatedFixes } from './repeated.js';
import type { CatalogueScope } from './scope.js';
import { kindOf, wordOf } from './words.js';

/** Has all properties from the start, so that every bus is laid out alike and the rules read them fast. */
class BusDraft implements Bus {
  label?: string;
  documentation?: string;
  kind?: BusKind;
  kindPlace?: Place;
  rate?: Sourced<BitsPerSecond>;
  ratePlace?: Place;
  format?: Sourced<CharacterFormat>;
  cable?: Cable;
  cablePlace?: Place;
  runs: readonly Run[] = none;
  pens: readonly Pen[] = none;
  areas: readonly Place[] = none;
  readonly earths: ShieldEarth[] = [];
  readonly biases: BusBias[] = [];
  guide?: NonNullable<Bus['guide']>;
  samplePoint?: Sourced<Ratio>;
  ambient?: Sourced<Celsius>;
  colours?: NonNullable<Bus['colours']>;
  lengthUnit: LengthUnit = 'm';
  damaged = false;
  unclear = false;
  biasUnclear = false;

  constructor(
    readonly index: number,
    readonly name: string,
    readonly place: Place,
    readonly blockPlace: Place,
    readonly endPlace: Place,
    readonly landings: readonly LandingDraft[],
  ) {}
}

export interface BuiltBus {
  readonly bus: Bus;
  /** What its text waives, for when the whole store is known. */
  readonly waivers: readonly Waiver[];
}

export function buildBus(
  declaration: BusDeclaration,
  index: number,
  nodes: ReadonlyMap<string, NodeDraft>,
  doubles: DoubleNodes<NodeDraft>,
  scope: CatalogueScope,
  notes: Notes,
): BuiltBus | undefined {
  const name = declaration.name?.text;
  if (!declaration.name || name === undefined) return undefined;
  const kind = kindOf(declaration.kind, notes);
  const cable = declaration.cable && scope.cable(declaration.cable, notes);
  const landings = new Landings(index, name, kind, nodes, doubles, notes);
  const end = declaration.end - (notes.source.text[declaration.end - 1] === '}' ? 1 : 0);
  const place = notes.place(declaration.name);
  const draft = new BusDraft(index, name, place, notes.place(declaration), notes.between(end, end), landings.all);
  const course = new Course(name, landings, cable, scope, notes);
  course.follow(declaration.statements);
  draft.runs = course.runs;
  draft.pens = course.pens;
  draft.areas = course.areas;
  draft.lengthUnit = course.lengthUnit;
  draft.damaged = course.damaged || notes.isDamaged(declaration);
  draft.unclear = course.unclear || landings.unclear;
  if (declaration.label?.text !== undefined) draft.label = declaration.label.text;
  const documentation = notes.documentationAbove(declaration);
  if (documentation !== undefined) draft.documentation = documentation;
  if (kind && declaration.kind) {
    draft.kind = kind;
    draft.kindPlace = notes.place(declaration.kind);
  }
  if (declaration.rate) {
    const rate = quantityOf(declaration.rate, 'rate', notes, { above: 0, to: 1e10 });
    draft.ratePlace = notes.place(declaration.rate);
    if (rate !== undefined) draft.rate = { value: bitsPerSecond(rate), place: draft.ratePlace };
    else draft.unclear = true;
  }
  if (declaration.format?.text !== undefined) {
    draft.format = { value: formatOf(declaration.format.text), place: notes.place(declaration.format) };
  }
  if (declaration.cable) draft.cablePlace = notes.place(declaration.cable);
  if (cable) draft.cable = cable;
  const waivers: Waiver[] = [];
  for (const statement of course.remarks) {
    if (statement.type === 'Waiver') waivers.push(statement);
    else readRemark(statement, draft, landings, notes);
  }
  for (const landing of landings.biased) draft.biases.push(fixedBias(landing, landing.port!.bias!));
  return { bus: draft, waivers };
}

const formatOf = (text: string): CharacterFormat => ({
  dataBits: Number(text[0]) as 7 | 8,
  parity: text[1] as 'N' | 'E' | 'O',
  stopBits: Number(text[2]) as 1 | 2,
});

/** What is said of the bus as a whole: shield, bias, temperature, colours and the like. */
function readRemark(statement: BusStatement, draft: BusDraft, landings: Landings, notes: Notes): void {
  switch (statement.type) {
    case 'BusShield': {
      const place = notes.place(statement);
      const landing = landings.find(statement.at, 'its shield cannot be earthed there');
      const through = terminationOf(statement.resistance, statement.capacitance, notes);
      draft.earths.push({ ...(landing && { landing: landing.index }), ...(through && { through }), place });
      break;
    }
    case 'BusBias': {
      const bias = readBias(statement, draft.kind, landings, notes);
      if (bias) draft.biases.push(bias);
      else {
        draft.biasUnclear = true;
        draft.unclear = true;
      }
      break;
    }
    case 'Ambient': {
      if (isRepeated(draft, draft.ambient?.place, statement, notes)) break;
      const value = quantityOf(statement.temperature, 'temperature', notes, { from: -90, to: 200 }, ['degC', 'degF']);
      if (value !== undefined) draft.ambient = { value: celsius(value), place: notes.place(statement) };
      else draft.unclear = true;
      break;
    }
    case 'Guide': {
      if (isRepeated(draft, draft.guide?.place, statement, notes)) break;
      const name = wordOf(statement.name, canGuideNames, 'guide', notes);
      if (name) draft.guide = { value: name, place: notes.place(statement) };
      else draft.unclear = true;
      break;
    }
    case 'SamplePoint': {
      if (isRepeated(draft, draft.samplePoint?.place, statement, notes)) break;
      const value = quantityOf(statement.point, 'ratio', notes, { from: 0.5, to: 1 });
      if (value !== undefined) draft.samplePoint = { value: ratio(value), place: notes.place(statement) };
      else draft.unclear = true;
      break;
    }
    case 'BusColours': {
      if (isRepeated(draft, draft.colours?.place, statement, notes)) break;
      const names = { '+': 'plus', '-': 'minus', shield: 'shield', common: 'common' } as const;
      const colours: { plus?: string; minus?: string; shield?: string; common?: string } = {};
      for (const { role, colour } of statement.colours)
        if (role && colour?.text !== undefined) colours[names[role]] = colour.text;
      draft.colours = { ...colours, place: notes.place(statement) };
      const { plus, minus } = colours;
      if (plus !== undefined && plus === minus) {
        const message = `both wires of bus ${draft.name} are ${plus}; write the colour of each, so that they are told apart`;
        notes.report('statement-repeated', message, draft.colours.place, { bus: draft.name });
      }
      break;
    }
    default:
      break;
  }
}

/** Reports what was said of the bus before: the first counts. */
function isRepeated(
  { name: bus }: BusDraft,
  before: Place | undefined,
  statement: BusStatement,
  notes: Notes,
): boolean {
  if (!before) return false;
  const place = notes.place(statement);
  const first = { text: notes.textAt(before), place: before };
  const second = { text: notes.textAt(place), place };
  notes.report(
    'statement-repeated',
    `of bus ${bus} the text says ${second.text} here and ${first.text} before; keep the one that holds`,
    place,
    {
      bus,
      related: [{ message: `${first.text} is said here`, place: before }],
      fixes: () => repeatedFixes(first, second),
    },
  );
  return true;
}
