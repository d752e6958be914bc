// Generated from fieldpair.langium by `npm run generate`; do not edit.
import { added, none } from '../short-list.js';
import { decimalAt, unquote } from '../read/text-value.js';
import type { Tokens } from '../read/scanner.js';

/** Token numbers, in the order of the generated tests. */
export const tokenNumbers: ReadonlyMap<string, number> = new Map(["EOF","FEET_AND_INCHES","FRAMING","NUMBER","HYPHENATED","ID","STRING","'%'","'+'","','","'-'","'.'","'..'","'/'","':'","'above'","'across'","'address'","'ambient'","'area'","'at'","'because'","'below'","'beside'","'bias'","'breaks'","'bridged'","'built'","'bus'","'cable'","'capacitance'","'capacitor'","'carries'","'class'","'closed'","'colours'","'common'","'conductor'","'contacts'","'continued'","'cords'","'crossed'","'delay'","'device'","'draws'","'earthed'","'edge'","'expects'","'fixed'","'floating'","'from'","'fuse'","'guide'","'impedance'","'import'","'in'","'indicator'","'limit'","'load'","'mains'","'mark'","'most'","'needed'","'network'","'node'","'normally'","'of'","'off'","'on'","'open'","'pairs'","'polarity'","'port'","'rates'","'reads'","'reserved'","'resistance'","'resistor'","'revision'","'role'","'sample'","'shield'","'source'","'spare'","'speaks'","'splice'","'store'","'supplies'","'switch'","'tap'","'terminals'","'terminate'","'terminator'","'through'","'to'","'twin'","'twisted'","'untwisted'","'velocity'","'waive'","'within'","'{'","'}'"].map((token, index) => [token, index]));

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
  readonly role: RoleName | undefined;
}

export interface RoleName {
  readonly type: 'RoleName';
  readonly start: number;
  readonly end: number;
  readonly text: string | 'node' | undefined;
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

export type BusStatement = From | Run | Area | BusShield | BusBias | Ambient | SamplePoint | Guide | BusColours | Waiver;

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

export interface Area {
  readonly type: 'Area';
  readonly start: number;
  readonly end: number;
  readonly name: Name | undefined;
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

export interface Guide {
  readonly type: 'Guide';
  readonly start: number;
  readonly end: number;
  readonly name: Word | undefined;
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
let { kinds: tokenKinds, starts: tokenStarts, ends: tokenEnds } = nothing;
let position = 0;

/** Which token numbers are in a set. */
const setOf = (...numbers: readonly number[]) => {
  const set = new Uint8Array(103);
  for (const number of numbers) set[number] = 1;
  return set;
};
const set1 = setOf(29, 43, 54, 86);
const set2 = setOf(30, 32, 33, 35, 37, 53, 76, 81, 96, 97, 98);
const set3 = setOf(56, 60, 72, 78, 79);
const set4 = setOf(17, 20, 24, 30, 42, 44, 46, 47, 58, 65, 71, 73, 74, 75, 76, 84, 87, 90, 92, 95);
const set5 = setOf(8, 10, 36, 81);
const set6 = setOf(28, 63, 64, 99);
const set7 = setOf(1, 3, 10, 18, 19, 24, 35, 50, 52, 80, 81, 89, 99);
const set8 = setOf(1, 3, 10, 89);
const set9 = setOf(23, 27, 40, 51, 68, 83);
const set10 = setOf(16, 17, 25, 41, 78, 88, 91);
const set11 = setOf(1, 2, 3, 4, 5, 9, 10, 13, 15, 16, 17, 18, 19, 20, 22, 23, 24, 25, 27, 30, 31, 32, 33, 35, 37, 38, 40, 41, 42, 44, 46, 47, 50, 51, 52, 53, 57, 58, 65, 66, 68, 71, 73, 74, 75, 76, 78, 80, 81, 82, 83, 84, 87, 88, 89, 90, 91, 92, 94, 95, 96, 97, 98, 99, 100, 101, 102);

function stop(): never {
  throw notRead;
}
function skip(token: number): void {
  if (tokenKinds[position] !== token) stop();
  position++;
}
function keyword<T extends string>(token: number, spelling: T): T {
  skip(token);
  return spelling;
}

/** The last word of each length: texts repeat few words, and one text for all of them is cut out and hashed once. */
const lastWords = new Array<string>(32).fill('');
function word(token: number): string {
  skip(token);
  const start = tokenStarts[position - 1]!;
  const length = tokenEnds[position - 1]! - start;
  const last = lastWords[length % lastWords.length]!;
  if (last.length === length && source.startsWith(last, start)) return last;
  const text = source.slice(start, start + length);
  lastWords[length % lastWords.length] = text;
  return text;
}
function quoted(token: number): string {
  return unquote(word(token));
}
function decimal(token: number): number {
  skip(token);
  return decimalAt(source, tokenStarts[position - 1]!, tokenEnds[position - 1]!);
}
function endBefore(token: number): number {
  return token === 0 ? 0 : tokenEnds[token - 1]!;
}

/** Reads a whole text whose tokens were scanned, or gives undefined where anything in it is unexpected. */
export function readSheetTree(text: string, tokens: Tokens): Sheet | undefined {
  source = text;
  ({ kinds: tokenKinds, starts: tokenStarts, ends: tokenEnds } = tokens);
  position = 0;
  try {
    const sheet = readSheet();
    return tokenKinds[position] === 0 ? sheet : undefined;
  } catch (error) {
    if (error === notRead) return undefined;
    throw error;
  } finally {
    source = '';
    lastWords.fill('');
    ({ kinds: tokenKinds, starts: tokenStarts, ends: tokenEnds } = nothing);
  }
}

function readSheet(): Sheet {
  const start = tokenStarts[position]!;
  let imports: readonly (Import)[] = none;
  let declarations: readonly (Declaration)[] = none;
  while (set1[tokenKinds[position]!] === 1) { if (tokenKinds[position] === 54 /* 'import' */) { imports = added(imports, readImport()); } else if (tokenKinds[position] === 29 /* 'cable' */ || tokenKinds[position] === 43 /* 'device' */ || tokenKinds[position] === 86 /* 'store' */) { declarations = added(declarations, readDeclaration()); } else { stop(); } }
  return { type: 'Sheet', start, end: endBefore(position), imports, declarations };
}

function readImport(): Import {
  const start = tokenStarts[position]!;
  let path: Text | undefined;
  skip(54 /* 'import' */);
if (tokenKinds[position] === 6 /* STRING */) { path = readText(); }
  return { type: 'Import', start, end: endBefore(position), path };
}

function readDeclaration(): Declaration { if (tokenKinds[position] === 29 /* 'cable' */) { return readCableDeclaration(); } else if (tokenKinds[position] === 43 /* 'device' */) { return readDeviceDeclaration(); } else if (tokenKinds[position] === 86 /* 'store' */) { return readStoreDeclaration(); } else { stop(); } return stop(); }

function readCableDeclaration(): CableDeclaration {
  const start = tokenStarts[position]!;
  let name: Name | undefined;
  let label: Text | undefined;
  let properties: readonly (CableProperty)[] = none;
  skip(29 /* 'cable' */);
name = readName();
if (tokenKinds[position] === 6 /* STRING */) { label = readText(); }
skip(101 /* '{' */);
while (set2[tokenKinds[position]!] === 1) { properties = added(properties, readCableProperty()); }
skip(102 /* '}' */);
  return { type: 'CableDeclaration', start, end: endBefore(position), name, label, properties };
}

function readCableProperty(): CableProperty { if (tokenKinds[position] === 37 /* 'conductor' */) { return readConductor(); } else if (tokenKinds[position] === 96 /* 'twisted' */ || tokenKinds[position] === 97 /* 'untwisted' */) { return readTwist(); } else if (tokenKinds[position] === 81 /* 'shield' */) { return readCableShield(); } else if (tokenKinds[position] === 33 /* 'class' */) { return readCableClass(); } else if (tokenKinds[position] === 53 /* 'impedance' */) { return readImpedance(); } else if (tokenKinds[position] === 30 /* 'capacitance' */) { return readCapacitance(); } else if (tokenKinds[position] === 98 /* 'velocity' */) { return readVelocity(); } else if (tokenKinds[position] === 76 /* 'resistance' */) { return readResistance(); } else if (tokenKinds[position] === 35 /* 'colours' */) { return readCableColours(); } else if (tokenKinds[position] === 32 /* 'carries' */) { return readCarries(); } else { stop(); } return stop(); }

function readConductor(): Conductor {
  const start = tokenStarts[position]!;
  let size: Quantity | undefined;
  let make: readonly (Word)[] = none;
  skip(37 /* 'conductor' */);
size = readQuantity();
while (tokenKinds[position] === 5 /* ID */ || tokenKinds[position] === 4 /* HYPHENATED */) { make = added(make, readWord()); }
  return { type: 'Conductor', start, end: endBefore(position), size, make };
}

function readTwist(): Twist {
  const start = tokenStarts[position]!;
  let pairs: Integer | undefined;
  let untwisted = false;
  if (tokenKinds[position] === 96 /* 'twisted' */) { skip(96 /* 'twisted' */);
skip(70 /* 'pairs' */);
pairs = readInteger(); } else if (tokenKinds[position] === 97 /* 'untwisted' */) { keyword(97 /* 'untwisted' */, 'untwisted'); untwisted = true; } else { stop(); }
  return { type: 'Twist', start, end: endBefore(position), pairs, untwisted };
}

function readCableShield(): CableShield {
  const start = tokenStarts[position]!;
  let make: readonly (Word)[] = none;
  skip(81 /* 'shield' */);
while (tokenKinds[position] === 5 /* ID */ || tokenKinds[position] === 4 /* HYPHENATED */) { make = added(make, readWord()); }
  return { type: 'CableShield', start, end: endBefore(position), make };
}

function readCableClass(): CableClass {
  const start = tokenStarts[position]!;
  let name: Word | undefined;
  skip(33 /* 'class' */);
name = readWord();
  return { type: 'CableClass', start, end: endBefore(position), name };
}

function readImpedance(): Impedance {
  const start = tokenStarts[position]!;
  let value: Quantity | undefined;
  skip(53 /* 'impedance' */);
value = readQuantity();
  return { type: 'Impedance', start, end: endBefore(position), value };
}

function readCapacitance(): Capacitance {
  const start = tokenStarts[position]!;
  let value: Quantity | undefined;
  skip(30 /* 'capacitance' */);
value = readQuantity();
  return { type: 'Capacitance', start, end: endBefore(position), value };
}

function readVelocity(): Velocity {
  const start = tokenStarts[position]!;
  let value: Quantity | undefined;
  skip(98 /* 'velocity' */);
value = readQuantity();
  return { type: 'Velocity', start, end: endBefore(position), value };
}

function readResistance(): Resistance {
  const start = tokenStarts[position]!;
  let value: Quantity | undefined;
  skip(76 /* 'resistance' */);
value = readQuantity();
  return { type: 'Resistance', start, end: endBefore(position), value };
}

function readCableColours(): CableColours {
  const start = tokenStarts[position]!;
  let colours: readonly (Word)[] = none;
  skip(35 /* 'colours' */);
colours = added(colours, readWord());
while (tokenKinds[position] === 9 /* ',' */) { skip(9 /* ',' */);
colours = added(colours, readWord()); }
  return { type: 'CableColours', start, end: endBefore(position), colours };
}

function readCarries(): Carries {
  const start = tokenStarts[position]!;
  let current: Quantity | undefined;
  skip(32 /* 'carries' */);
current = readQuantity();
  return { type: 'Carries', start, end: endBefore(position), current };
}

function readDeviceDeclaration(): DeviceDeclaration {
  const start = tokenStarts[position]!;
  let name: Name | undefined;
  let label: Text | undefined;
  let members: readonly (DeviceMember)[] = none;
  skip(43 /* 'device' */);
name = readName();
if (tokenKinds[position] === 6 /* STRING */) { label = readText(); }
skip(101 /* '{' */);
while (set3[tokenKinds[position]!] === 1) { members = added(members, readDeviceMember()); }
skip(102 /* '}' */);
  return { type: 'DeviceDeclaration', start, end: endBefore(position), name, label, members };
}

function readDeviceMember(): DeviceMember { if (tokenKinds[position] === 79 /* 'role' */) { return readRole(); } else if (tokenKinds[position] === 78 /* 'revision' */) { return readRevisions(); } else if (tokenKinds[position] === 72 /* 'port' */) { return readPortDeclaration(); } else if (tokenKinds[position] === 56 /* 'indicator' */) { return readIndicator(); } else if (tokenKinds[position] === 60 /* 'mark' */) { return readMark(); } else { stop(); } return stop(); }

function readRole(): Role {
  const start = tokenStarts[position]!;
  let role: RoleName | undefined;
  skip(79 /* 'role' */);
role = readRoleName();
  return { type: 'Role', start, end: endBefore(position), role };
}

function readRoleName(): RoleName {
  const start = tokenStarts[position]!;
  let text: string | 'node' | undefined;
  if (tokenKinds[position] === 5 /* ID */) { text = word(5 /* ID */); } else if (tokenKinds[position] === 64 /* 'node' */) { text = keyword(64 /* 'node' */, 'node'); } else { stop(); }
  return { type: 'RoleName', start, end: endBefore(position), text };
}

function readRevisions(): Revisions {
  const start = tokenStarts[position]!;
  let names: readonly (Name)[] = none;
  skip(78 /* 'revision' */);
names = added(names, readName());
while (tokenKinds[position] === 9 /* ',' */) { skip(9 /* ',' */);
names = added(names, readName()); }
  return { type: 'Revisions', start, end: endBefore(position), names };
}

function readIndicator(): Indicator {
  const start = tokenStarts[position]!;
  let name: Name | undefined;
  let text: Text | undefined;
  skip(56 /* 'indicator' */);
name = readName();
if (tokenKinds[position] === 6 /* STRING */) { text = readText(); }
  return { type: 'Indicator', start, end: endBefore(position), name, text };
}

function readMark(): Mark {
  const start = tokenStarts[position]!;
  let text: Text | undefined;
  skip(60 /* 'mark' */);
text = readText();
  return { type: 'Mark', start, end: endBefore(position), text };
}

function readPortDeclaration(): PortDeclaration {
  const start = tokenStarts[position]!;
  let name: Name | undefined;
  let label: Text | undefined;
  let kind: Word | undefined;
  let properties: readonly (PortProperty)[] = none;
  skip(72 /* 'port' */);
name = readName();
if (tokenKinds[position] === 6 /* STRING */) { label = readText(); }
skip(14 /* ':' */);
kind = readWord();
if (tokenKinds[position] === 101 /* '{' */) { skip(101 /* '{' */);
while (set4[tokenKinds[position]!] === 1) { properties = added(properties, readPortProperty()); }
skip(102 /* '}' */); }
  return { type: 'PortDeclaration', start, end: endBefore(position), name, label, kind, properties };
}

function readPortProperty(): PortProperty { if (tokenKinds[position] === 90 /* 'terminals' */) { return readTerminals(); } else if (tokenKinds[position] === 84 /* 'speaks' */) { return readSpeaks(); } else if (tokenKinds[position] === 71 /* 'polarity' */) { return readPolarity(); } else if (tokenKinds[position] === 58 /* 'load' */) { return readLoad(); } else if (tokenKinds[position] === 30 /* 'capacitance' */) { return readCapacitance(); } else if (tokenKinds[position] === 76 /* 'resistance' */) { return readResistance(); } else if (tokenKinds[position] === 92 /* 'terminator' */) { return readPortTerminator(); } else if (tokenKinds[position] === 24 /* 'bias' */) { return readPortBias(); } else if (tokenKinds[position] === 17 /* 'address' */) { return readPortAddress(); } else if (tokenKinds[position] === 73 /* 'rates' */) { return readRates(); } else if (tokenKinds[position] === 46 /* 'edge' */) { return readEdge(); } else if (tokenKinds[position] === 42 /* 'delay' */) { return readDelay(); } else if (tokenKinds[position] === 75 /* 'reserved' */) { return readReserved(); } else if (tokenKinds[position] === 95 /* 'twin' */) { return readTwin(); } else if (tokenKinds[position] === 87 /* 'supplies' */) { return readSupplies(); } else if (tokenKinds[position] === 44 /* 'draws' */) { return readDraws(); } else if (tokenKinds[position] === 65 /* 'normally' */) { return readNormally(); } else if (tokenKinds[position] === 47 /* 'expects' */) { return readExpects(); } else if (tokenKinds[position] === 20 /* 'at' */) { return readAtMost(); } else if (tokenKinds[position] === 74 /* 'reads' */) { return readReads(); } else { stop(); } return stop(); }

function readTerminals(): Terminals {
  const start = tokenStarts[position]!;
  let terminals: readonly (Terminal)[] = none;
  skip(90 /* 'terminals' */);
do { terminals = added(terminals, readTerminal()); } while (set5[tokenKinds[position]!] === 1);
  return { type: 'Terminals', start, end: endBefore(position), terminals };
}

function readTerminal(): Terminal {
  const start = tokenStarts[position]!;
  let role: '+' | '-' | 'shield' | 'common' | undefined;
  let mark: Text | undefined;
  if (tokenKinds[position] === 8 /* '+' */) { role = keyword(8 /* '+' */, '+'); } else if (tokenKinds[position] === 10 /* '-' */) { role = keyword(10 /* '-' */, '-'); } else if (tokenKinds[position] === 81 /* 'shield' */) { role = keyword(81 /* 'shield' */, 'shield'); } else if (tokenKinds[position] === 36 /* 'common' */) { role = keyword(36 /* 'common' */, 'common'); } else { stop(); }
mark = readText();
  return { type: 'Terminal', start, end: endBefore(position), role, mark };
}

function readSpeaks(): Speaks {
  const start = tokenStarts[position]!;
  let kinds: readonly (Word)[] = none;
  skip(84 /* 'speaks' */);
kinds = added(kinds, readWord());
while (tokenKinds[position] === 9 /* ',' */) { skip(9 /* ',' */);
kinds = added(kinds, readWord()); }
  return { type: 'Speaks', start, end: endBefore(position), kinds };
}

function readPolarity(): Polarity {
  const start = tokenStarts[position]!;
  let value: Word | undefined;
  skip(71 /* 'polarity' */);
value = readWord();
  return { type: 'Polarity', start, end: endBefore(position), value };
}

function readLoad(): Load {
  const start = tokenStarts[position]!;
  let numerator: number | undefined;
  let denominator: number | undefined;
  skip(58 /* 'load' */);
numerator = decimal(3 /* NUMBER */);
if (tokenKinds[position] === 13 /* '/' */) { skip(13 /* '/' */);
denominator = decimal(3 /* NUMBER */); }
  return { type: 'Load', start, end: endBefore(position), numerator, denominator };
}

function readPortTerminator(): PortTerminator {
  const start = tokenStarts[position]!;
  let means: 'switch' | 'fixed' | undefined;
  let resistance: Quantity | undefined;
  let capacitance: Quantity | undefined;
  skip(92 /* 'terminator' */);
if (tokenKinds[position] === 88 /* 'switch' */) { means = keyword(88 /* 'switch' */, 'switch'); } else if (tokenKinds[position] === 48 /* 'fixed' */) { means = keyword(48 /* 'fixed' */, 'fixed'); } else { stop(); }
resistance = readQuantity();
if (tokenKinds[position] === 31 /* 'capacitor' */) { skip(31 /* 'capacitor' */);
capacitance = readQuantity(); }
  return { type: 'PortTerminator', start, end: endBefore(position), means, resistance, capacitance };
}

function readPortBias(): PortBias {
  const start = tokenStarts[position]!;
  let needed = false;
  let means: 'switch' | 'fixed' | undefined;
  let resistors: BiasResistors | undefined;
  skip(24 /* 'bias' */);
if (tokenKinds[position] === 62 /* 'needed' */) { keyword(62 /* 'needed' */, 'needed'); needed = true; } else if (tokenKinds[position] === 88 /* 'switch' */ || tokenKinds[position] === 48 /* 'fixed' */) { if (tokenKinds[position] === 88 /* 'switch' */) { means = keyword(88 /* 'switch' */, 'switch'); } else if (tokenKinds[position] === 48 /* 'fixed' */) { means = keyword(48 /* 'fixed' */, 'fixed'); } else { stop(); }
resistors = readBiasResistors(); } else { stop(); }
  return { type: 'PortBias', start, end: endBefore(position), needed, means, resistors };
}

function readBiasResistors(): BiasResistors {
  const start = tokenStarts[position]!;
  let up: Quantity | undefined;
  let down: Quantity | undefined;
  let supply: Quantity | undefined;
  up = readQuantity();
if (tokenKinds[position] === 94 /* 'to' */) { skip(94 /* 'to' */);
skip(8 /* '+' */);
down = readQuantity();
skip(94 /* 'to' */);
skip(10 /* '-' */); }
if (tokenKinds[position] === 82 /* 'source' */) { skip(82 /* 'source' */);
supply = readQuantity(); }
  return { type: 'BiasResistors', start, end: endBefore(position), up, down, supply };
}

function readPortAddress(): PortAddress {
  const start = tokenStarts[position]!;
  let means: Word | undefined;
  let low: Integer | undefined;
  let high: Integer | undefined;
  let positions: Integer | undefined;
  let coding: readonly (Word)[] = none;
  skip(17 /* 'address' */);
means = readWord();
if (tokenKinds[position] === 10 /* '-' */ || tokenKinds[position] === 3 /* NUMBER */) { low = readInteger();
skip(12 /* '..' */);
high = readInteger(); }
if (tokenKinds[position] === 66 /* 'of' */) { skip(66 /* 'of' */);
positions = readInteger(); }
while (tokenKinds[position] === 5 /* ID */ || tokenKinds[position] === 4 /* HYPHENATED */) { coding = added(coding, readWord()); }
  return { type: 'PortAddress', start, end: endBefore(position), means, low, high, positions, coding };
}

function readRates(): Rates {
  const start = tokenStarts[position]!;
  let rates: readonly (Quantity)[] = none;
  skip(73 /* 'rates' */);
rates = added(rates, readQuantity());
while (tokenKinds[position] === 9 /* ',' */) { skip(9 /* ',' */);
rates = added(rates, readQuantity()); }
  return { type: 'Rates', start, end: endBefore(position), rates };
}

function readEdge(): Edge {
  const start = tokenStarts[position]!;
  let time: Quantity | undefined;
  skip(46 /* 'edge' */);
time = readQuantity();
  return { type: 'Edge', start, end: endBefore(position), time };
}

function readDelay(): Delay {
  const start = tokenStarts[position]!;
  let time: Quantity | undefined;
  skip(42 /* 'delay' */);
time = readQuantity();
  return { type: 'Delay', start, end: endBefore(position), time };
}

function readReserved(): Reserved {
  const start = tokenStarts[position]!;
  let revisions: readonly (Name)[] = none;
  let reason: Text | undefined;
  skip(75 /* 'reserved' */);
if (tokenKinds[position] === 55 /* 'in' */) { skip(55 /* 'in' */);
revisions = added(revisions, readName());
while (tokenKinds[position] === 9 /* ',' */) { skip(9 /* ',' */);
revisions = added(revisions, readName()); } }
if (tokenKinds[position] === 6 /* STRING */) { reason = readText(); }
  return { type: 'Reserved', start, end: endBefore(position), revisions, reason };
}

function readTwin(): Twin {
  const start = tokenStarts[position]!;
  let port: Name | undefined;
  let reason: Text | undefined;
  skip(95 /* 'twin' */);
skip(66 /* 'of' */);
port = readName();
if (tokenKinds[position] === 6 /* STRING */) { reason = readText(); }
  return { type: 'Twin', start, end: endBefore(position), port, reason };
}

function readSupplies(): Supplies {
  const start = tokenStarts[position]!;
  let voltage: Quantity | undefined;
  let form: Word | undefined;
  let tolerance: Quantity | undefined;
  let limit: Quantity | undefined;
  let marked: Integer | undefined;
  skip(87 /* 'supplies' */);
voltage = readQuantity();
if (tokenKinds[position] === 5 /* ID */ || tokenKinds[position] === 4 /* HYPHENATED */) { form = readWord(); }
if (tokenKinds[position] === 100 /* 'within' */) { skip(100 /* 'within' */);
tolerance = readQuantity(); }
if (tokenKinds[position] === 57 /* 'limit' */) { skip(57 /* 'limit' */);
limit = readQuantity(); }
if (tokenKinds[position] === 33 /* 'class' */) { skip(33 /* 'class' */);
marked = readInteger(); }
  return { type: 'Supplies', start, end: endBefore(position), voltage, form, tolerance, limit, marked };
}

function readDraws(): Draws {
  const start = tokenStarts[position]!;
  let amount: Quantity | undefined;
  let form: Word | undefined;
  let low: Quantity | undefined;
  let high: Quantity | undefined;
  skip(44 /* 'draws' */);
amount = readQuantity();
if (tokenKinds[position] === 5 /* ID */ || tokenKinds[position] === 4 /* HYPHENATED */) { form = readWord(); }
if (tokenKinds[position] === 15 /* 'above' */) { skip(15 /* 'above' */);
low = readQuantity(); }
if (tokenKinds[position] === 22 /* 'below' */) { skip(22 /* 'below' */);
high = readQuantity(); }
  return { type: 'Draws', start, end: endBefore(position), amount, form, low, high };
}

function readNormally(): Normally {
  const start = tokenStarts[position]!;
  let state: 'closed' | 'open' | undefined;
  skip(65 /* 'normally' */);
if (tokenKinds[position] === 34 /* 'closed' */) { state = keyword(34 /* 'closed' */, 'closed'); } else if (tokenKinds[position] === 69 /* 'open' */) { state = keyword(69 /* 'open' */, 'open'); } else { stop(); }
  return { type: 'Normally', start, end: endBefore(position), state };
}

function readExpects(): Expects {
  const start = tokenStarts[position]!;
  let resistance: Quantity | undefined;
  skip(47 /* 'expects' */);
skip(77 /* 'resistor' */);
resistance = readQuantity();
  return { type: 'Expects', start, end: endBefore(position), resistance };
}

function readAtMost(): AtMost {
  const start = tokenStarts[position]!;
  let amount: Quantity | undefined;
  let contacts = false;
  let cable = false;
  skip(20 /* 'at' */);
skip(61 /* 'most' */);
amount = readQuantity();
if (tokenKinds[position] === 38 /* 'contacts' */) { keyword(38 /* 'contacts' */, 'contacts'); contacts = true; } else if (tokenKinds[position] === 66 /* 'of' */) { skip(66 /* 'of' */);
keyword(29 /* 'cable' */, 'cable'); cable = true; } else { stop(); }
  return { type: 'AtMost', start, end: endBefore(position), amount, contacts, cable };
}

function readReads(): Reads {
  const start = tokenStarts[position]!;
  let meaning: Word | undefined;
  let low: Quantity | undefined;
  let high: Quantity | undefined;
  skip(74 /* 'reads' */);
meaning = readWord();
if (tokenKinds[position] === 15 /* 'above' */) { skip(15 /* 'above' */);
low = readQuantity(); }
if (tokenKinds[position] === 22 /* 'below' */) { skip(22 /* 'below' */);
high = readQuantity(); }
  return { type: 'Reads', start, end: endBefore(position), meaning, low, high };
}

function readStoreDeclaration(): StoreDeclaration {
  const start = tokenStarts[position]!;
  let name: Name | undefined;
  let continued = false;
  let label: Text | undefined;
  let members: readonly (StoreMember)[] = none;
  skip(86 /* 'store' */);
name = readName();
if (tokenKinds[position] === 39 /* 'continued' */) { keyword(39 /* 'continued' */, 'continued'); continued = true; }
if (tokenKinds[position] === 6 /* STRING */) { label = readText(); }
skip(101 /* '{' */);
while (set6[tokenKinds[position]!] === 1) { members = added(members, readStoreMember()); }
skip(102 /* '}' */);
  return { type: 'StoreDeclaration', start, end: endBefore(position), name, continued, label, members };
}

function readStoreMember(): StoreMember { if (tokenKinds[position] === 64 /* 'node' */) { return readNodeDeclaration(); } else if (tokenKinds[position] === 63 /* 'network' */) { return readNetworkDeclaration(); } else if (tokenKinds[position] === 28 /* 'bus' */) { return readBusDeclaration(); } else if (tokenKinds[position] === 99 /* 'waive' */) { return readWaiver(); } else { stop(); } return stop(); }

function readNodeDeclaration(): NodeDeclaration {
  const start = tokenStarts[position]!;
  let name: Name | undefined;
  let label: Text | undefined;
  let device: Name | undefined;
  let revision: Name | undefined;
  skip(64 /* 'node' */);
name = readName();
if (tokenKinds[position] === 6 /* STRING */) { label = readText(); }
if (tokenKinds[position] === 14 /* ':' */) { skip(14 /* ':' */);
device = readName(); }
if (tokenKinds[position] === 78 /* 'revision' */) { skip(78 /* 'revision' */);
revision = readName(); }
  return { type: 'NodeDeclaration', start, end: endBefore(position), name, label, device, revision };
}

function readNetworkDeclaration(): NetworkDeclaration {
  const start = tokenStarts[position]!;
  let name: Name | undefined;
  let label: Text | undefined;
  let members: readonly (NetworkMember)[] = none;
  skip(63 /* 'network' */);
name = readName();
if (tokenKinds[position] === 6 /* STRING */) { label = readText(); }
skip(101 /* '{' */);
if (tokenKinds[position] === 5 /* ID */ || tokenKinds[position] === 6 /* STRING */) { members = added(members, readNetworkMember());
while (tokenKinds[position] === 9 /* ',' */) { skip(9 /* ',' */);
members = added(members, readNetworkMember()); } }
skip(102 /* '}' */);
  return { type: 'NetworkDeclaration', start, end: endBefore(position), name, label, members };
}

function readNetworkMember(): NetworkMember {
  const start = tokenStarts[position]!;
  let node: Name | undefined;
  let address: Integer | undefined;
  node = readName();
if (tokenKinds[position] === 17 /* 'address' */) { skip(17 /* 'address' */);
address = readInteger(); }
  return { type: 'NetworkMember', start, end: endBefore(position), node, address };
}

function readWaiver(): Waiver {
  const start = tokenStarts[position]!;
  let rule: Word | undefined;
  let at: LandingReference | undefined;
  let reason: Text | undefined;
  skip(99 /* 'waive' */);
rule = readWord();
if (tokenKinds[position] === 20 /* 'at' */) { skip(20 /* 'at' */);
at = readLandingReference(); }
if (tokenKinds[position] === 21 /* 'because' */) { skip(21 /* 'because' */);
reason = readText(); }
  return { type: 'Waiver', start, end: endBefore(position), rule, at, reason };
}

function readBusDeclaration(): BusDeclaration {
  const start = tokenStarts[position]!;
  let name: Name | undefined;
  let label: Text | undefined;
  let kind: Word | undefined;
  let rate: Quantity | undefined;
  let format: Format | undefined;
  let cable: Name | undefined;
  let statements: readonly (BusStatement)[] = none;
  skip(28 /* 'bus' */);
name = readName();
if (tokenKinds[position] === 6 /* STRING */) { label = readText(); }
skip(14 /* ':' */);
kind = readWord();
if (tokenKinds[position] === 10 /* '-' */ || tokenKinds[position] === 3 /* NUMBER */ || tokenKinds[position] === 1 /* FEET_AND_INCHES */) { rate = readQuantity(); }
if (tokenKinds[position] === 2 /* FRAMING */) { format = readFormat(); }
if (tokenKinds[position] === 68 /* 'on' */) { skip(68 /* 'on' */);
cable = readName(); }
skip(101 /* '{' */);
while (set7[tokenKinds[position]!] === 1) { statements = added(statements, readBusStatement()); }
skip(102 /* '}' */);
  return { type: 'BusDeclaration', start, end: endBefore(position), name, label, kind, rate, format, cable, statements };
}

function readBusStatement(): BusStatement { if (tokenKinds[position] === 50 /* 'from' */) { return readFrom(); } else if (set8[tokenKinds[position]!] === 1) { return readRun(); } else if (tokenKinds[position] === 19 /* 'area' */) { return readArea(); } else if (tokenKinds[position] === 81 /* 'shield' */) { return readBusShield(); } else if (tokenKinds[position] === 24 /* 'bias' */) { return readBusBias(); } else if (tokenKinds[position] === 18 /* 'ambient' */) { return readAmbient(); } else if (tokenKinds[position] === 80 /* 'sample' */) { return readSamplePoint(); } else if (tokenKinds[position] === 52 /* 'guide' */) { return readGuide(); } else if (tokenKinds[position] === 35 /* 'colours' */) { return readBusColours(); } else if (tokenKinds[position] === 99 /* 'waive' */) { return readWaiver(); } else { stop(); } return stop(); }

function readFrom(): From {
  const start = tokenStarts[position]!;
  let landing: Landing | undefined;
  skip(50 /* 'from' */);
landing = readLanding();
  return { type: 'From', start, end: endBefore(position), landing };
}

function readRun(): Run {
  const start = tokenStarts[position]!;
  let tap = false;
  let length: Quantity | undefined;
  let options: readonly (RunOption)[] = none;
  let landing: Landing | undefined;
  if (tokenKinds[position] === 89 /* 'tap' */) { keyword(89 /* 'tap' */, 'tap'); tap = true; }
length = readQuantity();
while (set9[tokenKinds[position]!] === 1) { options = added(options, readRunOption()); }
if (tokenKinds[position] === 94 /* 'to' */) { skip(94 /* 'to' */);
landing = readLanding(); }
  return { type: 'Run', start, end: endBefore(position), tap, length, options, landing };
}

function readArea(): Area {
  const start = tokenStarts[position]!;
  let name: Name | undefined;
  skip(19 /* 'area' */);
name = readName();
  return { type: 'Area', start, end: endBefore(position), name };
}

function readRunOption(): RunOption { if (tokenKinds[position] === 68 /* 'on' */) { return readOnCable(); } else if (tokenKinds[position] === 27 /* 'built' */) { return readBuilt(); } else if (tokenKinds[position] === 40 /* 'cords' */) { return readCords(); } else if (tokenKinds[position] === 83 /* 'spare' */) { return readSpare(); } else if (tokenKinds[position] === 23 /* 'beside' */) { return readBesideMains(); } else if (tokenKinds[position] === 51 /* 'fuse' */) { return readFuse(); } else { stop(); } return stop(); }

function readOnCable(): OnCable {
  const start = tokenStarts[position]!;
  let cable: Name | undefined;
  skip(68 /* 'on' */);
cable = readName();
  return { type: 'OnCable', start, end: endBefore(position), cable };
}

function readBuilt(): Built {
  const start = tokenStarts[position]!;
  let length: Quantity | undefined;
  skip(27 /* 'built' */);
length = readQuantity();
  return { type: 'Built', start, end: endBefore(position), length };
}

function readCords(): Cords {
  const start = tokenStarts[position]!;
  let length: Quantity | undefined;
  let cable: Name | undefined;
  skip(40 /* 'cords' */);
length = readQuantity();
if (tokenKinds[position] === 66 /* 'of' */) { skip(66 /* 'of' */);
cable = readName(); }
  return { type: 'Cords', start, end: endBefore(position), length, cable };
}

function readSpare(): Spare {
  const start = tokenStarts[position]!;
  let spare = false;
  keyword(83 /* 'spare' */, 'spare'); spare = true;
  return { type: 'Spare', start, end: endBefore(position), spare };
}

function readBesideMains(): BesideMains {
  const start = tokenStarts[position]!;
  let mains = false;
  skip(23 /* 'beside' */);
keyword(59 /* 'mains' */, 'mains'); mains = true;
  return { type: 'BesideMains', start, end: endBefore(position), mains };
}

function readFuse(): Fuse {
  const start = tokenStarts[position]!;
  let current: Quantity | undefined;
  skip(51 /* 'fuse' */);
current = readQuantity();
  return { type: 'Fuse', start, end: endBefore(position), current };
}

function readLanding(): Landing {
  const start = tokenStarts[position]!;
  let splice: Name | undefined;
  let node: Name | undefined;
  let port: Name | undefined;
  let label: Text | undefined;
  let device: Name | undefined;
  let properties: readonly (LandingProperty)[] = none;
  if (tokenKinds[position] === 85 /* 'splice' */) { skip(85 /* 'splice' */);
splice = readName(); } else if (tokenKinds[position] === 5 /* ID */ || tokenKinds[position] === 6 /* STRING */) { node = readName();
if (tokenKinds[position] === 11 /* '.' */) { skip(11 /* '.' */);
port = readName(); } } else { stop(); }
if (tokenKinds[position] === 6 /* STRING */) { label = readText(); }
if (tokenKinds[position] === 14 /* ':' */) { skip(14 /* ':' */);
device = readName(); }
while (set10[tokenKinds[position]!] === 1 || (tokenKinds[position] === 81 /* 'shield' */ && (tokenKinds[position + 1] === 93 /* 'through' */ || tokenKinds[position + 1] === 69 /* 'open' */ || tokenKinds[position + 1] === 49 /* 'floating' */))) { properties = added(properties, readLandingProperty()); }
  return { type: 'Landing', start, end: endBefore(position), splice, node, port, label, device, properties };
}

function readLandingProperty(): LandingProperty { if (tokenKinds[position] === 17 /* 'address' */) { return readLandingAddress(); } else if (tokenKinds[position] === 91 /* 'terminate' */) { return readTerminate(); } else if (tokenKinds[position] === 88 /* 'switch' */) { return readSwitchOff(); } else if (tokenKinds[position] === 41 /* 'crossed' */) { return readCrossed(); } else if (tokenKinds[position] === 81 /* 'shield' */) { return readLandingShield(); } else if (tokenKinds[position] === 78 /* 'revision' */) { return readLandingRevision(); } else if (tokenKinds[position] === 25 /* 'breaks' */) { return readBreaks(); } else if (tokenKinds[position] === 16 /* 'across' */) { return readAcross(); } else { stop(); } return stop(); }

function readLandingAddress(): LandingAddress {
  const start = tokenStarts[position]!;
  let address: Integer | undefined;
  skip(17 /* 'address' */);
address = readInteger();
  return { type: 'LandingAddress', start, end: endBefore(position), address };
}

function readTerminate(): Terminate {
  const start = tokenStarts[position]!;
  let switched = false;
  let resistance: Quantity | undefined;
  let capacitance: Quantity | undefined;
  skip(91 /* 'terminate' */);
if (tokenKinds[position] === 88 /* 'switch' */) { keyword(88 /* 'switch' */, 'switch'); switched = true; } else if (tokenKinds[position] === 77 /* 'resistor' */) { skip(77 /* 'resistor' */);
resistance = readQuantity();
if (tokenKinds[position] === 31 /* 'capacitor' */) { skip(31 /* 'capacitor' */);
capacitance = readQuantity(); } } else { stop(); }
  return { type: 'Terminate', start, end: endBefore(position), switched, resistance, capacitance };
}

function readSwitchOff(): SwitchOff {
  const start = tokenStarts[position]!;
  let off = false;
  skip(88 /* 'switch' */);
keyword(67 /* 'off' */, 'off'); off = true;
  return { type: 'SwitchOff', start, end: endBefore(position), off };
}

function readCrossed(): Crossed {
  const start = tokenStarts[position]!;
  let crossed = false;
  keyword(41 /* 'crossed' */, 'crossed'); crossed = true;
  return { type: 'Crossed', start, end: endBefore(position), crossed };
}

function readLandingShield(): LandingShield {
  const start = tokenStarts[position]!;
  let treatment: 'through' | 'open' | 'floating' | undefined;
  skip(81 /* 'shield' */);
if (tokenKinds[position] === 93 /* 'through' */) { treatment = keyword(93 /* 'through' */, 'through'); } else if (tokenKinds[position] === 69 /* 'open' */) { treatment = keyword(69 /* 'open' */, 'open'); } else if (tokenKinds[position] === 49 /* 'floating' */) { treatment = keyword(49 /* 'floating' */, 'floating'); } else { stop(); }
  return { type: 'LandingShield', start, end: endBefore(position), treatment };
}

function readLandingRevision(): LandingRevision {
  const start = tokenStarts[position]!;
  let revision: Name | undefined;
  skip(78 /* 'revision' */);
revision = readName();
  return { type: 'LandingRevision', start, end: endBefore(position), revision };
}

function readBreaks(): Breaks {
  const start = tokenStarts[position]!;
  let conductor: '+' | '-' | undefined;
  let bridge: Quantity | undefined;
  skip(25 /* 'breaks' */);
if (tokenKinds[position] === 8 /* '+' */) { conductor = keyword(8 /* '+' */, '+'); } else if (tokenKinds[position] === 10 /* '-' */) { conductor = keyword(10 /* '-' */, '-'); } else { stop(); }
if (tokenKinds[position] === 26 /* 'bridged' */) { skip(26 /* 'bridged' */);
bridge = readQuantity(); }
  return { type: 'Breaks', start, end: endBefore(position), conductor, bridge };
}

function readAcross(): Across {
  const start = tokenStarts[position]!;
  let across = false;
  let through: Quantity | undefined;
  keyword(16 /* 'across' */, 'across'); across = true;
if (tokenKinds[position] === 93 /* 'through' */) { skip(93 /* 'through' */);
through = readQuantity(); }
  return { type: 'Across', start, end: endBefore(position), across, through };
}

function readLandingReference(): LandingReference {
  const start = tokenStarts[position]!;
  let node: Name | undefined;
  let port: Name | undefined;
  node = readName();
if (tokenKinds[position] === 11 /* '.' */) { skip(11 /* '.' */);
port = readName(); }
  return { type: 'LandingReference', start, end: endBefore(position), node, port };
}

function readBusShield(): BusShield {
  const start = tokenStarts[position]!;
  let at: LandingReference | undefined;
  let resistance: Quantity | undefined;
  let capacitance: Quantity | undefined;
  skip(81 /* 'shield' */);
skip(45 /* 'earthed' */);
skip(20 /* 'at' */);
at = readLandingReference();
if (tokenKinds[position] === 93 /* 'through' */) { skip(93 /* 'through' */);
resistance = readQuantity();
if (tokenKinds[position] === 31 /* 'capacitor' */) { skip(31 /* 'capacitor' */);
capacitance = readQuantity(); } }
  return { type: 'BusShield', start, end: endBefore(position), at, resistance, capacitance };
}

function readBusBias(): BusBias {
  const start = tokenStarts[position]!;
  let at: LandingReference | undefined;
  let switched = false;
  let resistors: BiasResistors | undefined;
  skip(24 /* 'bias' */);
skip(20 /* 'at' */);
at = readLandingReference();
if (tokenKinds[position] === 88 /* 'switch' */) { keyword(88 /* 'switch' */, 'switch'); switched = true; } else if (tokenKinds[position] === 10 /* '-' */ || tokenKinds[position] === 3 /* NUMBER */ || tokenKinds[position] === 1 /* FEET_AND_INCHES */) { resistors = readBiasResistors(); } else { stop(); }
  return { type: 'BusBias', start, end: endBefore(position), at, switched, resistors };
}

function readAmbient(): Ambient {
  const start = tokenStarts[position]!;
  let temperature: Quantity | undefined;
  skip(18 /* 'ambient' */);
temperature = readQuantity();
  return { type: 'Ambient', start, end: endBefore(position), temperature };
}

function readSamplePoint(): SamplePoint {
  const start = tokenStarts[position]!;
  let point: Quantity | undefined;
  skip(80 /* 'sample' */);
skip(20 /* 'at' */);
point = readQuantity();
  return { type: 'SamplePoint', start, end: endBefore(position), point };
}

function readGuide(): Guide {
  const start = tokenStarts[position]!;
  let name: Word | undefined;
  skip(52 /* 'guide' */);
name = readWord();
  return { type: 'Guide', start, end: endBefore(position), name };
}

function readBusColours(): BusColours {
  const start = tokenStarts[position]!;
  let colours: readonly (ConductorColour)[] = none;
  skip(35 /* 'colours' */);
do { colours = added(colours, readConductorColour()); } while (tokenKinds[position] === 8 /* '+' */ || tokenKinds[position] === 36 /* 'common' */ || (tokenKinds[position] === 10 /* '-' */ && (tokenKinds[position + 1] === 5 /* ID */ || tokenKinds[position + 1] === 4 /* HYPHENATED */)) || (tokenKinds[position] === 81 /* 'shield' */ && (tokenKinds[position + 1] === 5 /* ID */ || tokenKinds[position + 1] === 4 /* HYPHENATED */)));
  return { type: 'BusColours', start, end: endBefore(position), colours };
}

function readConductorColour(): ConductorColour {
  const start = tokenStarts[position]!;
  let role: '+' | '-' | 'shield' | 'common' | undefined;
  let colour: Word | undefined;
  if (tokenKinds[position] === 8 /* '+' */) { role = keyword(8 /* '+' */, '+'); } else if (tokenKinds[position] === 10 /* '-' */) { role = keyword(10 /* '-' */, '-'); } else if (tokenKinds[position] === 81 /* 'shield' */) { role = keyword(81 /* 'shield' */, 'shield'); } else if (tokenKinds[position] === 36 /* 'common' */) { role = keyword(36 /* 'common' */, 'common'); } else { stop(); }
colour = readWord();
  return { type: 'ConductorColour', start, end: endBefore(position), role, colour };
}

function readName(): Name {
  const start = tokenStarts[position]!;
  let text: string | undefined;
  if (tokenKinds[position] === 5 /* ID */) { text = word(5 /* ID */); } else if (tokenKinds[position] === 6 /* STRING */) { text = quoted(6 /* STRING */); } else { stop(); }
  return { type: 'Name', start, end: endBefore(position), text };
}

function readWord(): Word {
  const start = tokenStarts[position]!;
  let text: string | undefined;
  if (tokenKinds[position] === 5 /* ID */) { text = word(5 /* ID */); } else if (tokenKinds[position] === 4 /* HYPHENATED */) { text = word(4 /* HYPHENATED */); } else { stop(); }
  return { type: 'Word', start, end: endBefore(position), text };
}

function readText(): Text {
  const start = tokenStarts[position]!;
  let text: string | undefined;
  text = quoted(6 /* STRING */);
  return { type: 'Text', start, end: endBefore(position), text };
}

function readQuantity(): Quantity {
  const start = tokenStarts[position]!;
  let negative = false;
  let value: number | undefined;
  let unit: Unit | undefined;
  let feet: string | undefined;
  if (tokenKinds[position] === 10 /* '-' */ || tokenKinds[position] === 3 /* NUMBER */) { if (tokenKinds[position] === 10 /* '-' */) { keyword(10 /* '-' */, '-'); negative = true; }
value = decimal(3 /* NUMBER */);
if (tokenKinds[position] === 55 /* 'in' */ || tokenKinds[position] === 7 /* '%' */ || (tokenKinds[position] === 5 /* ID */ && (set11[tokenKinds[position + 1]!] === 1))) { unit = readUnit(); } } else if (tokenKinds[position] === 1 /* FEET_AND_INCHES */) { feet = word(1 /* FEET_AND_INCHES */); } else { stop(); }
  return { type: 'Quantity', start, end: endBefore(position), negative, value, unit, feet };
}

function readUnit(): Unit {
  const start = tokenStarts[position]!;
  let text: string | 'in' | '%' | undefined;
  let per: string | undefined;
  if (tokenKinds[position] === 5 /* ID */) { text = word(5 /* ID */); } else if (tokenKinds[position] === 55 /* 'in' */) { text = keyword(55 /* 'in' */, 'in'); } else if (tokenKinds[position] === 7 /* '%' */) { text = keyword(7 /* '%' */, '%'); } else { stop(); }
if (tokenKinds[position] === 13 /* '/' */) { skip(13 /* '/' */);
per = word(5 /* ID */); }
  return { type: 'Unit', start, end: endBefore(position), text, per };
}

function readInteger(): Integer {
  const start = tokenStarts[position]!;
  let negative = false;
  let value: number | undefined;
  if (tokenKinds[position] === 10 /* '-' */) { keyword(10 /* '-' */, '-'); negative = true; }
value = decimal(3 /* NUMBER */);
  return { type: 'Integer', start, end: endBefore(position), negative, value };
}

function readFormat(): Format {
  const start = tokenStarts[position]!;
  let text: string | undefined;
  text = word(2 /* FRAMING */);
  return { type: 'Format', start, end: endBefore(position), text };
}
