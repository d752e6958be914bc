import { occasion } from '../../figures/occasions.js';
import type { Fix } from '../../finding.js';
import { formatFault, formatText } from '../../limits/format.js';
import type { BusRule } from '../rule.js';
import { loadExample } from './example.js';

/** Characters that the kind of bus does not have. */
export const formatUnsuited: BusRule = {
  id: 'format-unsuited',
  occasions: occasion.unusualFormat,
  severity: 'warning',
  kinds: ['modbus-rtu', 'bacnet-mstp'],
  scope: 'bus',
  check: ({ bus }, report) => {
    const { format } = bus;
    const known = format && formatFault(bus.kind, format.value);
    if (!known) return;
    report({
      message: `bus ${bus.name} has characters ${formatText(format.value)}; ${known.why}: set every device to ${known.formats.join(' or ')}`,
      place: format.place,
      fixes: () =>
        known.formats.map(
          (text): Fix => ({
            title: `Write ${text}`,
            safe: false,
            edits: [{ kind: 'write', place: format.place, text }],
          }),
        ),
    });
  },
  explanation: {
    what: 'A bus has a character format that its kind does not have: Modbus RTU sends 11 bits a character, MS/TP 8N1.',
    why: 'Receivers count bits. A Modbus RTU character is a start bit, eight data bits, a parity bit and a stop bit; where there is no parity a second stop bit takes its place. A device that is set by the book and one that is set otherwise lose bits of each other.',
    field:
      'Every device answers alone and some not beside others; framing or parity errors are counted while the wiring measures well.',
    mend: 'Set all devices to one format that the kind has: 8E1 is the default of Modbus RTU, 8N2 serves where a device has no parity. Where all devices of a line have 8N1 only, and it works, waive this and say so.',
    bad: loadExample().replace('8E1', '8N1'),
    good: loadExample().replace('8E1', '8N2'),
    sources: [
      'MODBUS over Serial Line V1.02, 2.5.1: 11 bits a character, even parity by default, two stop bits without parity',
      'MS/TP: 8N1, from memory of ANSI/ASHRAE 135 clause 9',
    ],
    since: '0.1.0',
  },
};
