/** The small sound store that the pages of the pair, shield, address and port rules vary. */
import { block, rs485Port, shieldedPair, textOf } from '../example-parts.js';

/** A cable that suits every RS-485 bus. */
export const exampleCable = textOf(
  shieldedPair('ShieldedPair22', ['capacitance 12.5 pF/ft', 'velocity 66 %', 'colours white, blue']),
);

const port = (name: string, ...more: readonly string[]) => rs485Port(name, ['polarity required', 'load 1/8', ...more]);

/** A port of the head; what differs comes last. */
export const headPort = (name: string, ...more: readonly string[]): string[] =>
  port(name, 'terminator switch 120 ohm', ...more);

/** The head with these members: ports, revisions. */
export const headOf = (...members: readonly (readonly string[])[]): string =>
  textOf(block('device SiteHead', ['role head', ...members.flat()]));

export const exampleHead = headOf(headPort('field'));

export const exampleBoard = textOf(block('device CaseBoard', port('field', 'address dial 1..99')));

/** A store of these statements, with a bus that is sound but for what they say. */
export function exampleStore(statements: string, heading = 'modbus-rtu 9600 8E1 on ShieldedPair22'): string {
  const lines = statements.trim().split('\n');
  const bus = block(
    `bus chillers : ${heading}`,
    lines.map((line) => line.trim()),
  );
  return textOf(block('store northgate', bus));
}

interface Devices {
  readonly head?: string;
  readonly board?: string;
}

/** The whole file: cable, head, board and store. */
export const exampleFile = (
  statements: string,
  heading?: string,
  { head = exampleHead, board = exampleBoard }: Devices = {},
): string => exampleCable + head + board + exampleStore(statements, heading);

/** What the sound bus says of its shield and conductors. */
export const soundRemarks = `shield earthed at head
colours + white - blue shield drain`;

/** The sound bus. */
export const soundFile = exampleFile(`from head : SiteHead terminate switch
38 ft to caseA1 : CaseBoard address 11
22 ft to caseA2 : CaseBoard address 12 terminate resistor 120 ohm
${soundRemarks}`);
