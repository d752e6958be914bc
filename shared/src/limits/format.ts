/** Which characters a kind of bus has: data bits, parity and stop bits. */
import type { BusKind, CharacterFormat } from '../network.js';

/**
 * The formats of a kind that has no others, the likeliest first.
 *
 * MODBUS over Serial Line V1.02, 2.5.1: 11 bits a character, of which 8 are data, even parity by default. MS/TP: 8N1, from
 * memory of ASHRAE 135 clause 9.
 */
export const formatsOf: Readonly<Partial<Record<BusKind, readonly string[]>>> = {
  'modbus-rtu': ['8E1', '8O1', '8N2'],
  'bacnet-mstp': ['8N1'],
};

/** What is wrong with a format, as a clause, and the formats that are right, the likeliest first. */
export interface FormatFault {
  readonly why: string;
  readonly formats: readonly string[];
}

export const formatText = ({ dataBits, parity, stopBits }: CharacterFormat) => `${dataBits}${parity}${stopBits}`;

/** Undefined where a kind has this format, or any. */
export function formatFault(kind: BusKind | undefined, format: CharacterFormat): FormatFault | undefined {
  const formats = kind && formatsOf[kind];
  if (!formats || formats.includes(formatText(format))) return undefined;
  return kind === 'modbus-rtu' ? modbusFault(format) : { why: 'MS/TP has 8N1 and no other', formats };
}

/** Why a format is none of Modbus RTU, and those that are nearest to it. */
function modbusFault({ dataBits, parity }: CharacterFormat): FormatFault {
  if (dataBits !== 8) return { why: `with ${dataBits} data bits it is not RTU but ASCII mode`, formats: ['8E1'] };
  const bits = 'a Modbus RTU character has 11 bits';
  return parity === 'N'
    ? { why: `${bits}, with two stop bits where there is no parity`, formats: ['8N2', '8E1'] }
    : { why: `${bits}, with one stop bit beside its parity`, formats: [`8${parity}1`] };
}
