/** The small sound store that the pages of the pair, shield, address and port rules vary. */
import { block, rs485Port, shieldedPair, textOf } from '../example-parts.js';

/** A cable that suits every RS-485 bus. */
export const exampleCable = textOf(
  shieldedPair('ShieldedPair22', ['capacitance 12.5 pF/ft', 'velocity 66 %', 'colours white, blue']),
);

const port = (last: string) => rs485Port('field', ['polarity required', 'load 1/8', last]);

export const exampleHead = textOf(block('device SiteHead', ['role head', ...port('terminator switch 120 ohm')]));

export const exampleBoard = textOf(block('device CaseBoard', port('address dial 1..99')));

/** A store of these statements, with a bus that is sound but for what they say. */
export function exampleStore(statements: string, heading = 'modbus-rtu 9600 8E1 on ShieldedPair22'): string {
  const lines = statements.trim().split('\n');
  const bus = block(
    `bus chillers : ${heading}`,
    lines.map((line) => line.trim()),
  );
  return textOf(block('store northgate', bus));
}

/** The whole file: cable, head, board and store. */
export const exampleFile = (statements: string, heading?: string): string =>
  exampleCable + exampleHead + exampleBoard + exampleStore(statements, heading);

/** What the sound bus says of its shield and conductors. */
export const soundRemarks = `shield earthed at head
colours + white - blue shield drain`;

/** The sound bus. */
export const soundFile = exampleFile(`from head : SiteHead terminate switch
38 ft to caseA1 : CaseBoard address 11
22 ft to caseA2 : CaseBoard address 12 terminate resistor 120 ohm
${soundRemarks}`);
