/** Which characters a kind of bus has: data bits, parity and stop bits. */
import type { BusKind, CharacterFormat } from '../network.js';

/** What is wrong with a format, as a clause, and the formats that are right, the likeliest first. */
export interface FormatFault {
  readonly why: string;
  readonly formats: readonly string[];
}

export const formatText = ({ dataBits, parity, stopBits }: CharacterFormat) => `${dataBits}${parity}${stopBits}`;

/**
 * Undefined where a kind has this format, or any.
 *
 * MODBUS over Serial Line V1.02, 2.5.1: 11 bits a character, of which 8 are data. MS/TP: 8N1, from memory of
 * ASHRAE 135 clause 9.
 */
export function formatFault(kind: BusKind | undefined, format: CharacterFormat): FormatFault | undefined {
  if (kind === 'modbus-rtu') return modbusFault(format);
  if (kind !== 'bacnet-mstp' || formatText(format) === '8N1') return undefined;
  return { why: 'MS/TP has 8N1 and no other', formats: ['8N1'] };
}

function modbusFault({ dataBits, parity, stopBits }: CharacterFormat): FormatFault | undefined {
  if (dataBits !== 8) return { why: `with ${dataBits} data bits it is not RTU but ASCII mode`, formats: ['8E1'] };
  if (parity === 'N') {
    if (stopBits === 2) return undefined;
    return {
      why: 'a Modbus RTU character has 11 bits, with two stop bits where there is no parity',
      formats: ['8N2', '8E1'],
    };
  }
  if (stopBits === 1) return undefined;
  return { why: 'a Modbus RTU character has 11 bits, with one stop bit beside its parity', formats: [`8${parity}1`] };
}
