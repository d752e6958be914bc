/** One bus: from its statements to landings and runs. */
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
  type StoreNode,
} from '@fieldpair/shared';
import type { BusDeclaration, BusStatement } from '../generated/reader.js';
import { added, none } from '../short-list.js';
import { fixedBias, readBias } from './bias.js';
import type { LandingDraft } from './landing-draft.js';
import { Landings } from './landings.js';
import type { Notes } from './notes.js';
import { terminationOf } from './port.js';
import { quantityOf, writesFeet } from './quantities.js';
import { RunDraft, readRun } from './run.js';
import type { CatalogueScope } from './scope.js';
import { kindOf, wordOf } from './words.js';

/** Has all properties from the start, so that every bus is laid out alike and the rules read them fast. */
class BusDraft implements Bus {
  label?: string;
  documentation?: string;
  kind?: BusKind;
  kindPlace?: Place;
  rate?: Sourced<BitsPerSecond>;
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

  constructor(
    readonly index: number,
    readonly name: string,
    readonly place: Place,
    readonly blockPlace: Place,
    readonly endPlace: Place,
    readonly landings: readonly LandingDraft[],
  ) {}
}

export function buildBus(
  declaration: BusDeclaration,
  index: number,
  nodes: ReadonlyMap<string, StoreNode>,
  scope: CatalogueScope,
  notes: Notes,
): Bus | undefined {
  const name = declaration.name?.text;
  if (!declaration.name || name === undefined) return undefined;
  const kind = kindOf(declaration.kind, notes);
  const cable = declaration.cable && scope.cable(declaration.cable, notes);
  const landings = new Landings(name, kind, nodes, notes);
  const end = declaration.end - (notes.source.text[declaration.end - 1] === '}' ? 1 : 0);
  const place = notes.place(declaration.name);
  const draft = new BusDraft(index, name, place, notes.place(declaration), notes.between(end, end), landings.all);
  layCourse(declaration, draft, landings, cable, scope, notes);
  draft.lengthUnit = lengthUnitOf(declaration);
  if (notes.isDamaged(declaration)) draft.damaged = true;
  if (declaration.label?.text !== undefined) draft.label = declaration.label.text;
  const documentation = notes.documentationAbove(declaration);
  if (documentation !== undefined) draft.documentation = documentation;
  if (kind && declaration.kind) {
    draft.kind = kind;
    draft.kindPlace = notes.place(declaration.kind);
  }
  if (declaration.rate) {
    const rate = quantityOf(declaration.rate, 'rate', notes, { above: 0, to: 1e10 });
    if (rate !== undefined) draft.rate = { value: bitsPerSecond(rate), place: notes.place(declaration.rate) };
  }
  if (declaration.format?.text !== undefined) {
    draft.format = { value: formatOf(declaration.format.text), place: notes.place(declaration.format) };
  }
  if (declaration.cable) draft.cablePlace = notes.place(declaration.cable);
  if (cable) draft.cable = cable;
  readRemarks(declaration, draft, landings, notes);
  return draft;
}

const formatOf = (text: string): CharacterFormat => ({
  dataBits: Number(text[0]) as 7 | 8,
  parity: text[1] as 'N' | 'E' | 'O',
  stopBits: Number(text[2]) as 1 | 2,
});

/** The unit that most lengths are written in; the first one's where it is even. */
function lengthUnitOf(declaration: BusDeclaration): LengthUnit {
  let balance = 0;
  let first: boolean | undefined;
  for (const statement of declaration.statements) {
    if (statement.type !== 'Run') continue;
    const feet = writesFeet(statement.length);
    if (feet === undefined) continue;
    first ??= feet;
    balance += feet ? 1 : -1;
  }
  return balance > 0 || (balance === 0 && first) ? 'ft' : 'm';
}

/** Follows the pen through `from`, runs and taps. */
function layCourse(
  declaration: BusDeclaration,
  draft: BusDraft,
  landings: Landings,
  busCable: Cable | undefined,
  scope: CatalogueScope,
  notes: Notes,
): void {
  const runs: Run[] = [];
  const pens: Pen[] = [];
  const areas: Place[] = [];
  let area: Sourced<string> | undefined;
  let damaged = false;
  let pen: LandingDraft | undefined;
  for (const statement of declaration.statements) {
    if (statement.type === 'From') {
      const place = notes.between(statement.start, statement.end);
      pen = statement.landing && landings.visit(statement.landing, 'from', place, area);
      if (pen) pens.push({ landing: pen.index, place });
      else damaged = true;
    } else if (statement.type === 'Area') {
      const place = notes.place(statement);
      areas.push(place);
      const name = statement.name?.text ?? '';
      // An empty name ends an area without beginning another.
      area = name.trim() === '' ? undefined : { value: name, place };
    } else if (statement.type === 'Run') {
      const place = notes.between(statement.start, statement.end);
      const target = statement.landing && landings.visit(statement.landing, statement.tap ? 'tap' : 'to', place, area);
      if (statement.landing && !target) damaged = true;
      if (!pen) {
        // Nothing was landed on yet: the text lacks its first `from`.
        if (!damaged) {
          notes.report(
            'pen-missing',
            `this run starts nowhere; write from LANDING before the first run of bus ${declaration.name?.text ?? ''}`,
            place,
            { bus: declaration.name?.text ?? '' },
          );
        }
        damaged = true;
        if (!statement.tap) pen = target;
        continue;
      }
      const run = new RunDraft(runs.length, pen.index, place, statement.tap);
      if (target) run.to = target.index;
      if (!readRun(statement, run, busCable, scope, notes)) damaged = true;
      runs.push(run);
      if (!run.spare) {
        pen.runs = added(pen.runs, run.index);
        if (target && target !== pen) target.runs = added(target.runs, run.index);
        if (!statement.tap && target) pen = target;
      }
    }
  }
  draft.runs = runs;
  draft.pens = pens;
  draft.areas = areas;
  draft.damaged = damaged;
}

/** What is said of the bus as a whole, once all its landings are known. */
function readRemarks(declaration: BusDeclaration, draft: BusDraft, landings: Landings, notes: Notes): void {
  // Just this loop, of which there are many rounds: V8 takes long to optimise what each kind of remark comes to.
  for (const statement of declaration.statements) {
    if (statement.type !== 'Run' && statement.type !== 'From') readRemark(statement, draft, landings, notes);
  }
  for (const landing of landings.all) {
    if (landing.port?.bias?.mode === 'fixed') draft.biases.push(fixedBias(landing, landing.port.bias));
  }
}

/** Shield, bias, temperature, colours and the like. */
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
      else draft.unclear = true;
      break;
    }
    case 'Ambient': {
      const value = quantityOf(statement.temperature, 'temperature', notes, { from: -90, to: 200 }, ['degC', 'degF']);
      if (value !== undefined) draft.ambient = { value: celsius(value), place: notes.place(statement) };
      else draft.unclear = true;
      break;
    }
    case 'Guide': {
      const name = wordOf(statement.name, canGuideNames, 'guide', notes);
      if (name) draft.guide = { value: name, place: notes.place(statement) };
      else draft.unclear = true;
      break;
    }
    case 'SamplePoint': {
      const value = quantityOf(statement.point, 'ratio', notes, { from: 0.5, to: 1 });
      if (value !== undefined) draft.samplePoint = { value: ratio(value), place: notes.place(statement) };
      else draft.unclear = true;
      break;
    }
    case 'BusColours': {
      const names = { '+': 'plus', '-': 'minus', shield: 'shield', common: 'common' } as const;
      const colours: { plus?: string; minus?: string; shield?: string; common?: string } = {};
      for (const { role, colour } of statement.colours)
        if (role && colour?.text !== undefined) colours[names[role]] = colour.text;
      draft.colours = { ...colours, place: notes.place(statement) };
      break;
    }
    default:
      break;
  }
}
