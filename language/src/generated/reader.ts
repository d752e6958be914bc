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

/** The last word of each length: texts repeat few words, and one text for all of them is cut out and hashed once. */
const lastWords = new Array<string>(32).fill('');
/** The word that was stepped over. */
function word(): string {
  const start = tokenStarts[position - 1]!;
  const length = tokenEnds[position - 1]! - start;
  const last = lastWords[length % lastWords.length]!;
  if (last.length === length && source.startsWith(last, start)) return last;
  const text = source.slice(start, start + length);
  lastWords[length % lastWords.length] = text;
  return text;
}
function quoted(): string {
  return unquote(word());
}
function decimal(): number {
  return decimalAt(source, tokenStarts[position - 1]!, tokenEnds[position - 1]!);
}

/** By its number, the token at which the text that was read last could not be read on. */
export const stoppedAt = (): number => position;

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
  return { type: 'Sheet', start, end: position === 0 ? 0 : tokenEnds[position - 1]!, imports, declarations };
}

function readImport(): Import {
  const start = tokenStarts[position]!;
  let path: Text | undefined;
  if (tokenKinds[position] !== 54 /* 'import' */) stop(); position++;
if (tokenKinds[position] === 6 /* STRING */) { path = readText(); }
  return { type: 'Import', start, end: tokenEnds[position - 1]!, path };
}

function readDeclaration(): Declaration { if (tokenKinds[position] === 29 /* 'cable' */) { return readCableDeclaration(); } else if (tokenKinds[position] === 43 /* 'device' */) { return readDeviceDeclaration(); } else if (tokenKinds[position] === 86 /* 'store' */) { return readStoreDeclaration(); } else { stop(); } return stop(); }

function readCableDeclaration(): CableDeclaration {
  const start = tokenStarts[position]!;
  let name: Name | undefined;
  let label: Text | undefined;
  let properties: readonly (CableProperty)[] = none;
  if (tokenKinds[position] !== 29 /* 'cable' */) stop(); position++;
name = readName();
if (tokenKinds[position] === 6 /* STRING */) { label = readText(); }
if (tokenKinds[position] !== 101 /* '{' */) stop(); position++;
while (set2[tokenKinds[position]!] === 1) { properties = added(properties, readCableProperty()); }
if (tokenKinds[position] !== 102 /* '}' */) stop(); position++;
  return { type: 'CableDeclaration', start, end: tokenEnds[position - 1]!, name, label, properties };
}

function readCableProperty(): CableProperty { if (tokenKinds[position] === 37 /* 'conductor' */) { return readConductor(); } else if (tokenKinds[position] === 96 /* 'twisted' */ || tokenKinds[position] === 97 /* 'untwisted' */) { return readTwist(); } else if (tokenKinds[position] === 81 /* 'shield' */) { return readCableShield(); } else if (tokenKinds[position] === 33 /* 'class' */) { return readCableClass(); } else if (tokenKinds[position] === 53 /* 'impedance' */) { return readImpedance(); } else if (tokenKinds[position] === 30 /* 'capacitance' */) { return readCapacitance(); } else if (tokenKinds[position] === 98 /* 'velocity' */) { return readVelocity(); } else if (tokenKinds[position] === 76 /* 'resistance' */) { return readResistance(); } else if (tokenKinds[position] === 35 /* 'colours' */) { return readCableColours(); } else if (tokenKinds[position] === 32 /* 'carries' */) { return readCarries(); } else { stop(); } return stop(); }

function readConductor(): Conductor {
  const start = tokenStarts[position]!;
  let size: Quantity | undefined;
  let make: readonly (Word)[] = none;
  if (tokenKinds[position] !== 37 /* 'conductor' */) stop(); position++;
size = readQuantity();
while (tokenKinds[position] === 5 /* ID */ || tokenKinds[position] === 4 /* HYPHENATED */) { make = added(make, readWord()); }
  return { type: 'Conductor', start, end: tokenEnds[position - 1]!, size, make };
}

function readTwist(): Twist {
  const start = tokenStarts[position]!;
  let pairs: Integer | undefined;
  let untwisted = false;
  if (tokenKinds[position] === 96 /* 'twisted' */) { position++;
if (tokenKinds[position] !== 70 /* 'pairs' */) stop(); position++;
pairs = readInteger(); } else if (tokenKinds[position] === 97 /* 'untwisted' */) { position++; untwisted = true; } else { stop(); }
  return { type: 'Twist', start, end: tokenEnds[position - 1]!, pairs, untwisted };
}

function readCableShield(): CableShield {
  const start = tokenStarts[position]!;
  let make: readonly (Word)[] = none;
  if (tokenKinds[position] !== 81 /* 'shield' */) stop(); position++;
while (tokenKinds[position] === 5 /* ID */ || tokenKinds[position] === 4 /* HYPHENATED */) { make = added(make, readWord()); }
  return { type: 'CableShield', start, end: tokenEnds[position - 1]!, make };
}

function readCableClass(): CableClass {
  const start = tokenStarts[position]!;
  let name: Word | undefined;
  if (tokenKinds[position] !== 33 /* 'class' */) stop(); position++;
name = readWord();
  return { type: 'CableClass', start, end: tokenEnds[position - 1]!, name };
}

function readImpedance(): Impedance {
  const start = tokenStarts[position]!;
  let value: Quantity | undefined;
  if (tokenKinds[position] !== 53 /* 'impedance' */) stop(); position++;
value = readQuantity();
  return { type: 'Impedance', start, end: tokenEnds[position - 1]!, value };
}

function readCapacitance(): Capacitance {
  const start = tokenStarts[position]!;
  let value: Quantity | undefined;
  if (tokenKinds[position] !== 30 /* 'capacitance' */) stop(); position++;
value = readQuantity();
  return { type: 'Capacitance', start, end: tokenEnds[position - 1]!, value };
}

function readVelocity(): Velocity {
  const start = tokenStarts[position]!;
  let value: Quantity | undefined;
  if (tokenKinds[position] !== 98 /* 'velocity' */) stop(); position++;
value = readQuantity();
  return { type: 'Velocity', start, end: tokenEnds[position - 1]!, value };
}

function readResistance(): Resistance {
  const start = tokenStarts[position]!;
  let value: Quantity | undefined;
  if (tokenKinds[position] !== 76 /* 'resistance' */) stop(); position++;
value = readQuantity();
  return { type: 'Resistance', start, end: tokenEnds[position - 1]!, value };
}

function readCableColours(): CableColours {
  const start = tokenStarts[position]!;
  let colours: readonly (Word)[] = none;
  if (tokenKinds[position] !== 35 /* 'colours' */) stop(); position++;
colours = added(colours, readWord());
while (tokenKinds[position] === 9 /* ',' */) { position++;
colours = added(colours, readWord()); }
  return { type: 'CableColours', start, end: tokenEnds[position - 1]!, colours };
}

function readCarries(): Carries {
  const start = tokenStarts[position]!;
  let current: Quantity | undefined;
  if (tokenKinds[position] !== 32 /* 'carries' */) stop(); position++;
current = readQuantity();
  return { type: 'Carries', start, end: tokenEnds[position - 1]!, current };
}

function readDeviceDeclaration(): DeviceDeclaration {
  const start = tokenStarts[position]!;
  let name: Name | undefined;
  let label: Text | undefined;
  let members: readonly (DeviceMember)[] = none;
  if (tokenKinds[position] !== 43 /* 'device' */) stop(); position++;
name = readName();
if (tokenKinds[position] === 6 /* STRING */) { label = readText(); }
if (tokenKinds[position] !== 101 /* '{' */) stop(); position++;
while (set3[tokenKinds[position]!] === 1) { members = added(members, readDeviceMember()); }
if (tokenKinds[position] !== 102 /* '}' */) stop(); position++;
  return { type: 'DeviceDeclaration', start, end: tokenEnds[position - 1]!, name, label, members };
}

function readDeviceMember(): DeviceMember { if (tokenKinds[position] === 79 /* 'role' */) { return readRole(); } else if (tokenKinds[position] === 78 /* 'revision' */) { return readRevisions(); } else if (tokenKinds[position] === 72 /* 'port' */) { return readPortDeclaration(); } else if (tokenKinds[position] === 56 /* 'indicator' */) { return readIndicator(); } else if (tokenKinds[position] === 60 /* 'mark' */) { return readMark(); } else { stop(); } return stop(); }

function readRole(): Role {
  const start = tokenStarts[position]!;
  let role: RoleName | undefined;
  if (tokenKinds[position] !== 79 /* 'role' */) stop(); position++;
role = readRoleName();
  return { type: 'Role', start, end: tokenEnds[position - 1]!, role };
}

function readRoleName(): RoleName {
  const start = tokenStarts[position]!;
  let text: string | 'node' | undefined;
  if (tokenKinds[position] === 5 /* ID */) { position++; text = word(); } else if (tokenKinds[position] === 64 /* 'node' */) { position++; text = 'node'; } else { stop(); }
  return { type: 'RoleName', start, end: tokenEnds[position - 1]!, text };
}

function readRevisions(): Revisions {
  const start = tokenStarts[position]!;
  let names: readonly (Name)[] = none;
  if (tokenKinds[position] !== 78 /* 'revision' */) stop(); position++;
names = added(names, readName());
while (tokenKinds[position] === 9 /* ',' */) { position++;
names = added(names, readName()); }
  return { type: 'Revisions', start, end: tokenEnds[position - 1]!, names };
}

function readIndicator(): Indicator {
  const start = tokenStarts[position]!;
  let name: Name | undefined;
  let text: Text | undefined;
  if (tokenKinds[position] !== 56 /* 'indicator' */) stop(); position++;
name = readName();
if (tokenKinds[position] === 6 /* STRING */) { text = readText(); }
  return { type: 'Indicator', start, end: tokenEnds[position - 1]!, name, text };
}

function readMark(): Mark {
  const start = tokenStarts[position]!;
  let text: Text | undefined;
  if (tokenKinds[position] !== 60 /* 'mark' */) stop(); position++;
text = readText();
  return { type: 'Mark', start, end: tokenEnds[position - 1]!, text };
}

function readPortDeclaration(): PortDeclaration {
  const start = tokenStarts[position]!;
  let name: Name | undefined;
  let label: Text | undefined;
  let kind: Word | undefined;
  let properties: readonly (PortProperty)[] = none;
  if (tokenKinds[position] !== 72 /* 'port' */) stop(); position++;
name = readName();
if (tokenKinds[position] === 6 /* STRING */) { label = readText(); }
if (tokenKinds[position] !== 14 /* ':' */) stop(); position++;
kind = readWord();
if (tokenKinds[position] === 101 /* '{' */) { position++;
while (set4[tokenKinds[position]!] === 1) { properties = added(properties, readPortProperty()); }
if (tokenKinds[position] !== 102 /* '}' */) stop(); position++; }
  return { type: 'PortDeclaration', start, end: tokenEnds[position - 1]!, name, label, kind, properties };
}

function readPortProperty(): PortProperty { if (tokenKinds[position] === 90 /* 'terminals' */) { return readTerminals(); } else if (tokenKinds[position] === 84 /* 'speaks' */) { return readSpeaks(); } else if (tokenKinds[position] === 71 /* 'polarity' */) { return readPolarity(); } else if (tokenKinds[position] === 58 /* 'load' */) { return readLoad(); } else if (tokenKinds[position] === 30 /* 'capacitance' */) { return readCapacitance(); } else if (tokenKinds[position] === 76 /* 'resistance' */) { return readResistance(); } else if (tokenKinds[position] === 92 /* 'terminator' */) { return readPortTerminator(); } else if (tokenKinds[position] === 24 /* 'bias' */) { return readPortBias(); } else if (tokenKinds[position] === 17 /* 'address' */) { return readPortAddress(); } else if (tokenKinds[position] === 73 /* 'rates' */) { return readRates(); } else if (tokenKinds[position] === 46 /* 'edge' */) { return readEdge(); } else if (tokenKinds[position] === 42 /* 'delay' */) { return readDelay(); } else if (tokenKinds[position] === 75 /* 'reserved' */) { return readReserved(); } else if (tokenKinds[position] === 95 /* 'twin' */) { return readTwin(); } else if (tokenKinds[position] === 87 /* 'supplies' */) { return readSupplies(); } else if (tokenKinds[position] === 44 /* 'draws' */) { return readDraws(); } else if (tokenKinds[position] === 65 /* 'normally' */) { return readNormally(); } else if (tokenKinds[position] === 47 /* 'expects' */) { return readExpects(); } else if (tokenKinds[position] === 20 /* 'at' */) { return readAtMost(); } else if (tokenKinds[position] === 74 /* 'reads' */) { return readReads(); } else { stop(); } return stop(); }

function readTerminals(): Terminals {
  const start = tokenStarts[position]!;
  let terminals: readonly (Terminal)[] = none;
  if (tokenKinds[position] !== 90 /* 'terminals' */) stop(); position++;
do { terminals = added(terminals, readTerminal()); } while (set5[tokenKinds[position]!] === 1);
  return { type: 'Terminals', start, end: tokenEnds[position - 1]!, terminals };
}

function readTerminal(): Terminal {
  const start = tokenStarts[position]!;
  let role: '+' | '-' | 'shield' | 'common' | undefined;
  let mark: Text | undefined;
  if (tokenKinds[position] === 8 /* '+' */) { position++; role = '+'; } else if (tokenKinds[position] === 10 /* '-' */) { position++; role = '-'; } else if (tokenKinds[position] === 81 /* 'shield' */) { position++; role = 'shield'; } else if (tokenKinds[position] === 36 /* 'common' */) { position++; role = 'common'; } else { stop(); }
mark = readText();
  return { type: 'Terminal', start, end: tokenEnds[position - 1]!, role, mark };
}

function readSpeaks(): Speaks {
  const start = tokenStarts[position]!;
  let kinds: readonly (Word)[] = none;
  if (tokenKinds[position] !== 84 /* 'speaks' */) stop(); position++;
kinds = added(kinds, readWord());
while (tokenKinds[position] === 9 /* ',' */) { position++;
kinds = added(kinds, readWord()); }
  return { type: 'Speaks', start, end: tokenEnds[position - 1]!, kinds };
}

function readPolarity(): Polarity {
  const start = tokenStarts[position]!;
  let value: Word | undefined;
  if (tokenKinds[position] !== 71 /* 'polarity' */) stop(); position++;
value = readWord();
  return { type: 'Polarity', start, end: tokenEnds[position - 1]!, value };
}

function readLoad(): Load {
  const start = tokenStarts[position]!;
  let numerator: number | undefined;
  let denominator: number | undefined;
  if (tokenKinds[position] !== 58 /* 'load' */) stop(); position++;
if (tokenKinds[position] !== 3 /* NUMBER */) stop(); position++; numerator = decimal();
if (tokenKinds[position] === 13 /* '/' */) { position++;
if (tokenKinds[position] !== 3 /* NUMBER */) stop(); position++; denominator = decimal(); }
  return { type: 'Load', start, end: tokenEnds[position - 1]!, numerator, denominator };
}

function readPortTerminator(): PortTerminator {
  const start = tokenStarts[position]!;
  let means: 'switch' | 'fixed' | undefined;
  let resistance: Quantity | undefined;
  let capacitance: Quantity | undefined;
  if (tokenKinds[position] !== 92 /* 'terminator' */) stop(); position++;
if (tokenKinds[position] === 88 /* 'switch' */) { position++; means = 'switch'; } else if (tokenKinds[position] === 48 /* 'fixed' */) { position++; means = 'fixed'; } else { stop(); }
resistance = readQuantity();
if (tokenKinds[position] === 31 /* 'capacitor' */) { position++;
capacitance = readQuantity(); }
  return { type: 'PortTerminator', start, end: tokenEnds[position - 1]!, means, resistance, capacitance };
}

function readPortBias(): PortBias {
  const start = tokenStarts[position]!;
  let needed = false;
  let means: 'switch' | 'fixed' | undefined;
  let resistors: BiasResistors | undefined;
  if (tokenKinds[position] !== 24 /* 'bias' */) stop(); position++;
if (tokenKinds[position] === 62 /* 'needed' */) { position++; needed = true; } else if (tokenKinds[position] === 88 /* 'switch' */ || tokenKinds[position] === 48 /* 'fixed' */) { if (tokenKinds[position] === 88 /* 'switch' */) { position++; means = 'switch'; } else if (tokenKinds[position] === 48 /* 'fixed' */) { position++; means = 'fixed'; } else { stop(); }
resistors = readBiasResistors(); } else { stop(); }
  return { type: 'PortBias', start, end: tokenEnds[position - 1]!, needed, means, resistors };
}

function readBiasResistors(): BiasResistors {
  const start = tokenStarts[position]!;
  let up: Quantity | undefined;
  let down: Quantity | undefined;
  let supply: Quantity | undefined;
  up = readQuantity();
if (tokenKinds[position] === 94 /* 'to' */) { position++;
if (tokenKinds[position] !== 8 /* '+' */) stop(); position++;
down = readQuantity();
if (tokenKinds[position] !== 94 /* 'to' */) stop(); position++;
if (tokenKinds[position] !== 10 /* '-' */) stop(); position++; }
if (tokenKinds[position] === 82 /* 'source' */) { position++;
supply = readQuantity(); }
  return { type: 'BiasResistors', start, end: tokenEnds[position - 1]!, up, down, supply };
}

function readPortAddress(): PortAddress {
  const start = tokenStarts[position]!;
  let means: Word | undefined;
  let low: Integer | undefined;
  let high: Integer | undefined;
  let positions: Integer | undefined;
  let coding: readonly (Word)[] = none;
  if (tokenKinds[position] !== 17 /* 'address' */) stop(); position++;
means = readWord();
if (tokenKinds[position] === 10 /* '-' */ || tokenKinds[position] === 3 /* NUMBER */) { low = readInteger();
if (tokenKinds[position] !== 12 /* '..' */) stop(); position++;
high = readInteger(); }
if (tokenKinds[position] === 66 /* 'of' */) { position++;
positions = readInteger(); }
while (tokenKinds[position] === 5 /* ID */ || tokenKinds[position] === 4 /* HYPHENATED */) { coding = added(coding, readWord()); }
  return { type: 'PortAddress', start, end: tokenEnds[position - 1]!, means, low, high, positions, coding };
}

function readRates(): Rates {
  const start = tokenStarts[position]!;
  let rates: readonly (Quantity)[] = none;
  if (tokenKinds[position] !== 73 /* 'rates' */) stop(); position++;
rates = added(rates, readQuantity());
while (tokenKinds[position] === 9 /* ',' */) { position++;
rates = added(rates, readQuantity()); }
  return { type: 'Rates', start, end: tokenEnds[position - 1]!, rates };
}

function readEdge(): Edge {
  const start = tokenStarts[position]!;
  let time: Quantity | undefined;
  if (tokenKinds[position] !== 46 /* 'edge' */) stop(); position++;
time = readQuantity();
  return { type: 'Edge', start, end: tokenEnds[position - 1]!, time };
}

function readDelay(): Delay {
  const start = tokenStarts[position]!;
  let time: Quantity | undefined;
  if (tokenKinds[position] !== 42 /* 'delay' */) stop(); position++;
time = readQuantity();
  return { type: 'Delay', start, end: tokenEnds[position - 1]!, time };
}

function readReserved(): Reserved {
  const start = tokenStarts[position]!;
  let revisions: readonly (Name)[] = none;
  let reason: Text | undefined;
  if (tokenKinds[position] !== 75 /* 'reserved' */) stop(); position++;
if (tokenKinds[position] === 55 /* 'in' */) { position++;
revisions = added(revisions, readName());
while (tokenKinds[position] === 9 /* ',' */) { position++;
revisions = added(revisions, readName()); } }
if (tokenKinds[position] === 6 /* STRING */) { reason = readText(); }
  return { type: 'Reserved', start, end: tokenEnds[position - 1]!, revisions, reason };
}

function readTwin(): Twin {
  const start = tokenStarts[position]!;
  let port: Name | undefined;
  let reason: Text | undefined;
  if (tokenKinds[position] !== 95 /* 'twin' */) stop(); position++;
if (tokenKinds[position] !== 66 /* 'of' */) stop(); position++;
port = readName();
if (tokenKinds[position] === 6 /* STRING */) { reason = readText(); }
  return { type: 'Twin', start, end: tokenEnds[position - 1]!, port, reason };
}

function readSupplies(): Supplies {
  const start = tokenStarts[position]!;
  let voltage: Quantity | undefined;
  let form: Word | undefined;
  let tolerance: Quantity | undefined;
  let limit: Quantity | undefined;
  let marked: Integer | undefined;
  if (tokenKinds[position] !== 87 /* 'supplies' */) stop(); position++;
voltage = readQuantity();
if (tokenKinds[position] === 5 /* ID */ || tokenKinds[position] === 4 /* HYPHENATED */) { form = readWord(); }
if (tokenKinds[position] === 100 /* 'within' */) { position++;
tolerance = readQuantity(); }
if (tokenKinds[position] === 57 /* 'limit' */) { position++;
limit = readQuantity(); }
if (tokenKinds[position] === 33 /* 'class' */) { position++;
marked = readInteger(); }
  return { type: 'Supplies', start, end: tokenEnds[position - 1]!, voltage, form, tolerance, limit, marked };
}

function readDraws(): Draws {
  const start = tokenStarts[position]!;
  let amount: Quantity | undefined;
  let form: Word | undefined;
  let low: Quantity | undefined;
  let high: Quantity | undefined;
  if (tokenKinds[position] !== 44 /* 'draws' */) stop(); position++;
amount = readQuantity();
if (tokenKinds[position] === 5 /* ID */ || tokenKinds[position] === 4 /* HYPHENATED */) { form = readWord(); }
if (tokenKinds[position] === 15 /* 'above' */) { position++;
low = readQuantity(); }
if (tokenKinds[position] === 22 /* 'below' */) { position++;
high = readQuantity(); }
  return { type: 'Draws', start, end: tokenEnds[position - 1]!, amount, form, low, high };
}

function readNormally(): Normally {
  const start = tokenStarts[position]!;
  let state: 'closed' | 'open' | undefined;
  if (tokenKinds[position] !== 65 /* 'normally' */) stop(); position++;
if (tokenKinds[position] === 34 /* 'closed' */) { position++; state = 'closed'; } else if (tokenKinds[position] === 69 /* 'open' */) { position++; state = 'open'; } else { stop(); }
  return { type: 'Normally', start, end: tokenEnds[position - 1]!, state };
}

function readExpects(): Expects {
  const start = tokenStarts[position]!;
  let resistance: Quantity | undefined;
  if (tokenKinds[position] !== 47 /* 'expects' */) stop(); position++;
if (tokenKinds[position] !== 77 /* 'resistor' */) stop(); position++;
resistance = readQuantity();
  return { type: 'Expects', start, end: tokenEnds[position - 1]!, resistance };
}

function readAtMost(): AtMost {
  const start = tokenStarts[position]!;
  let amount: Quantity | undefined;
  let contacts = false;
  let cable = false;
  if (tokenKinds[position] !== 20 /* 'at' */) stop(); position++;
if (tokenKinds[position] !== 61 /* 'most' */) stop(); position++;
amount = readQuantity();
if (tokenKinds[position] === 38 /* 'contacts' */) { position++; contacts = true; } else if (tokenKinds[position] === 66 /* 'of' */) { position++;
if (tokenKinds[position] !== 29 /* 'cable' */) stop(); position++; cable = true; } else { stop(); }
  return { type: 'AtMost', start, end: tokenEnds[position - 1]!, amount, contacts, cable };
}

function readReads(): Reads {
  const start = tokenStarts[position]!;
  let meaning: Word | undefined;
  let low: Quantity | undefined;
  let high: Quantity | undefined;
  if (tokenKinds[position] !== 74 /* 'reads' */) stop(); position++;
meaning = readWord();
if (tokenKinds[position] === 15 /* 'above' */) { position++;
low = readQuantity(); }
if (tokenKinds[position] === 22 /* 'below' */) { position++;
high = readQuantity(); }
  return { type: 'Reads', start, end: tokenEnds[position - 1]!, meaning, low, high };
}

function readStoreDeclaration(): StoreDeclaration {
  const start = tokenStarts[position]!;
  let name: Name | undefined;
  let continued = false;
  let label: Text | undefined;
  let members: readonly (StoreMember)[] = none;
  if (tokenKinds[position] !== 86 /* 'store' */) stop(); position++;
name = readName();
if (tokenKinds[position] === 39 /* 'continued' */) { position++; continued = true; }
if (tokenKinds[position] === 6 /* STRING */) { label = readText(); }
if (tokenKinds[position] !== 101 /* '{' */) stop(); position++;
while (set6[tokenKinds[position]!] === 1) { members = added(members, readStoreMember()); }
if (tokenKinds[position] !== 102 /* '}' */) stop(); position++;
  return { type: 'StoreDeclaration', start, end: tokenEnds[position - 1]!, name, continued, label, members };
}

function readStoreMember(): StoreMember { if (tokenKinds[position] === 64 /* 'node' */) { return readNodeDeclaration(); } else if (tokenKinds[position] === 63 /* 'network' */) { return readNetworkDeclaration(); } else if (tokenKinds[position] === 28 /* 'bus' */) { return readBusDeclaration(); } else if (tokenKinds[position] === 99 /* 'waive' */) { return readWaiver(); } else { stop(); } return stop(); }

function readNodeDeclaration(): NodeDeclaration {
  const start = tokenStarts[position]!;
  let name: Name | undefined;
  let label: Text | undefined;
  let device: Name | undefined;
  let revision: Name | undefined;
  if (tokenKinds[position] !== 64 /* 'node' */) stop(); position++;
name = readName();
if (tokenKinds[position] === 6 /* STRING */) { label = readText(); }
if (tokenKinds[position] === 14 /* ':' */) { position++;
device = readName(); }
if (tokenKinds[position] === 78 /* 'revision' */) { position++;
revision = readName(); }
  return { type: 'NodeDeclaration', start, end: tokenEnds[position - 1]!, name, label, device, revision };
}

function readNetworkDeclaration(): NetworkDeclaration {
  const start = tokenStarts[position]!;
  let name: Name | undefined;
  let label: Text | undefined;
  let members: readonly (NetworkMember)[] = none;
  if (tokenKinds[position] !== 63 /* 'network' */) stop(); position++;
name = readName();
if (tokenKinds[position] === 6 /* STRING */) { label = readText(); }
if (tokenKinds[position] !== 101 /* '{' */) stop(); position++;
if (tokenKinds[position] === 5 /* ID */ || tokenKinds[position] === 6 /* STRING */) { members = added(members, readNetworkMember());
while (tokenKinds[position] === 9 /* ',' */) { position++;
members = added(members, readNetworkMember()); } }
if (tokenKinds[position] !== 102 /* '}' */) stop(); position++;
  return { type: 'NetworkDeclaration', start, end: tokenEnds[position - 1]!, name, label, members };
}

function readNetworkMember(): NetworkMember {
  const start = tokenStarts[position]!;
  let node: Name | undefined;
  let address: Integer | undefined;
  node = readName();
if (tokenKinds[position] === 17 /* 'address' */) { position++;
address = readInteger(); }
  return { type: 'NetworkMember', start, end: tokenEnds[position - 1]!, node, address };
}

function readWaiver(): Waiver {
  const start = tokenStarts[position]!;
  let rule: Word | undefined;
  let at: LandingReference | undefined;
  let reason: Text | undefined;
  if (tokenKinds[position] !== 99 /* 'waive' */) stop(); position++;
rule = readWord();
if (tokenKinds[position] === 20 /* 'at' */) { position++;
at = readLandingReference(); }
if (tokenKinds[position] === 21 /* 'because' */) { position++;
reason = readText(); }
  return { type: 'Waiver', start, end: tokenEnds[position - 1]!, rule, at, reason };
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
  if (tokenKinds[position] !== 28 /* 'bus' */) stop(); position++;
name = readName();
if (tokenKinds[position] === 6 /* STRING */) { label = readText(); }
if (tokenKinds[position] !== 14 /* ':' */) stop(); position++;
kind = readWord();
if (tokenKinds[position] === 10 /* '-' */ || tokenKinds[position] === 3 /* NUMBER */ || tokenKinds[position] === 1 /* FEET_AND_INCHES */) { rate = readQuantity(); }
if (tokenKinds[position] === 2 /* FRAMING */) { format = readFormat(); }
if (tokenKinds[position] === 68 /* 'on' */) { position++;
cable = readName(); }
if (tokenKinds[position] !== 101 /* '{' */) stop(); position++;
while (set7[tokenKinds[position]!] === 1) { statements = added(statements, readBusStatement()); }
if (tokenKinds[position] !== 102 /* '}' */) stop(); position++;
  return { type: 'BusDeclaration', start, end: tokenEnds[position - 1]!, name, label, kind, rate, format, cable, statements };
}

function readBusStatement(): BusStatement { if (tokenKinds[position] === 50 /* 'from' */) { return readFrom(); } else if (set8[tokenKinds[position]!] === 1) { return readRun(); } else if (tokenKinds[position] === 19 /* 'area' */) { return readArea(); } else if (tokenKinds[position] === 81 /* 'shield' */) { return readBusShield(); } else if (tokenKinds[position] === 24 /* 'bias' */) { return readBusBias(); } else if (tokenKinds[position] === 18 /* 'ambient' */) { return readAmbient(); } else if (tokenKinds[position] === 80 /* 'sample' */) { return readSamplePoint(); } else if (tokenKinds[position] === 52 /* 'guide' */) { return readGuide(); } else if (tokenKinds[position] === 35 /* 'colours' */) { return readBusColours(); } else if (tokenKinds[position] === 99 /* 'waive' */) { return readWaiver(); } else { stop(); } return stop(); }

function readFrom(): From {
  const start = tokenStarts[position]!;
  let landing: Landing | undefined;
  if (tokenKinds[position] !== 50 /* 'from' */) stop(); position++;
landing = readLanding();
  return { type: 'From', start, end: tokenEnds[position - 1]!, landing };
}

function readRun(): Run {
  const start = tokenStarts[position]!;
  let tap = false;
  let length: Quantity | undefined;
  let options: readonly (RunOption)[] = none;
  let landing: Landing | undefined;
  if (tokenKinds[position] === 89 /* 'tap' */) { position++; tap = true; }
length = readQuantity();
while (set9[tokenKinds[position]!] === 1) { options = added(options, readRunOption()); }
if (tokenKinds[position] === 94 /* 'to' */) { position++;
landing = readLanding(); }
  return { type: 'Run', start, end: tokenEnds[position - 1]!, tap, length, options, landing };
}

function readArea(): Area {
  const start = tokenStarts[position]!;
  let name: Name | undefined;
  if (tokenKinds[position] !== 19 /* 'area' */) stop(); position++;
name = readName();
  return { type: 'Area', start, end: tokenEnds[position - 1]!, name };
}

function readRunOption(): RunOption { if (tokenKinds[position] === 68 /* 'on' */) { return readOnCable(); } else if (tokenKinds[position] === 27 /* 'built' */) { return readBuilt(); } else if (tokenKinds[position] === 40 /* 'cords' */) { return readCords(); } else if (tokenKinds[position] === 83 /* 'spare' */) { return readSpare(); } else if (tokenKinds[position] === 23 /* 'beside' */) { return readBesideMains(); } else if (tokenKinds[position] === 51 /* 'fuse' */) { return readFuse(); } else { stop(); } return stop(); }

function readOnCable(): OnCable {
  const start = tokenStarts[position]!;
  let cable: Name | undefined;
  if (tokenKinds[position] !== 68 /* 'on' */) stop(); position++;
cable = readName();
  return { type: 'OnCable', start, end: tokenEnds[position - 1]!, cable };
}

function readBuilt(): Built {
  const start = tokenStarts[position]!;
  let length: Quantity | undefined;
  if (tokenKinds[position] !== 27 /* 'built' */) stop(); position++;
length = readQuantity();
  return { type: 'Built', start, end: tokenEnds[position - 1]!, length };
}

function readCords(): Cords {
  const start = tokenStarts[position]!;
  let length: Quantity | undefined;
  let cable: Name | undefined;
  if (tokenKinds[position] !== 40 /* 'cords' */) stop(); position++;
length = readQuantity();
if (tokenKinds[position] === 66 /* 'of' */) { position++;
cable = readName(); }
  return { type: 'Cords', start, end: tokenEnds[position - 1]!, length, cable };
}

function readSpare(): Spare {
  const start = tokenStarts[position]!;
  let spare = false;
  if (tokenKinds[position] !== 83 /* 'spare' */) stop(); position++; spare = true;
  return { type: 'Spare', start, end: tokenEnds[position - 1]!, spare };
}

function readBesideMains(): BesideMains {
  const start = tokenStarts[position]!;
  let mains = false;
  if (tokenKinds[position] !== 23 /* 'beside' */) stop(); position++;
if (tokenKinds[position] !== 59 /* 'mains' */) stop(); position++; mains = true;
  return { type: 'BesideMains', start, end: tokenEnds[position - 1]!, mains };
}

function readFuse(): Fuse {
  const start = tokenStarts[position]!;
  let current: Quantity | undefined;
  if (tokenKinds[position] !== 51 /* 'fuse' */) stop(); position++;
current = readQuantity();
  return { type: 'Fuse', start, end: tokenEnds[position - 1]!, current };
}

function readLanding(): Landing {
  const start = tokenStarts[position]!;
  let splice: Name | undefined;
  let node: Name | undefined;
  let port: Name | undefined;
  let label: Text | undefined;
  let device: Name | undefined;
  let properties: readonly (LandingProperty)[] = none;
  if (tokenKinds[position] === 85 /* 'splice' */) { position++;
splice = readName(); } else if (tokenKinds[position] === 5 /* ID */ || tokenKinds[position] === 6 /* STRING */) { node = readName();
if (tokenKinds[position] === 11 /* '.' */) { position++;
port = readName(); } } else { stop(); }
if (tokenKinds[position] === 6 /* STRING */) { label = readText(); }
if (tokenKinds[position] === 14 /* ':' */) { position++;
device = readName(); }
while (set10[tokenKinds[position]!] === 1 || (tokenKinds[position] === 81 /* 'shield' */ && (tokenKinds[position + 1] === 93 /* 'through' */ || tokenKinds[position + 1] === 69 /* 'open' */ || tokenKinds[position + 1] === 49 /* 'floating' */))) { properties = added(properties, readLandingProperty()); }
  return { type: 'Landing', start, end: tokenEnds[position - 1]!, splice, node, port, label, device, properties };
}

function readLandingProperty(): LandingProperty { if (tokenKinds[position] === 17 /* 'address' */) { return readLandingAddress(); } else if (tokenKinds[position] === 91 /* 'terminate' */) { return readTerminate(); } else if (tokenKinds[position] === 88 /* 'switch' */) { return readSwitchOff(); } else if (tokenKinds[position] === 41 /* 'crossed' */) { return readCrossed(); } else if (tokenKinds[position] === 81 /* 'shield' */) { return readLandingShield(); } else if (tokenKinds[position] === 78 /* 'revision' */) { return readLandingRevision(); } else if (tokenKinds[position] === 25 /* 'breaks' */) { return readBreaks(); } else if (tokenKinds[position] === 16 /* 'across' */) { return readAcross(); } else { stop(); } return stop(); }

function readLandingAddress(): LandingAddress {
  const start = tokenStarts[position]!;
  let address: Integer | undefined;
  if (tokenKinds[position] !== 17 /* 'address' */) stop(); position++;
address = readInteger();
  return { type: 'LandingAddress', start, end: tokenEnds[position - 1]!, address };
}

function readTerminate(): Terminate {
  const start = tokenStarts[position]!;
  let switched = false;
  let resistance: Quantity | undefined;
  let capacitance: Quantity | undefined;
  if (tokenKinds[position] !== 91 /* 'terminate' */) stop(); position++;
if (tokenKinds[position] === 88 /* 'switch' */) { position++; switched = true; } else if (tokenKinds[position] === 77 /* 'resistor' */) { position++;
resistance = readQuantity();
if (tokenKinds[position] === 31 /* 'capacitor' */) { position++;
capacitance = readQuantity(); } } else { stop(); }
  return { type: 'Terminate', start, end: tokenEnds[position - 1]!, switched, resistance, capacitance };
}

function readSwitchOff(): SwitchOff {
  const start = tokenStarts[position]!;
  let off = false;
  if (tokenKinds[position] !== 88 /* 'switch' */) stop(); position++;
if (tokenKinds[position] !== 67 /* 'off' */) stop(); position++; off = true;
  return { type: 'SwitchOff', start, end: tokenEnds[position - 1]!, off };
}

function readCrossed(): Crossed {
  const start = tokenStarts[position]!;
  let crossed = false;
  if (tokenKinds[position] !== 41 /* 'crossed' */) stop(); position++; crossed = true;
  return { type: 'Crossed', start, end: tokenEnds[position - 1]!, crossed };
}

function readLandingShield(): LandingShield {
  const start = tokenStarts[position]!;
  let treatment: 'through' | 'open' | 'floating' | undefined;
  if (tokenKinds[position] !== 81 /* 'shield' */) stop(); position++;
if (tokenKinds[position] === 93 /* 'through' */) { position++; treatment = 'through'; } else if (tokenKinds[position] === 69 /* 'open' */) { position++; treatment = 'open'; } else if (tokenKinds[position] === 49 /* 'floating' */) { position++; treatment = 'floating'; } else { stop(); }
  return { type: 'LandingShield', start, end: tokenEnds[position - 1]!, treatment };
}

function readLandingRevision(): LandingRevision {
  const start = tokenStarts[position]!;
  let revision: Name | undefined;
  if (tokenKinds[position] !== 78 /* 'revision' */) stop(); position++;
revision = readName();
  return { type: 'LandingRevision', start, end: tokenEnds[position - 1]!, revision };
}

function readBreaks(): Breaks {
  const start = tokenStarts[position]!;
  let conductor: '+' | '-' | undefined;
  let bridge: Quantity | undefined;
  if (tokenKinds[position] !== 25 /* 'breaks' */) stop(); position++;
if (tokenKinds[position] === 8 /* '+' */) { position++; conductor = '+'; } else if (tokenKinds[position] === 10 /* '-' */) { position++; conductor = '-'; } else { stop(); }
if (tokenKinds[position] === 26 /* 'bridged' */) { position++;
bridge = readQuantity(); }
  return { type: 'Breaks', start, end: tokenEnds[position - 1]!, conductor, bridge };
}

function readAcross(): Across {
  const start = tokenStarts[position]!;
  let across = false;
  let through: Quantity | undefined;
  if (tokenKinds[position] !== 16 /* 'across' */) stop(); position++; across = true;
if (tokenKinds[position] === 93 /* 'through' */) { position++;
through = readQuantity(); }
  return { type: 'Across', start, end: tokenEnds[position - 1]!, across, through };
}

function readLandingReference(): LandingReference {
  const start = tokenStarts[position]!;
  let node: Name | undefined;
  let port: Name | undefined;
  node = readName();
if (tokenKinds[position] === 11 /* '.' */) { position++;
port = readName(); }
  return { type: 'LandingReference', start, end: tokenEnds[position - 1]!, node, port };
}

function readBusShield(): BusShield {
  const start = tokenStarts[position]!;
  let at: LandingReference | undefined;
  let resistance: Quantity | undefined;
  let capacitance: Quantity | undefined;
  if (tokenKinds[position] !== 81 /* 'shield' */) stop(); position++;
if (tokenKinds[position] !== 45 /* 'earthed' */) stop(); position++;
if (tokenKinds[position] !== 20 /* 'at' */) stop(); position++;
at = readLandingReference();
if (tokenKinds[position] === 93 /* 'through' */) { position++;
resistance = readQuantity();
if (tokenKinds[position] === 31 /* 'capacitor' */) { position++;
capacitance = readQuantity(); } }
  return { type: 'BusShield', start, end: tokenEnds[position - 1]!, at, resistance, capacitance };
}

function readBusBias(): BusBias {
  const start = tokenStarts[position]!;
  let at: LandingReference | undefined;
  let switched = false;
  let resistors: BiasResistors | undefined;
  if (tokenKinds[position] !== 24 /* 'bias' */) stop(); position++;
if (tokenKinds[position] !== 20 /* 'at' */) stop(); position++;
at = readLandingReference();
if (tokenKinds[position] === 88 /* 'switch' */) { position++; switched = true; } else if (tokenKinds[position] === 10 /* '-' */ || tokenKinds[position] === 3 /* NUMBER */ || tokenKinds[position] === 1 /* FEET_AND_INCHES */) { resistors = readBiasResistors(); } else { stop(); }
  return { type: 'BusBias', start, end: tokenEnds[position - 1]!, at, switched, resistors };
}

function readAmbient(): Ambient {
  const start = tokenStarts[position]!;
  let temperature: Quantity | undefined;
  if (tokenKinds[position] !== 18 /* 'ambient' */) stop(); position++;
temperature = readQuantity();
  return { type: 'Ambient', start, end: tokenEnds[position - 1]!, temperature };
}

function readSamplePoint(): SamplePoint {
  const start = tokenStarts[position]!;
  let point: Quantity | undefined;
  if (tokenKinds[position] !== 80 /* 'sample' */) stop(); position++;
if (tokenKinds[position] !== 20 /* 'at' */) stop(); position++;
point = readQuantity();
  return { type: 'SamplePoint', start, end: tokenEnds[position - 1]!, point };
}

function readGuide(): Guide {
  const start = tokenStarts[position]!;
  let name: Word | undefined;
  if (tokenKinds[position] !== 52 /* 'guide' */) stop(); position++;
name = readWord();
  return { type: 'Guide', start, end: tokenEnds[position - 1]!, name };
}

function readBusColours(): BusColours {
  const start = tokenStarts[position]!;
  let colours: readonly (ConductorColour)[] = none;
  if (tokenKinds[position] !== 35 /* 'colours' */) stop(); position++;
do { colours = added(colours, readConductorColour()); } while (tokenKinds[position] === 8 /* '+' */ || tokenKinds[position] === 36 /* 'common' */ || (tokenKinds[position] === 10 /* '-' */ && (tokenKinds[position + 1] === 5 /* ID */ || tokenKinds[position + 1] === 4 /* HYPHENATED */)) || (tokenKinds[position] === 81 /* 'shield' */ && (tokenKinds[position + 1] === 5 /* ID */ || tokenKinds[position + 1] === 4 /* HYPHENATED */)));
  return { type: 'BusColours', start, end: tokenEnds[position - 1]!, colours };
}

function readConductorColour(): ConductorColour {
  const start = tokenStarts[position]!;
  let role: '+' | '-' | 'shield' | 'common' | undefined;
  let colour: Word | undefined;
  if (tokenKinds[position] === 8 /* '+' */) { position++; role = '+'; } else if (tokenKinds[position] === 10 /* '-' */) { position++; role = '-'; } else if (tokenKinds[position] === 81 /* 'shield' */) { position++; role = 'shield'; } else if (tokenKinds[position] === 36 /* 'common' */) { position++; role = 'common'; } else { stop(); }
colour = readWord();
  return { type: 'ConductorColour', start, end: tokenEnds[position - 1]!, role, colour };
}

function readName(): Name {
  const start = tokenStarts[position]!;
  let text: string | undefined;
  if (tokenKinds[position] === 5 /* ID */) { position++; text = word(); } else if (tokenKinds[position] === 6 /* STRING */) { position++; text = quoted(); } else { stop(); }
  return { type: 'Name', start, end: tokenEnds[position - 1]!, text };
}

function readWord(): Word {
  const start = tokenStarts[position]!;
  let text: string | undefined;
  if (tokenKinds[position] === 5 /* ID */) { position++; text = word(); } else if (tokenKinds[position] === 4 /* HYPHENATED */) { position++; text = word(); } else { stop(); }
  return { type: 'Word', start, end: tokenEnds[position - 1]!, text };
}

function readText(): Text {
  const start = tokenStarts[position]!;
  let text: string | undefined;
  if (tokenKinds[position] !== 6 /* STRING */) stop(); position++; text = quoted();
  return { type: 'Text', start, end: tokenEnds[position - 1]!, text };
}

function readQuantity(): Quantity {
  const start = tokenStarts[position]!;
  let negative = false;
  let value: number | undefined;
  let unit: Unit | undefined;
  let feet: string | undefined;
  if (tokenKinds[position] === 10 /* '-' */ || tokenKinds[position] === 3 /* NUMBER */) { if (tokenKinds[position] === 10 /* '-' */) { position++; negative = true; }
if (tokenKinds[position] !== 3 /* NUMBER */) stop(); position++; value = decimal();
if (tokenKinds[position] === 55 /* 'in' */ || tokenKinds[position] === 7 /* '%' */ || (tokenKinds[position] === 5 /* ID */ && (set11[tokenKinds[position + 1]!] === 1))) { unit = readUnit(); } } else if (tokenKinds[position] === 1 /* FEET_AND_INCHES */) { position++; feet = word(); } else { stop(); }
  return { type: 'Quantity', start, end: tokenEnds[position - 1]!, negative, value, unit, feet };
}

function readUnit(): Unit {
  const start = tokenStarts[position]!;
  let text: string | 'in' | '%' | undefined;
  let per: string | undefined;
  if (tokenKinds[position] === 5 /* ID */) { position++; text = word(); } else if (tokenKinds[position] === 55 /* 'in' */) { position++; text = 'in'; } else if (tokenKinds[position] === 7 /* '%' */) { position++; text = '%'; } else { stop(); }
if (tokenKinds[position] === 13 /* '/' */) { position++;
if (tokenKinds[position] !== 5 /* ID */) stop(); position++; per = word(); }
  return { type: 'Unit', start, end: tokenEnds[position - 1]!, text, per };
}

function readInteger(): Integer {
  const start = tokenStarts[position]!;
  let negative = false;
  let value: number | undefined;
  if (tokenKinds[position] === 10 /* '-' */) { position++; negative = true; }
if (tokenKinds[position] !== 3 /* NUMBER */) stop(); position++; value = decimal();
  return { type: 'Integer', start, end: tokenEnds[position - 1]!, negative, value };
}

function readFormat(): Format {
  const start = tokenStarts[position]!;
  let text: string | undefined;
  if (tokenKinds[position] !== 2 /* FRAMING */) stop(); position++; text = word();
  return { type: 'Format', start, end: tokenEnds[position - 1]!, text };
}
