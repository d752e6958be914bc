// Generated from fieldpair.langium by `npm run generate`; do not edit.
import { unquote } from '../read/text-value.js';
import type { Tokens } from '../read/scanner.js';

/** Token numbers, in the order of the generated tests. */
export const tokenNumbers: ReadonlyMap<string, number> = new Map(["EOF","FEET_AND_INCHES","FRAMING","NUMBER","HYPHENATED","ID","STRING","'%'","'+'","','","'-'","'.'","'..'","'/'","':'","'above'","'across'","'address'","'ambient'","'at'","'because'","'below'","'beside'","'bias'","'breaks'","'bridged'","'built'","'bus'","'cable'","'capacitance'","'capacitor'","'carries'","'class'","'closed'","'colours'","'common'","'conductor'","'contacts'","'continued'","'cords'","'crossed'","'delay'","'device'","'draws'","'earthed'","'edge'","'expects'","'fixed'","'floating'","'from'","'fuse'","'impedance'","'import'","'in'","'indicator'","'limit'","'load'","'mains'","'mark'","'most'","'needed'","'network'","'node'","'normally'","'of'","'off'","'on'","'open'","'pairs'","'polarity'","'port'","'rates'","'reads'","'reserved'","'resistance'","'resistor'","'revision'","'role'","'sample'","'shield'","'source'","'spare'","'speaks'","'splice'","'store'","'supplies'","'switch'","'tap'","'terminals'","'terminate'","'terminator'","'through'","'to'","'twin'","'twisted'","'untwisted'","'velocity'","'waive'","'within'","'{'","'}'"].map((token, index) => [token, index]));

export interface Sheet {
  readonly type: 'Sheet';
  readonly start: number;
  readonly end: number;
  readonly imports: readonly Import[];
  readonly declarations: readonly Declaration[];
}

export interface Import {
  readonly type: 'Import';
  readonly start: number;
  readonly end: number;
  readonly path: Text | undefined;
}

export type Declaration = CableDeclaration | DeviceDeclaration | StoreDeclaration;

export interface CableDeclaration {
  readonly type: 'CableDeclaration';
  readonly start: number;
  readonly end: number;
  readonly name: Name | undefined;
  readonly label: Text | undefined;
  readonly properties: readonly CableProperty[];
}

export type CableProperty = Conductor | Twist | CableShield | CableClass | Impedance | Capacitance | Velocity | Resistance | CableColours | Carries;

export interface Conductor {
  readonly type: 'Conductor';
  readonly start: number;
  readonly end: number;
  readonly size: Quantity | undefined;
  readonly make: readonly Word[];
}

export interface Twist {
  readonly type: 'Twist';
  readonly start: number;
  readonly end: number;
  readonly pairs: Integer | undefined;
  readonly untwisted: boolean;
}

export interface CableShield {
  readonly type: 'CableShield';
  readonly start: number;
  readonly end: number;
  readonly make: readonly Word[];
}

export interface CableClass {
  readonly type: 'CableClass';
  readonly start: number;
  readonly end: number;
  readonly name: Word | undefined;
}

export interface Impedance {
  readonly type: 'Impedance';
  readonly start: number;
  readonly end: number;
  readonly value: Quantity | undefined;
}

export interface Capacitance {
  readonly type: 'Capacitance';
  readonly start: number;
  readonly end: number;
  readonly value: Quantity | undefined;
}

export interface Velocity {
  readonly type: 'Velocity';
  readonly start: number;
  readonly end: number;
  readonly value: Quantity | undefined;
}

export interface Resistance {
  readonly type: 'Resistance';
  readonly start: number;
  readonly end: number;
  readonly value: Quantity | undefined;
}

export interface CableColours {
  readonly type: 'CableColours';
  readonly start: number;
  readonly end: number;
  readonly colours: readonly Word[];
}

export interface Carries {
  readonly type: 'Carries';
  readonly start: number;
  readonly end: number;
  readonly current: Quantity | undefined;
}

export interface DeviceDeclaration {
  readonly type: 'DeviceDeclaration';
  readonly start: number;
  readonly end: number;
  readonly name: Name | undefined;
  readonly label: Text | undefined;
  readonly members: readonly DeviceMember[];
}

export type DeviceMember = Role | Revisions | PortDeclaration | Indicator | Mark;

export interface Role {
  readonly type: 'Role';
  readonly start: number;
  readonly end: number;
  readonly role: Word | undefined;
}

export interface Revisions {
  readonly type: 'Revisions';
  readonly start: number;
  readonly end: number;
  readonly names: readonly Name[];
}

export interface Indicator {
  readonly type: 'Indicator';
  readonly start: number;
  readonly end: number;
  readonly name: Name | undefined;
  readonly text: Text | undefined;
}

export interface Mark {
  readonly type: 'Mark';
  readonly start: number;
  readonly end: number;
  readonly text: Text | undefined;
}

export interface PortDeclaration {
  readonly type: 'PortDeclaration';
  readonly start: number;
  readonly end: number;
  readonly name: Name | undefined;
  readonly label: Text | undefined;
  readonly kind: Word | undefined;
  readonly properties: readonly PortProperty[];
}

export type PortProperty = Terminals | Speaks | Polarity | Load | Capacitance | Resistance | PortTerminator | PortBias | PortAddress | Rates | Edge | Delay | Reserved | Twin | Supplies | Draws | Normally | Expects | AtMost | Reads;

export interface Terminals {
  readonly type: 'Terminals';
  readonly start: number;
  readonly end: number;
  readonly terminals: readonly Terminal[];
}

export interface Terminal {
  readonly type: 'Terminal';
  readonly start: number;
  readonly end: number;
  readonly role: '+' | '-' | 'shield' | 'common' | undefined;
  readonly mark: Text | undefined;
}

export interface Speaks {
  readonly type: 'Speaks';
  readonly start: number;
  readonly end: number;
  readonly kinds: readonly Word[];
}

export interface Polarity {
  readonly type: 'Polarity';
  readonly start: number;
  readonly end: number;
  readonly value: Word | undefined;
}

export interface Load {
  readonly type: 'Load';
  readonly start: number;
  readonly end: number;
  readonly numerator: number | undefined;
  readonly denominator: number | undefined;
}

export interface PortTerminator {
  readonly type: 'PortTerminator';
  readonly start: number;
  readonly end: number;
  readonly means: 'switch' | 'fixed' | undefined;
  readonly resistance: Quantity | undefined;
  readonly capacitance: Quantity | undefined;
}

export interface PortBias {
  readonly type: 'PortBias';
  readonly start: number;
  readonly end: number;
  readonly needed: boolean;
  readonly means: 'switch' | 'fixed' | undefined;
  readonly resistors: BiasResistors | undefined;
}

export interface BiasResistors {
  readonly type: 'BiasResistors';
  readonly start: number;
  readonly end: number;
  readonly up: Quantity | undefined;
  readonly down: Quantity | undefined;
  readonly supply: Quantity | undefined;
}

export interface PortAddress {
  readonly type: 'PortAddress';
  readonly start: number;
  readonly end: number;
  readonly means: Word | undefined;
  readonly low: Integer | undefined;
  readonly high: Integer | undefined;
  readonly positions: Integer | undefined;
  readonly coding: readonly Word[];
}

export interface Rates {
  readonly type: 'Rates';
  readonly start: number;
  readonly end: number;
  readonly rates: readonly Quantity[];
}

export interface Edge {
  readonly type: 'Edge';
  readonly start: number;
  readonly end: number;
  readonly time: Quantity | undefined;
}

export interface Delay {
  readonly type: 'Delay';
  readonly start: number;
  readonly end: number;
  readonly time: Quantity | undefined;
}

export interface Reserved {
  readonly type: 'Reserved';
  readonly start: number;
  readonly end: number;
  readonly revisions: readonly Name[];
  readonly reason: Text | undefined;
}

export interface Twin {
  readonly type: 'Twin';
  readonly start: number;
  readonly end: number;
  readonly port: Name | undefined;
  readonly reason: Text | undefined;
}

export interface Supplies {
  readonly type: 'Supplies';
  readonly start: number;
  readonly end: number;
  readonly voltage: Quantity | undefined;
  readonly form: Word | undefined;
  readonly tolerance: Quantity | undefined;
  readonly limit: Quantity | undefined;
  readonly marked: Integer | undefined;
}

export interface Draws {
  readonly type: 'Draws';
  readonly start: number;
  readonly end: number;
  readonly amount: Quantity | undefined;
  readonly form: Word | undefined;
  readonly low: Quantity | undefined;
  readonly high: Quantity | undefined;
}

export interface Normally {
  readonly type: 'Normally';
  readonly start: number;
  readonly end: number;
  readonly state: 'closed' | 'open' | undefined;
}

export interface Expects {
  readonly type: 'Expects';
  readonly start: number;
  readonly end: number;
  readonly resistance: Quantity | undefined;
}

export interface AtMost {
  readonly type: 'AtMost';
  readonly start: number;
  readonly end: number;
  readonly amount: Quantity | undefined;
  readonly contacts: boolean;
  readonly cable: boolean;
}

export interface Reads {
  readonly type: 'Reads';
  readonly start: number;
  readonly end: number;
  readonly meaning: Word | undefined;
  readonly low: Quantity | undefined;
  readonly high: Quantity | undefined;
}

export interface StoreDeclaration {
  readonly type: 'StoreDeclaration';
  readonly start: number;
  readonly end: number;
  readonly name: Name | undefined;
  readonly continued: boolean;
  readonly label: Text | undefined;
  readonly members: readonly StoreMember[];
}

export type StoreMember = NodeDeclaration | NetworkDeclaration | BusDeclaration | Waiver;

export interface NodeDeclaration {
  readonly type: 'NodeDeclaration';
  readonly start: number;
  readonly end: number;
  readonly name: Name | undefined;
  readonly label: Text | undefined;
  readonly device: Name | undefined;
  readonly revision: Name | undefined;
}

export interface NetworkDeclaration {
  readonly type: 'NetworkDeclaration';
  readonly start: number;
  readonly end: number;
  readonly name: Name | undefined;
  readonly label: Text | undefined;
  readonly members: readonly NetworkMember[];
}

export interface NetworkMember {
  readonly type: 'NetworkMember';
  readonly start: number;
  readonly end: number;
  readonly node: Name | undefined;
  readonly address: Integer | undefined;
}

export interface Waiver {
  readonly type: 'Waiver';
  readonly start: number;
  readonly end: number;
  readonly rule: Word | undefined;
  readonly at: LandingReference | undefined;
  readonly reason: Text | undefined;
}

export interface BusDeclaration {
  readonly type: 'BusDeclaration';
  readonly start: number;
  readonly end: number;
  readonly name: Name | undefined;
  readonly label: Text | undefined;
  readonly kind: Word | undefined;
  readonly rate: Quantity | undefined;
  readonly format: Format | undefined;
  readonly cable: Name | undefined;
  readonly statements: readonly BusStatement[];
}

export type BusStatement = From | Run | BusShield | BusBias | Ambient | SamplePoint | BusColours | Waiver;

export interface From {
  readonly type: 'From';
  readonly start: number;
  readonly end: number;
  readonly landing: Landing | undefined;
}

export interface Run {
  readonly type: 'Run';
  readonly start: number;
  readonly end: number;
  readonly tap: boolean;
  readonly length: Quantity | undefined;
  readonly options: readonly RunOption[];
  readonly landing: Landing | undefined;
}

export type RunOption = OnCable | Built | Cords | Spare | BesideMains | Fuse;

export interface OnCable {
  readonly type: 'OnCable';
  readonly start: number;
  readonly end: number;
  readonly cable: Name | undefined;
}

export interface Built {
  readonly type: 'Built';
  readonly start: number;
  readonly end: number;
  readonly length: Quantity | undefined;
}

export interface Cords {
  readonly type: 'Cords';
  readonly start: number;
  readonly end: number;
  readonly length: Quantity | undefined;
  readonly cable: Name | undefined;
}

export interface Spare {
  readonly type: 'Spare';
  readonly start: number;
  readonly end: number;
  readonly spare: boolean;
}

export interface BesideMains {
  readonly type: 'BesideMains';
  readonly start: number;
  readonly end: number;
  readonly mains: boolean;
}

export interface Fuse {
  readonly type: 'Fuse';
  readonly start: number;
  readonly end: number;
  readonly current: Quantity | undefined;
}

export interface Landing {
  readonly type: 'Landing';
  readonly start: number;
  readonly end: number;
  readonly splice: Name | undefined;
  readonly node: Name | undefined;
  readonly port: Name | undefined;
  readonly label: Text | undefined;
  readonly device: Name | undefined;
  readonly properties: readonly LandingProperty[];
}

export type LandingProperty = LandingAddress | Terminate | SwitchOff | Crossed | LandingShield | LandingRevision | Breaks | Across;

export interface LandingAddress {
  readonly type: 'LandingAddress';
  readonly start: number;
  readonly end: number;
  readonly address: Integer | undefined;
}

export interface Terminate {
  readonly type: 'Terminate';
  readonly start: number;
  readonly end: number;
  readonly switched: boolean;
  readonly resistance: Quantity | undefined;
  readonly capacitance: Quantity | undefined;
}

export interface SwitchOff {
  readonly type: 'SwitchOff';
  readonly start: number;
  readonly end: number;
  readonly off: boolean;
}

export interface Crossed {
  readonly type: 'Crossed';
  readonly start: number;
  readonly end: number;
  readonly crossed: boolean;
}

export interface LandingShield {
  readonly type: 'LandingShield';
  readonly start: number;
  readonly end: number;
  readonly treatment: 'through' | 'open' | 'floating' | undefined;
}

export interface LandingRevision {
  readonly type: 'LandingRevision';
  readonly start: number;
  readonly end: number;
  readonly revision: Name | undefined;
}

export interface Breaks {
  readonly type: 'Breaks';
  readonly start: number;
  readonly end: number;
  readonly conductor: '+' | '-' | undefined;
  readonly bridge: Quantity | undefined;
}

export interface Across {
  readonly type: 'Across';
  readonly start: number;
  readonly end: number;
  readonly across: boolean;
  readonly through: Quantity | undefined;
}

export interface LandingReference {
  readonly type: 'LandingReference';
  readonly start: number;
  readonly end: number;
  readonly node: Name | undefined;
  readonly port: Name | undefined;
}

export interface BusShield {
  readonly type: 'BusShield';
  readonly start: number;
  readonly end: number;
  readonly at: LandingReference | undefined;
  readonly resistance: Quantity | undefined;
  readonly capacitance: Quantity | undefined;
}

export interface BusBias {
  readonly type: 'BusBias';
  readonly start: number;
  readonly end: number;
  readonly at: LandingReference | undefined;
  readonly switched: boolean;
  readonly resistors: BiasResistors | undefined;
}

export interface Ambient {
  readonly type: 'Ambient';
  readonly start: number;
  readonly end: number;
  readonly temperature: Quantity | undefined;
}

export interface SamplePoint {
  readonly type: 'SamplePoint';
  readonly start: number;
  readonly end: number;
  readonly point: Quantity | undefined;
}

export interface BusColours {
  readonly type: 'BusColours';
  readonly start: number;
  readonly end: number;
  readonly colours: readonly ConductorColour[];
}

export interface ConductorColour {
  readonly type: 'ConductorColour';
  readonly start: number;
  readonly end: number;
  readonly role: '+' | '-' | 'shield' | 'common' | undefined;
  readonly colour: Word | undefined;
}

export interface Name {
  readonly type: 'Name';
  readonly start: number;
  readonly end: number;
  readonly text: string | undefined;
}

export interface Word {
  readonly type: 'Word';
  readonly start: number;
  readonly end: number;
  readonly text: string | undefined;
}

export interface Text {
  readonly type: 'Text';
  readonly start: number;
  readonly end: number;
  readonly text: string | undefined;
}

export interface Quantity {
  readonly type: 'Quantity';
  readonly start: number;
  readonly end: number;
  readonly negative: boolean;
  readonly value: number | undefined;
  readonly unit: Unit | undefined;
  readonly feet: string | undefined;
}

export interface Unit {
  readonly type: 'Unit';
  readonly start: number;
  readonly end: number;
  readonly text: string | 'in' | '%' | undefined;
  readonly per: string | undefined;
}

export interface Integer {
  readonly type: 'Integer';
  readonly start: number;
  readonly end: number;
  readonly negative: boolean;
  readonly value: number | undefined;
}

export interface Format {
  readonly type: 'Format';
  readonly start: number;
  readonly end: number;
  readonly text: string | undefined;
}

/** A text that the reader does not read; whoever asked lets Langium read it. */
class NotRead extends Error {}
const notRead = new NotRead();

const nothing: Tokens = { kinds: new Int32Array(2), starts: new Int32Array(2), ends: new Int32Array(2), count: 0 };
let source = '';
let input = nothing;
let position = 0;

function stop(): never {
  throw notRead;
}
function skip(token: number): void {
  if (input.kinds[position] !== token) stop();
  position++;
}
function keyword<T extends string>(token: number, spelling: T): T {
  skip(token);
  return spelling;
}
function word(token: number): string {
  skip(token);
  return source.slice(input.starts[position - 1], input.ends[position - 1]);
}
function quoted(token: number): string {
  return unquote(word(token));
}
function decimal(token: number): number {
  return Number(word(token));
}

/** Reads a whole text whose tokens were scanned, or gives undefined where anything in it is unexpected. */
export function readSheetTree(text: string, tokens: Tokens): Sheet | undefined {
  source = text;
  input = tokens;
  position = 0;
  try {
    const sheet = readSheet();
    return input.kinds[position] === 0 ? sheet : undefined;
  } catch (error) {
    if (error === notRead) return undefined;
    throw error;
  } finally {
    source = '';
    input = nothing;
  }
}

function readSheet(): Sheet {
  const start = input.starts[position] as number;
  const imports: (Import)[] = [];
  const declarations: (Declaration)[] = [];
  while (input.kinds[position] === 52 /* 'import' */ || input.kinds[position] === 28 /* 'cable' */ || input.kinds[position] === 42 /* 'device' */ || input.kinds[position] === 84 /* 'store' */) { if (input.kinds[position] === 52 /* 'import' */) { imports.push(readImport()); } else if (input.kinds[position] === 28 /* 'cable' */ || input.kinds[position] === 42 /* 'device' */ || input.kinds[position] === 84 /* 'store' */) { declarations.push(readDeclaration()); } else { stop(); } }
  return { type: 'Sheet', start, end: input.ends[position - 1] ?? 0, imports, declarations };
}

function readImport(): Import {
  const start = input.starts[position] as number;
  let path: Text | undefined;
  skip(52 /* 'import' */);
if (input.kinds[position] === 6 /* STRING */) { path = readText(); }
  return { type: 'Import', start, end: input.ends[position - 1] ?? 0, path };
}

function readDeclaration(): Declaration { if (input.kinds[position] === 28 /* 'cable' */) { return readCableDeclaration(); } else if (input.kinds[position] === 42 /* 'device' */) { return readDeviceDeclaration(); } else if (input.kinds[position] === 84 /* 'store' */) { return readStoreDeclaration(); } else { stop(); } return stop(); }

function readCableDeclaration(): CableDeclaration {
  const start = input.starts[position] as number;
  let name: Name | undefined;
  let label: Text | undefined;
  const properties: (CableProperty)[] = [];
  skip(28 /* 'cable' */);
name = readName();
if (input.kinds[position] === 6 /* STRING */) { label = readText(); }
skip(99 /* '{' */);
while (input.kinds[position] === 94 /* 'twisted' */ || input.kinds[position] === 95 /* 'untwisted' */ || input.kinds[position] === 79 /* 'shield' */ || input.kinds[position] === 36 /* 'conductor' */ || input.kinds[position] === 32 /* 'class' */ || input.kinds[position] === 51 /* 'impedance' */ || input.kinds[position] === 29 /* 'capacitance' */ || input.kinds[position] === 96 /* 'velocity' */ || input.kinds[position] === 74 /* 'resistance' */ || input.kinds[position] === 34 /* 'colours' */ || input.kinds[position] === 31 /* 'carries' */) { properties.push(readCableProperty()); }
skip(100 /* '}' */);
  return { type: 'CableDeclaration', start, end: input.ends[position - 1] ?? 0, name, label, properties };
}

function readCableProperty(): CableProperty { if (input.kinds[position] === 36 /* 'conductor' */) { return readConductor(); } else if (input.kinds[position] === 94 /* 'twisted' */ || input.kinds[position] === 95 /* 'untwisted' */) { return readTwist(); } else if (input.kinds[position] === 79 /* 'shield' */) { return readCableShield(); } else if (input.kinds[position] === 32 /* 'class' */) { return readCableClass(); } else if (input.kinds[position] === 51 /* 'impedance' */) { return readImpedance(); } else if (input.kinds[position] === 29 /* 'capacitance' */) { return readCapacitance(); } else if (input.kinds[position] === 96 /* 'velocity' */) { return readVelocity(); } else if (input.kinds[position] === 74 /* 'resistance' */) { return readResistance(); } else if (input.kinds[position] === 34 /* 'colours' */) { return readCableColours(); } else if (input.kinds[position] === 31 /* 'carries' */) { return readCarries(); } else { stop(); } return stop(); }

function readConductor(): Conductor {
  const start = input.starts[position] as number;
  let size: Quantity | undefined;
  const make: (Word)[] = [];
  skip(36 /* 'conductor' */);
size = readQuantity();
while (input.kinds[position] === 5 /* ID */ || input.kinds[position] === 4 /* HYPHENATED */) { make.push(readWord()); }
  return { type: 'Conductor', start, end: input.ends[position - 1] ?? 0, size, make };
}

function readTwist(): Twist {
  const start = input.starts[position] as number;
  let pairs: Integer | undefined;
  let untwisted = false;
  if (input.kinds[position] === 94 /* 'twisted' */) { skip(94 /* 'twisted' */);
skip(68 /* 'pairs' */);
pairs = readInteger(); } else if (input.kinds[position] === 95 /* 'untwisted' */) { keyword(95 /* 'untwisted' */, 'untwisted'); untwisted = true; } else { stop(); }
  return { type: 'Twist', start, end: input.ends[position - 1] ?? 0, pairs, untwisted };
}

function readCableShield(): CableShield {
  const start = input.starts[position] as number;
  const make: (Word)[] = [];
  skip(79 /* 'shield' */);
while (input.kinds[position] === 5 /* ID */ || input.kinds[position] === 4 /* HYPHENATED */) { make.push(readWord()); }
  return { type: 'CableShield', start, end: input.ends[position - 1] ?? 0, make };
}

function readCableClass(): CableClass {
  const start = input.starts[position] as number;
  let name: Word | undefined;
  skip(32 /* 'class' */);
name = readWord();
  return { type: 'CableClass', start, end: input.ends[position - 1] ?? 0, name };
}

function readImpedance(): Impedance {
  const start = input.starts[position] as number;
  let value: Quantity | undefined;
  skip(51 /* 'impedance' */);
value = readQuantity();
  return { type: 'Impedance', start, end: input.ends[position - 1] ?? 0, value };
}

function readCapacitance(): Capacitance {
  const start = input.starts[position] as number;
  let value: Quantity | undefined;
  skip(29 /* 'capacitance' */);
value = readQuantity();
  return { type: 'Capacitance', start, end: input.ends[position - 1] ?? 0, value };
}

function readVelocity(): Velocity {
  const start = input.starts[position] as number;
  let value: Quantity | undefined;
  skip(96 /* 'velocity' */);
value = readQuantity();
  return { type: 'Velocity', start, end: input.ends[position - 1] ?? 0, value };
}

function readResistance(): Resistance {
  const start = input.starts[position] as number;
  let value: Quantity | undefined;
  skip(74 /* 'resistance' */);
value = readQuantity();
  return { type: 'Resistance', start, end: input.ends[position - 1] ?? 0, value };
}

function readCableColours(): CableColours {
  const start = input.starts[position] as number;
  const colours: (Word)[] = [];
  skip(34 /* 'colours' */);
colours.push(readWord());
while (input.kinds[position] === 9 /* ',' */) { skip(9 /* ',' */);
colours.push(readWord()); }
  return { type: 'CableColours', start, end: input.ends[position - 1] ?? 0, colours };
}

function readCarries(): Carries {
  const start = input.starts[position] as number;
  let current: Quantity | undefined;
  skip(31 /* 'carries' */);
current = readQuantity();
  return { type: 'Carries', start, end: input.ends[position - 1] ?? 0, current };
}

function readDeviceDeclaration(): DeviceDeclaration {
  const start = input.starts[position] as number;
  let name: Name | undefined;
  let label: Text | undefined;
  const members: (DeviceMember)[] = [];
  skip(42 /* 'device' */);
name = readName();
if (input.kinds[position] === 6 /* STRING */) { label = readText(); }
skip(99 /* '{' */);
while (input.kinds[position] === 77 /* 'role' */ || input.kinds[position] === 76 /* 'revision' */ || input.kinds[position] === 70 /* 'port' */ || input.kinds[position] === 54 /* 'indicator' */ || input.kinds[position] === 58 /* 'mark' */) { members.push(readDeviceMember()); }
skip(100 /* '}' */);
  return { type: 'DeviceDeclaration', start, end: input.ends[position - 1] ?? 0, name, label, members };
}

function readDeviceMember(): DeviceMember { if (input.kinds[position] === 77 /* 'role' */) { return readRole(); } else if (input.kinds[position] === 76 /* 'revision' */) { return readRevisions(); } else if (input.kinds[position] === 70 /* 'port' */) { return readPortDeclaration(); } else if (input.kinds[position] === 54 /* 'indicator' */) { return readIndicator(); } else if (input.kinds[position] === 58 /* 'mark' */) { return readMark(); } else { stop(); } return stop(); }

function readRole(): Role {
  const start = input.starts[position] as number;
  let role: Word | undefined;
  skip(77 /* 'role' */);
role = readWord();
  return { type: 'Role', start, end: input.ends[position - 1] ?? 0, role };
}

function readRevisions(): Revisions {
  const start = input.starts[position] as number;
  const names: (Name)[] = [];
  skip(76 /* 'revision' */);
names.push(readName());
while (input.kinds[position] === 9 /* ',' */) { skip(9 /* ',' */);
names.push(readName()); }
  return { type: 'Revisions', start, end: input.ends[position - 1] ?? 0, names };
}

function readIndicator(): Indicator {
  const start = input.starts[position] as number;
  let name: Name | undefined;
  let text: Text | undefined;
  skip(54 /* 'indicator' */);
name = readName();
if (input.kinds[position] === 6 /* STRING */) { text = readText(); }
  return { type: 'Indicator', start, end: input.ends[position - 1] ?? 0, name, text };
}

function readMark(): Mark {
  const start = input.starts[position] as number;
  let text: Text | undefined;
  skip(58 /* 'mark' */);
text = readText();
  return { type: 'Mark', start, end: input.ends[position - 1] ?? 0, text };
}

function readPortDeclaration(): PortDeclaration {
  const start = input.starts[position] as number;
  let name: Name | undefined;
  let label: Text | undefined;
  let kind: Word | undefined;
  const properties: (PortProperty)[] = [];
  skip(70 /* 'port' */);
name = readName();
if (input.kinds[position] === 6 /* STRING */) { label = readText(); }
skip(14 /* ':' */);
kind = readWord();
if (input.kinds[position] === 99 /* '{' */) { skip(99 /* '{' */);
while (input.kinds[position] === 56 /* 'load' */ || input.kinds[position] === 29 /* 'capacitance' */ || input.kinds[position] === 74 /* 'resistance' */ || input.kinds[position] === 90 /* 'terminator' */ || input.kinds[position] === 23 /* 'bias' */ || input.kinds[position] === 73 /* 'reserved' */ || input.kinds[position] === 93 /* 'twin' */ || input.kinds[position] === 63 /* 'normally' */ || input.kinds[position] === 46 /* 'expects' */ || input.kinds[position] === 19 /* 'at' */ || input.kinds[position] === 82 /* 'speaks' */ || input.kinds[position] === 69 /* 'polarity' */ || input.kinds[position] === 17 /* 'address' */ || input.kinds[position] === 71 /* 'rates' */ || input.kinds[position] === 45 /* 'edge' */ || input.kinds[position] === 41 /* 'delay' */ || input.kinds[position] === 85 /* 'supplies' */ || input.kinds[position] === 43 /* 'draws' */ || input.kinds[position] === 72 /* 'reads' */ || input.kinds[position] === 88 /* 'terminals' */) { properties.push(readPortProperty()); }
skip(100 /* '}' */); }
  return { type: 'PortDeclaration', start, end: input.ends[position - 1] ?? 0, name, label, kind, properties };
}

function readPortProperty(): PortProperty { if (input.kinds[position] === 88 /* 'terminals' */) { return readTerminals(); } else if (input.kinds[position] === 82 /* 'speaks' */) { return readSpeaks(); } else if (input.kinds[position] === 69 /* 'polarity' */) { return readPolarity(); } else if (input.kinds[position] === 56 /* 'load' */) { return readLoad(); } else if (input.kinds[position] === 29 /* 'capacitance' */) { return readCapacitance(); } else if (input.kinds[position] === 74 /* 'resistance' */) { return readResistance(); } else if (input.kinds[position] === 90 /* 'terminator' */) { return readPortTerminator(); } else if (input.kinds[position] === 23 /* 'bias' */) { return readPortBias(); } else if (input.kinds[position] === 17 /* 'address' */) { return readPortAddress(); } else if (input.kinds[position] === 71 /* 'rates' */) { return readRates(); } else if (input.kinds[position] === 45 /* 'edge' */) { return readEdge(); } else if (input.kinds[position] === 41 /* 'delay' */) { return readDelay(); } else if (input.kinds[position] === 73 /* 'reserved' */) { return readReserved(); } else if (input.kinds[position] === 93 /* 'twin' */) { return readTwin(); } else if (input.kinds[position] === 85 /* 'supplies' */) { return readSupplies(); } else if (input.kinds[position] === 43 /* 'draws' */) { return readDraws(); } else if (input.kinds[position] === 63 /* 'normally' */) { return readNormally(); } else if (input.kinds[position] === 46 /* 'expects' */) { return readExpects(); } else if (input.kinds[position] === 19 /* 'at' */) { return readAtMost(); } else if (input.kinds[position] === 72 /* 'reads' */) { return readReads(); } else { stop(); } return stop(); }

function readTerminals(): Terminals {
  const start = input.starts[position] as number;
  const terminals: (Terminal)[] = [];
  skip(88 /* 'terminals' */);
do { terminals.push(readTerminal()); } while (input.kinds[position] === 8 /* '+' */ || input.kinds[position] === 10 /* '-' */ || input.kinds[position] === 79 /* 'shield' */ || input.kinds[position] === 35 /* 'common' */);
  return { type: 'Terminals', start, end: input.ends[position - 1] ?? 0, terminals };
}

function readTerminal(): Terminal {
  const start = input.starts[position] as number;
  let role: '+' | '-' | 'shield' | 'common' | undefined;
  let mark: Text | undefined;
  if (input.kinds[position] === 8 /* '+' */) { role = keyword(8 /* '+' */, '+'); } else if (input.kinds[position] === 10 /* '-' */) { role = keyword(10 /* '-' */, '-'); } else if (input.kinds[position] === 79 /* 'shield' */) { role = keyword(79 /* 'shield' */, 'shield'); } else if (input.kinds[position] === 35 /* 'common' */) { role = keyword(35 /* 'common' */, 'common'); } else { stop(); }
mark = readText();
  return { type: 'Terminal', start, end: input.ends[position - 1] ?? 0, role, mark };
}

function readSpeaks(): Speaks {
  const start = input.starts[position] as number;
  const kinds: (Word)[] = [];
  skip(82 /* 'speaks' */);
kinds.push(readWord());
while (input.kinds[position] === 9 /* ',' */) { skip(9 /* ',' */);
kinds.push(readWord()); }
  return { type: 'Speaks', start, end: input.ends[position - 1] ?? 0, kinds };
}

function readPolarity(): Polarity {
  const start = input.starts[position] as number;
  let value: Word | undefined;
  skip(69 /* 'polarity' */);
value = readWord();
  return { type: 'Polarity', start, end: input.ends[position - 1] ?? 0, value };
}

function readLoad(): Load {
  const start = input.starts[position] as number;
  let numerator: number | undefined;
  let denominator: number | undefined;
  skip(56 /* 'load' */);
numerator = decimal(3 /* NUMBER */);
if (input.kinds[position] === 13 /* '/' */) { skip(13 /* '/' */);
denominator = decimal(3 /* NUMBER */); }
  return { type: 'Load', start, end: input.ends[position - 1] ?? 0, numerator, denominator };
}

function readPortTerminator(): PortTerminator {
  const start = input.starts[position] as number;
  let means: 'switch' | 'fixed' | undefined;
  let resistance: Quantity | undefined;
  let capacitance: Quantity | undefined;
  skip(90 /* 'terminator' */);
if (input.kinds[position] === 86 /* 'switch' */) { means = keyword(86 /* 'switch' */, 'switch'); } else if (input.kinds[position] === 47 /* 'fixed' */) { means = keyword(47 /* 'fixed' */, 'fixed'); } else { stop(); }
resistance = readQuantity();
if (input.kinds[position] === 30 /* 'capacitor' */) { skip(30 /* 'capacitor' */);
capacitance = readQuantity(); }
  return { type: 'PortTerminator', start, end: input.ends[position - 1] ?? 0, means, resistance, capacitance };
}

function readPortBias(): PortBias {
  const start = input.starts[position] as number;
  let needed = false;
  let means: 'switch' | 'fixed' | undefined;
  let resistors: BiasResistors | undefined;
  skip(23 /* 'bias' */);
if (input.kinds[position] === 60 /* 'needed' */) { keyword(60 /* 'needed' */, 'needed'); needed = true; } else if (input.kinds[position] === 86 /* 'switch' */ || input.kinds[position] === 47 /* 'fixed' */) { if (input.kinds[position] === 86 /* 'switch' */) { means = keyword(86 /* 'switch' */, 'switch'); } else if (input.kinds[position] === 47 /* 'fixed' */) { means = keyword(47 /* 'fixed' */, 'fixed'); } else { stop(); }
resistors = readBiasResistors(); } else { stop(); }
  return { type: 'PortBias', start, end: input.ends[position - 1] ?? 0, needed, means, resistors };
}

function readBiasResistors(): BiasResistors {
  const start = input.starts[position] as number;
  let up: Quantity | undefined;
  let down: Quantity | undefined;
  let supply: Quantity | undefined;
  up = readQuantity();
if (input.kinds[position] === 92 /* 'to' */) { skip(92 /* 'to' */);
skip(8 /* '+' */);
down = readQuantity();
skip(92 /* 'to' */);
skip(10 /* '-' */); }
if (input.kinds[position] === 80 /* 'source' */) { skip(80 /* 'source' */);
supply = readQuantity(); }
  return { type: 'BiasResistors', start, end: input.ends[position - 1] ?? 0, up, down, supply };
}

function readPortAddress(): PortAddress {
  const start = input.starts[position] as number;
  let means: Word | undefined;
  let low: Integer | undefined;
  let high: Integer | undefined;
  let positions: Integer | undefined;
  const coding: (Word)[] = [];
  skip(17 /* 'address' */);
means = readWord();
if (input.kinds[position] === 10 /* '-' */ || input.kinds[position] === 3 /* NUMBER */) { low = readInteger();
skip(12 /* '..' */);
high = readInteger(); }
if (input.kinds[position] === 64 /* 'of' */) { skip(64 /* 'of' */);
positions = readInteger(); }
while (input.kinds[position] === 5 /* ID */ || input.kinds[position] === 4 /* HYPHENATED */) { coding.push(readWord()); }
  return { type: 'PortAddress', start, end: input.ends[position - 1] ?? 0, means, low, high, positions, coding };
}

function readRates(): Rates {
  const start = input.starts[position] as number;
  const rates: (Quantity)[] = [];
  skip(71 /* 'rates' */);
rates.push(readQuantity());
while (input.kinds[position] === 9 /* ',' */) { skip(9 /* ',' */);
rates.push(readQuantity()); }
  return { type: 'Rates', start, end: input.ends[position - 1] ?? 0, rates };
}

function readEdge(): Edge {
  const start = input.starts[position] as number;
  let time: Quantity | undefined;
  skip(45 /* 'edge' */);
time = readQuantity();
  return { type: 'Edge', start, end: input.ends[position - 1] ?? 0, time };
}

function readDelay(): Delay {
  const start = input.starts[position] as number;
  let time: Quantity | undefined;
  skip(41 /* 'delay' */);
time = readQuantity();
  return { type: 'Delay', start, end: input.ends[position - 1] ?? 0, time };
}

function readReserved(): Reserved {
  const start = input.starts[position] as number;
  const revisions: (Name)[] = [];
  let reason: Text | undefined;
  skip(73 /* 'reserved' */);
if (input.kinds[position] === 53 /* 'in' */) { skip(53 /* 'in' */);
revisions.push(readName());
while (input.kinds[position] === 9 /* ',' */) { skip(9 /* ',' */);
revisions.push(readName()); } }
if (input.kinds[position] === 6 /* STRING */) { reason = readText(); }
  return { type: 'Reserved', start, end: input.ends[position - 1] ?? 0, revisions, reason };
}

function readTwin(): Twin {
  const start = input.starts[position] as number;
  let port: Name | undefined;
  let reason: Text | undefined;
  skip(93 /* 'twin' */);
skip(64 /* 'of' */);
port = readName();
if (input.kinds[position] === 6 /* STRING */) { reason = readText(); }
  return { type: 'Twin', start, end: input.ends[position - 1] ?? 0, port, reason };
}

function readSupplies(): Supplies {
  const start = input.starts[position] as number;
  let voltage: Quantity | undefined;
  let form: Word | undefined;
  let tolerance: Quantity | undefined;
  let limit: Quantity | undefined;
  let marked: Integer | undefined;
  skip(85 /* 'supplies' */);
voltage = readQuantity();
if (input.kinds[position] === 5 /* ID */ || input.kinds[position] === 4 /* HYPHENATED */) { form = readWord(); }
if (input.kinds[position] === 98 /* 'within' */) { skip(98 /* 'within' */);
tolerance = readQuantity(); }
if (input.kinds[position] === 55 /* 'limit' */) { skip(55 /* 'limit' */);
limit = readQuantity(); }
if (input.kinds[position] === 32 /* 'class' */) { skip(32 /* 'class' */);
marked = readInteger(); }
  return { type: 'Supplies', start, end: input.ends[position - 1] ?? 0, voltage, form, tolerance, limit, marked };
}

function readDraws(): Draws {
  const start = input.starts[position] as number;
  let amount: Quantity | undefined;
  let form: Word | undefined;
  let low: Quantity | undefined;
  let high: Quantity | undefined;
  skip(43 /* 'draws' */);
amount = readQuantity();
if (input.kinds[position] === 5 /* ID */ || input.kinds[position] === 4 /* HYPHENATED */) { form = readWord(); }
if (input.kinds[position] === 15 /* 'above' */) { skip(15 /* 'above' */);
low = readQuantity(); }
if (input.kinds[position] === 21 /* 'below' */) { skip(21 /* 'below' */);
high = readQuantity(); }
  return { type: 'Draws', start, end: input.ends[position - 1] ?? 0, amount, form, low, high };
}

function readNormally(): Normally {
  const start = input.starts[position] as number;
  let state: 'closed' | 'open' | undefined;
  skip(63 /* 'normally' */);
if (input.kinds[position] === 33 /* 'closed' */) { state = keyword(33 /* 'closed' */, 'closed'); } else if (input.kinds[position] === 67 /* 'open' */) { state = keyword(67 /* 'open' */, 'open'); } else { stop(); }
  return { type: 'Normally', start, end: input.ends[position - 1] ?? 0, state };
}

function readExpects(): Expects {
  const start = input.starts[position] as number;
  let resistance: Quantity | undefined;
  skip(46 /* 'expects' */);
skip(75 /* 'resistor' */);
resistance = readQuantity();
  return { type: 'Expects', start, end: input.ends[position - 1] ?? 0, resistance };
}

function readAtMost(): AtMost {
  const start = input.starts[position] as number;
  let amount: Quantity | undefined;
  let contacts = false;
  let cable = false;
  skip(19 /* 'at' */);
skip(59 /* 'most' */);
amount = readQuantity();
if (input.kinds[position] === 37 /* 'contacts' */) { keyword(37 /* 'contacts' */, 'contacts'); contacts = true; } else if (input.kinds[position] === 64 /* 'of' */) { skip(64 /* 'of' */);
keyword(28 /* 'cable' */, 'cable'); cable = true; } else { stop(); }
  return { type: 'AtMost', start, end: input.ends[position - 1] ?? 0, amount, contacts, cable };
}

function readReads(): Reads {
  const start = input.starts[position] as number;
  let meaning: Word | undefined;
  let low: Quantity | undefined;
  let high: Quantity | undefined;
  skip(72 /* 'reads' */);
meaning = readWord();
if (input.kinds[position] === 15 /* 'above' */) { skip(15 /* 'above' */);
low = readQuantity(); }
if (input.kinds[position] === 21 /* 'below' */) { skip(21 /* 'below' */);
high = readQuantity(); }
  return { type: 'Reads', start, end: input.ends[position - 1] ?? 0, meaning, low, high };
}

function readStoreDeclaration(): StoreDeclaration {
  const start = input.starts[position] as number;
  let name: Name | undefined;
  let continued = false;
  let label: Text | undefined;
  const members: (StoreMember)[] = [];
  skip(84 /* 'store' */);
name = readName();
if (input.kinds[position] === 38 /* 'continued' */) { keyword(38 /* 'continued' */, 'continued'); continued = true; }
if (input.kinds[position] === 6 /* STRING */) { label = readText(); }
skip(99 /* '{' */);
while (input.kinds[position] === 62 /* 'node' */ || input.kinds[position] === 61 /* 'network' */ || input.kinds[position] === 27 /* 'bus' */ || input.kinds[position] === 97 /* 'waive' */) { members.push(readStoreMember()); }
skip(100 /* '}' */);
  return { type: 'StoreDeclaration', start, end: input.ends[position - 1] ?? 0, name, continued, label, members };
}

function readStoreMember(): StoreMember { if (input.kinds[position] === 62 /* 'node' */) { return readNodeDeclaration(); } else if (input.kinds[position] === 61 /* 'network' */) { return readNetworkDeclaration(); } else if (input.kinds[position] === 27 /* 'bus' */) { return readBusDeclaration(); } else if (input.kinds[position] === 97 /* 'waive' */) { return readWaiver(); } else { stop(); } return stop(); }

function readNodeDeclaration(): NodeDeclaration {
  const start = input.starts[position] as number;
  let name: Name | undefined;
  let label: Text | undefined;
  let device: Name | undefined;
  let revision: Name | undefined;
  skip(62 /* 'node' */);
name = readName();
if (input.kinds[position] === 6 /* STRING */) { label = readText(); }
if (input.kinds[position] === 14 /* ':' */) { skip(14 /* ':' */);
device = readName(); }
if (input.kinds[position] === 76 /* 'revision' */) { skip(76 /* 'revision' */);
revision = readName(); }
  return { type: 'NodeDeclaration', start, end: input.ends[position - 1] ?? 0, name, label, device, revision };
}

function readNetworkDeclaration(): NetworkDeclaration {
  const start = input.starts[position] as number;
  let name: Name | undefined;
  let label: Text | undefined;
  const members: (NetworkMember)[] = [];
  skip(61 /* 'network' */);
name = readName();
if (input.kinds[position] === 6 /* STRING */) { label = readText(); }
skip(99 /* '{' */);
if (input.kinds[position] === 5 /* ID */ || input.kinds[position] === 6 /* STRING */) { members.push(readNetworkMember());
while (input.kinds[position] === 9 /* ',' */) { skip(9 /* ',' */);
members.push(readNetworkMember()); } }
skip(100 /* '}' */);
  return { type: 'NetworkDeclaration', start, end: input.ends[position - 1] ?? 0, name, label, members };
}

function readNetworkMember(): NetworkMember {
  const start = input.starts[position] as number;
  let node: Name | undefined;
  let address: Integer | undefined;
  node = readName();
if (input.kinds[position] === 17 /* 'address' */) { skip(17 /* 'address' */);
address = readInteger(); }
  return { type: 'NetworkMember', start, end: input.ends[position - 1] ?? 0, node, address };
}

function readWaiver(): Waiver {
  const start = input.starts[position] as number;
  let rule: Word | undefined;
  let at: LandingReference | undefined;
  let reason: Text | undefined;
  skip(97 /* 'waive' */);
rule = readWord();
if (input.kinds[position] === 19 /* 'at' */) { skip(19 /* 'at' */);
at = readLandingReference(); }
if (input.kinds[position] === 20 /* 'because' */) { skip(20 /* 'because' */);
reason = readText(); }
  return { type: 'Waiver', start, end: input.ends[position - 1] ?? 0, rule, at, reason };
}

function readBusDeclaration(): BusDeclaration {
  const start = input.starts[position] as number;
  let name: Name | undefined;
  let label: Text | undefined;
  let kind: Word | undefined;
  let rate: Quantity | undefined;
  let format: Format | undefined;
  let cable: Name | undefined;
  const statements: (BusStatement)[] = [];
  skip(27 /* 'bus' */);
name = readName();
if (input.kinds[position] === 6 /* STRING */) { label = readText(); }
skip(14 /* ':' */);
kind = readWord();
if (input.kinds[position] === 10 /* '-' */ || input.kinds[position] === 3 /* NUMBER */ || input.kinds[position] === 1 /* FEET_AND_INCHES */) { rate = readQuantity(); }
if (input.kinds[position] === 2 /* FRAMING */) { format = readFormat(); }
if (input.kinds[position] === 66 /* 'on' */) { skip(66 /* 'on' */);
cable = readName(); }
skip(99 /* '{' */);
while (input.kinds[position] === 79 /* 'shield' */ || input.kinds[position] === 23 /* 'bias' */ || input.kinds[position] === 78 /* 'sample' */ || input.kinds[position] === 97 /* 'waive' */ || input.kinds[position] === 87 /* 'tap' */ || input.kinds[position] === 10 /* '-' */ || input.kinds[position] === 3 /* NUMBER */ || input.kinds[position] === 1 /* FEET_AND_INCHES */ || input.kinds[position] === 18 /* 'ambient' */ || input.kinds[position] === 49 /* 'from' */ || input.kinds[position] === 34 /* 'colours' */) { statements.push(readBusStatement()); }
skip(100 /* '}' */);
  return { type: 'BusDeclaration', start, end: input.ends[position - 1] ?? 0, name, label, kind, rate, format, cable, statements };
}

function readBusStatement(): BusStatement { if (input.kinds[position] === 49 /* 'from' */) { return readFrom(); } else if (input.kinds[position] === 87 /* 'tap' */ || input.kinds[position] === 10 /* '-' */ || input.kinds[position] === 3 /* NUMBER */ || input.kinds[position] === 1 /* FEET_AND_INCHES */) { return readRun(); } else if (input.kinds[position] === 79 /* 'shield' */) { return readBusShield(); } else if (input.kinds[position] === 23 /* 'bias' */) { return readBusBias(); } else if (input.kinds[position] === 18 /* 'ambient' */) { return readAmbient(); } else if (input.kinds[position] === 78 /* 'sample' */) { return readSamplePoint(); } else if (input.kinds[position] === 34 /* 'colours' */) { return readBusColours(); } else if (input.kinds[position] === 97 /* 'waive' */) { return readWaiver(); } else { stop(); } return stop(); }

function readFrom(): From {
  const start = input.starts[position] as number;
  let landing: Landing | undefined;
  skip(49 /* 'from' */);
landing = readLanding();
  return { type: 'From', start, end: input.ends[position - 1] ?? 0, landing };
}

function readRun(): Run {
  const start = input.starts[position] as number;
  let tap = false;
  let length: Quantity | undefined;
  const options: (RunOption)[] = [];
  let landing: Landing | undefined;
  if (input.kinds[position] === 87 /* 'tap' */) { keyword(87 /* 'tap' */, 'tap'); tap = true; }
length = readQuantity();
while (input.kinds[position] === 81 /* 'spare' */ || input.kinds[position] === 22 /* 'beside' */ || input.kinds[position] === 66 /* 'on' */ || input.kinds[position] === 26 /* 'built' */ || input.kinds[position] === 39 /* 'cords' */ || input.kinds[position] === 50 /* 'fuse' */) { options.push(readRunOption()); }
if (input.kinds[position] === 92 /* 'to' */) { skip(92 /* 'to' */);
landing = readLanding(); }
  return { type: 'Run', start, end: input.ends[position - 1] ?? 0, tap, length, options, landing };
}

function readRunOption(): RunOption { if (input.kinds[position] === 66 /* 'on' */) { return readOnCable(); } else if (input.kinds[position] === 26 /* 'built' */) { return readBuilt(); } else if (input.kinds[position] === 39 /* 'cords' */) { return readCords(); } else if (input.kinds[position] === 81 /* 'spare' */) { return readSpare(); } else if (input.kinds[position] === 22 /* 'beside' */) { return readBesideMains(); } else if (input.kinds[position] === 50 /* 'fuse' */) { return readFuse(); } else { stop(); } return stop(); }

function readOnCable(): OnCable {
  const start = input.starts[position] as number;
  let cable: Name | undefined;
  skip(66 /* 'on' */);
cable = readName();
  return { type: 'OnCable', start, end: input.ends[position - 1] ?? 0, cable };
}

function readBuilt(): Built {
  const start = input.starts[position] as number;
  let length: Quantity | undefined;
  skip(26 /* 'built' */);
length = readQuantity();
  return { type: 'Built', start, end: input.ends[position - 1] ?? 0, length };
}

function readCords(): Cords {
  const start = input.starts[position] as number;
  let length: Quantity | undefined;
  let cable: Name | undefined;
  skip(39 /* 'cords' */);
length = readQuantity();
if (input.kinds[position] === 64 /* 'of' */) { skip(64 /* 'of' */);
cable = readName(); }
  return { type: 'Cords', start, end: input.ends[position - 1] ?? 0, length, cable };
}

function readSpare(): Spare {
  const start = input.starts[position] as number;
  let spare = false;
  keyword(81 /* 'spare' */, 'spare'); spare = true;
  return { type: 'Spare', start, end: input.ends[position - 1] ?? 0, spare };
}

function readBesideMains(): BesideMains {
  const start = input.starts[position] as number;
  let mains = false;
  skip(22 /* 'beside' */);
keyword(57 /* 'mains' */, 'mains'); mains = true;
  return { type: 'BesideMains', start, end: input.ends[position - 1] ?? 0, mains };
}

function readFuse(): Fuse {
  const start = input.starts[position] as number;
  let current: Quantity | undefined;
  skip(50 /* 'fuse' */);
current = readQuantity();
  return { type: 'Fuse', start, end: input.ends[position - 1] ?? 0, current };
}

function readLanding(): Landing {
  const start = input.starts[position] as number;
  let splice: Name | undefined;
  let node: Name | undefined;
  let port: Name | undefined;
  let label: Text | undefined;
  let device: Name | undefined;
  const properties: (LandingProperty)[] = [];
  if (input.kinds[position] === 83 /* 'splice' */) { skip(83 /* 'splice' */);
splice = readName(); } else if (input.kinds[position] === 5 /* ID */ || input.kinds[position] === 6 /* STRING */) { node = readName();
if (input.kinds[position] === 11 /* '.' */) { skip(11 /* '.' */);
port = readName(); } } else { stop(); }
if (input.kinds[position] === 6 /* STRING */) { label = readText(); }
if (input.kinds[position] === 14 /* ':' */) { skip(14 /* ':' */);
device = readName(); }
while (input.kinds[position] === 89 /* 'terminate' */ || input.kinds[position] === 86 /* 'switch' */ || input.kinds[position] === 40 /* 'crossed' */ || input.kinds[position] === 24 /* 'breaks' */ || input.kinds[position] === 16 /* 'across' */ || input.kinds[position] === 17 /* 'address' */ || input.kinds[position] === 76 /* 'revision' */ || (input.kinds[position] === 79 /* 'shield' */ && (input.kinds[position + 1] === 91 /* 'through' */ || input.kinds[position + 1] === 67 /* 'open' */ || input.kinds[position + 1] === 48 /* 'floating' */))) { properties.push(readLandingProperty()); }
  return { type: 'Landing', start, end: input.ends[position - 1] ?? 0, splice, node, port, label, device, properties };
}

function readLandingProperty(): LandingProperty { if (input.kinds[position] === 17 /* 'address' */) { return readLandingAddress(); } else if (input.kinds[position] === 89 /* 'terminate' */) { return readTerminate(); } else if (input.kinds[position] === 86 /* 'switch' */) { return readSwitchOff(); } else if (input.kinds[position] === 40 /* 'crossed' */) { return readCrossed(); } else if (input.kinds[position] === 79 /* 'shield' */) { return readLandingShield(); } else if (input.kinds[position] === 76 /* 'revision' */) { return readLandingRevision(); } else if (input.kinds[position] === 24 /* 'breaks' */) { return readBreaks(); } else if (input.kinds[position] === 16 /* 'across' */) { return readAcross(); } else { stop(); } return stop(); }

function readLandingAddress(): LandingAddress {
  const start = input.starts[position] as number;
  let address: Integer | undefined;
  skip(17 /* 'address' */);
address = readInteger();
  return { type: 'LandingAddress', start, end: input.ends[position - 1] ?? 0, address };
}

function readTerminate(): Terminate {
  const start = input.starts[position] as number;
  let switched = false;
  let resistance: Quantity | undefined;
  let capacitance: Quantity | undefined;
  skip(89 /* 'terminate' */);
if (input.kinds[position] === 86 /* 'switch' */) { keyword(86 /* 'switch' */, 'switch'); switched = true; } else if (input.kinds[position] === 75 /* 'resistor' */) { skip(75 /* 'resistor' */);
resistance = readQuantity();
if (input.kinds[position] === 30 /* 'capacitor' */) { skip(30 /* 'capacitor' */);
capacitance = readQuantity(); } } else { stop(); }
  return { type: 'Terminate', start, end: input.ends[position - 1] ?? 0, switched, resistance, capacitance };
}

function readSwitchOff(): SwitchOff {
  const start = input.starts[position] as number;
  let off = false;
  skip(86 /* 'switch' */);
keyword(65 /* 'off' */, 'off'); off = true;
  return { type: 'SwitchOff', start, end: input.ends[position - 1] ?? 0, off };
}

function readCrossed(): Crossed {
  const start = input.starts[position] as number;
  let crossed = false;
  keyword(40 /* 'crossed' */, 'crossed'); crossed = true;
  return { type: 'Crossed', start, end: input.ends[position - 1] ?? 0, crossed };
}

function readLandingShield(): LandingShield {
  const start = input.starts[position] as number;
  let treatment: 'through' | 'open' | 'floating' | undefined;
  skip(79 /* 'shield' */);
if (input.kinds[position] === 91 /* 'through' */) { treatment = keyword(91 /* 'through' */, 'through'); } else if (input.kinds[position] === 67 /* 'open' */) { treatment = keyword(67 /* 'open' */, 'open'); } else if (input.kinds[position] === 48 /* 'floating' */) { treatment = keyword(48 /* 'floating' */, 'floating'); } else { stop(); }
  return { type: 'LandingShield', start, end: input.ends[position - 1] ?? 0, treatment };
}

function readLandingRevision(): LandingRevision {
  const start = input.starts[position] as number;
  let revision: Name | undefined;
  skip(76 /* 'revision' */);
revision = readName();
  return { type: 'LandingRevision', start, end: input.ends[position - 1] ?? 0, revision };
}

function readBreaks(): Breaks {
  const start = input.starts[position] as number;
  let conductor: '+' | '-' | undefined;
  let bridge: Quantity | undefined;
  skip(24 /* 'breaks' */);
if (input.kinds[position] === 8 /* '+' */) { conductor = keyword(8 /* '+' */, '+'); } else if (input.kinds[position] === 10 /* '-' */) { conductor = keyword(10 /* '-' */, '-'); } else { stop(); }
if (input.kinds[position] === 25 /* 'bridged' */) { skip(25 /* 'bridged' */);
bridge = readQuantity(); }
  return { type: 'Breaks', start, end: input.ends[position - 1] ?? 0, conductor, bridge };
}

function readAcross(): Across {
  const start = input.starts[position] as number;
  let across = false;
  let through: Quantity | undefined;
  keyword(16 /* 'across' */, 'across'); across = true;
if (input.kinds[position] === 91 /* 'through' */) { skip(91 /* 'through' */);
through = readQuantity(); }
  return { type: 'Across', start, end: input.ends[position - 1] ?? 0, across, through };
}

function readLandingReference(): LandingReference {
  const start = input.starts[position] as number;
  let node: Name | undefined;
  let port: Name | undefined;
  node = readName();
if (input.kinds[position] === 11 /* '.' */) { skip(11 /* '.' */);
port = readName(); }
  return { type: 'LandingReference', start, end: input.ends[position - 1] ?? 0, node, port };
}

function readBusShield(): BusShield {
  const start = input.starts[position] as number;
  let at: LandingReference | undefined;
  let resistance: Quantity | undefined;
  let capacitance: Quantity | undefined;
  skip(79 /* 'shield' */);
skip(44 /* 'earthed' */);
skip(19 /* 'at' */);
at = readLandingReference();
if (input.kinds[position] === 91 /* 'through' */) { skip(91 /* 'through' */);
resistance = readQuantity();
if (input.kinds[position] === 30 /* 'capacitor' */) { skip(30 /* 'capacitor' */);
capacitance = readQuantity(); } }
  return { type: 'BusShield', start, end: input.ends[position - 1] ?? 0, at, resistance, capacitance };
}

function readBusBias(): BusBias {
  const start = input.starts[position] as number;
  let at: LandingReference | undefined;
  let switched = false;
  let resistors: BiasResistors | undefined;
  skip(23 /* 'bias' */);
skip(19 /* 'at' */);
at = readLandingReference();
if (input.kinds[position] === 86 /* 'switch' */) { keyword(86 /* 'switch' */, 'switch'); switched = true; } else if (input.kinds[position] === 10 /* '-' */ || input.kinds[position] === 3 /* NUMBER */ || input.kinds[position] === 1 /* FEET_AND_INCHES */) { resistors = readBiasResistors(); } else { stop(); }
  return { type: 'BusBias', start, end: input.ends[position - 1] ?? 0, at, switched, resistors };
}

function readAmbient(): Ambient {
  const start = input.starts[position] as number;
  let temperature: Quantity | undefined;
  skip(18 /* 'ambient' */);
temperature = readQuantity();
  return { type: 'Ambient', start, end: input.ends[position - 1] ?? 0, temperature };
}

function readSamplePoint(): SamplePoint {
  const start = input.starts[position] as number;
  let point: Quantity | undefined;
  skip(78 /* 'sample' */);
skip(19 /* 'at' */);
point = readQuantity();
  return { type: 'SamplePoint', start, end: input.ends[position - 1] ?? 0, point };
}

function readBusColours(): BusColours {
  const start = input.starts[position] as number;
  const colours: (ConductorColour)[] = [];
  skip(34 /* 'colours' */);
do { colours.push(readConductorColour()); } while (input.kinds[position] === 8 /* '+' */ || input.kinds[position] === 35 /* 'common' */ || (input.kinds[position] === 10 /* '-' */ && (input.kinds[position + 1] === 5 /* ID */ || input.kinds[position + 1] === 4 /* HYPHENATED */)) || (input.kinds[position] === 79 /* 'shield' */ && (input.kinds[position + 1] === 5 /* ID */ || input.kinds[position + 1] === 4 /* HYPHENATED */)));
  return { type: 'BusColours', start, end: input.ends[position - 1] ?? 0, colours };
}

function readConductorColour(): ConductorColour {
  const start = input.starts[position] as number;
  let role: '+' | '-' | 'shield' | 'common' | undefined;
  let colour: Word | undefined;
  if (input.kinds[position] === 8 /* '+' */) { role = keyword(8 /* '+' */, '+'); } else if (input.kinds[position] === 10 /* '-' */) { role = keyword(10 /* '-' */, '-'); } else if (input.kinds[position] === 79 /* 'shield' */) { role = keyword(79 /* 'shield' */, 'shield'); } else if (input.kinds[position] === 35 /* 'common' */) { role = keyword(35 /* 'common' */, 'common'); } else { stop(); }
colour = readWord();
  return { type: 'ConductorColour', start, end: input.ends[position - 1] ?? 0, role, colour };
}

function readName(): Name {
  const start = input.starts[position] as number;
  let text: string | undefined;
  if (input.kinds[position] === 5 /* ID */) { text = word(5 /* ID */); } else if (input.kinds[position] === 6 /* STRING */) { text = quoted(6 /* STRING */); } else { stop(); }
  return { type: 'Name', start, end: input.ends[position - 1] ?? 0, text };
}

function readWord(): Word {
  const start = input.starts[position] as number;
  let text: string | undefined;
  if (input.kinds[position] === 5 /* ID */) { text = word(5 /* ID */); } else if (input.kinds[position] === 4 /* HYPHENATED */) { text = word(4 /* HYPHENATED */); } else { stop(); }
  return { type: 'Word', start, end: input.ends[position - 1] ?? 0, text };
}

function readText(): Text {
  const start = input.starts[position] as number;
  let text: string | undefined;
  text = quoted(6 /* STRING */);
  return { type: 'Text', start, end: input.ends[position - 1] ?? 0, text };
}

function readQuantity(): Quantity {
  const start = input.starts[position] as number;
  let negative = false;
  let value: number | undefined;
  let unit: Unit | undefined;
  let feet: string | undefined;
  if (input.kinds[position] === 10 /* '-' */ || input.kinds[position] === 3 /* NUMBER */) { if (input.kinds[position] === 10 /* '-' */) { keyword(10 /* '-' */, '-'); negative = true; }
value = decimal(3 /* NUMBER */);
if (input.kinds[position] === 53 /* 'in' */ || input.kinds[position] === 7 /* '%' */ || (input.kinds[position] === 5 /* ID */ && (input.kinds[position + 1] === 13 /* '/' */ || input.kinds[position + 1] === 5 /* ID */ || input.kinds[position + 1] === 4 /* HYPHENATED */ || input.kinds[position + 1] === 100 /* '}' */ || input.kinds[position + 1] === 94 /* 'twisted' */ || input.kinds[position + 1] === 95 /* 'untwisted' */ || input.kinds[position + 1] === 79 /* 'shield' */ || input.kinds[position + 1] === 36 /* 'conductor' */ || input.kinds[position + 1] === 32 /* 'class' */ || input.kinds[position + 1] === 51 /* 'impedance' */ || input.kinds[position + 1] === 29 /* 'capacitance' */ || input.kinds[position + 1] === 96 /* 'velocity' */ || input.kinds[position + 1] === 74 /* 'resistance' */ || input.kinds[position + 1] === 34 /* 'colours' */ || input.kinds[position + 1] === 31 /* 'carries' */ || input.kinds[position + 1] === 30 /* 'capacitor' */ || input.kinds[position + 1] === 56 /* 'load' */ || input.kinds[position + 1] === 90 /* 'terminator' */ || input.kinds[position + 1] === 23 /* 'bias' */ || input.kinds[position + 1] === 73 /* 'reserved' */ || input.kinds[position + 1] === 93 /* 'twin' */ || input.kinds[position + 1] === 63 /* 'normally' */ || input.kinds[position + 1] === 46 /* 'expects' */ || input.kinds[position + 1] === 19 /* 'at' */ || input.kinds[position + 1] === 82 /* 'speaks' */ || input.kinds[position + 1] === 69 /* 'polarity' */ || input.kinds[position + 1] === 17 /* 'address' */ || input.kinds[position + 1] === 71 /* 'rates' */ || input.kinds[position + 1] === 45 /* 'edge' */ || input.kinds[position + 1] === 41 /* 'delay' */ || input.kinds[position + 1] === 85 /* 'supplies' */ || input.kinds[position + 1] === 43 /* 'draws' */ || input.kinds[position + 1] === 72 /* 'reads' */ || input.kinds[position + 1] === 88 /* 'terminals' */ || input.kinds[position + 1] === 92 /* 'to' */ || input.kinds[position + 1] === 80 /* 'source' */ || input.kinds[position + 1] === 9 /* ',' */ || input.kinds[position + 1] === 98 /* 'within' */ || input.kinds[position + 1] === 55 /* 'limit' */ || input.kinds[position + 1] === 15 /* 'above' */ || input.kinds[position + 1] === 21 /* 'below' */ || input.kinds[position + 1] === 37 /* 'contacts' */ || input.kinds[position + 1] === 64 /* 'of' */ || input.kinds[position + 1] === 2 /* FRAMING */ || input.kinds[position + 1] === 66 /* 'on' */ || input.kinds[position + 1] === 99 /* '{' */ || input.kinds[position + 1] === 81 /* 'spare' */ || input.kinds[position + 1] === 22 /* 'beside' */ || input.kinds[position + 1] === 26 /* 'built' */ || input.kinds[position + 1] === 39 /* 'cords' */ || input.kinds[position + 1] === 50 /* 'fuse' */ || input.kinds[position + 1] === 78 /* 'sample' */ || input.kinds[position + 1] === 97 /* 'waive' */ || input.kinds[position + 1] === 87 /* 'tap' */ || input.kinds[position + 1] === 10 /* '-' */ || input.kinds[position + 1] === 3 /* NUMBER */ || input.kinds[position + 1] === 1 /* FEET_AND_INCHES */ || input.kinds[position + 1] === 18 /* 'ambient' */ || input.kinds[position + 1] === 49 /* 'from' */ || input.kinds[position + 1] === 89 /* 'terminate' */ || input.kinds[position + 1] === 86 /* 'switch' */ || input.kinds[position + 1] === 40 /* 'crossed' */ || input.kinds[position + 1] === 24 /* 'breaks' */ || input.kinds[position + 1] === 16 /* 'across' */ || input.kinds[position + 1] === 76 /* 'revision' */))) { unit = readUnit(); } } else if (input.kinds[position] === 1 /* FEET_AND_INCHES */) { feet = word(1 /* FEET_AND_INCHES */); } else { stop(); }
  return { type: 'Quantity', start, end: input.ends[position - 1] ?? 0, negative, value, unit, feet };
}

function readUnit(): Unit {
  const start = input.starts[position] as number;
  let text: string | 'in' | '%' | undefined;
  let per: string | undefined;
  if (input.kinds[position] === 5 /* ID */) { text = word(5 /* ID */); } else if (input.kinds[position] === 53 /* 'in' */) { text = keyword(53 /* 'in' */, 'in'); } else if (input.kinds[position] === 7 /* '%' */) { text = keyword(7 /* '%' */, '%'); } else { stop(); }
if (input.kinds[position] === 13 /* '/' */) { skip(13 /* '/' */);
per = word(5 /* ID */); }
  return { type: 'Unit', start, end: input.ends[position - 1] ?? 0, text, per };
}

function readInteger(): Integer {
  const start = input.starts[position] as number;
  let negative = false;
  let value: number | undefined;
  if (input.kinds[position] === 10 /* '-' */) { keyword(10 /* '-' */, '-'); negative = true; }
value = decimal(3 /* NUMBER */);
  return { type: 'Integer', start, end: input.ends[position - 1] ?? 0, negative, value };
}

function readFormat(): Format {
  const start = input.starts[position] as number;
  let text: string | undefined;
  text = word(2 /* FRAMING */);
  return { type: 'Format', start, end: input.ends[position - 1] ?? 0, text };
}
