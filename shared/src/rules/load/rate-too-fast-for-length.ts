import { lengthLimit, lengthTimesRate, slowRate } from '../../limits/length.js';
import { bitsPerSecond, formatNumber, metres } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { loadExample } from './example.js';

/** Rates that serial devices offer, fastest first. */
const usualRates = [115_200, 76_800, 57_600, 38_400, 19_200, 9600];

/** Length times rate, above the rate where copper resistance is what limits. */
export const rateTooFastForLength: BusRule = {
  id: 'rate-too-fast-for-length',
  severity: 'warning',
  kinds: ['rs485', 'modbus-rtu', 'bacnet-mstp', 'peer-485'],
  scope: 'bus',
  check: (study, report) => {
    const { rate } = study.bus;
    const longest = lengthLimit(study)?.value ?? Number.POSITIVE_INFINITY;
    if (!rate || rate.value <= slowRate || longest < study.length || study.length * rate.value <= lengthTimesRate.value)
      return;
    const allowed = metres(lengthTimesRate.value / rate.value);
    const slower = usualRates.find(
      (usual) => usual < rate.value && (usual <= slowRate || study.length * usual <= lengthTimesRate.value),
    );
    report({
      message: `bus ${study.bus.name} runs ${study.lengthText(study.length)} at ${formatNumber(rate.value)} bit/s; guidance gives ${study.lengthText(allowed)} at this rate; slow it down or shorten it`,
      place: rate.place,
      fixes: () =>
        slower === undefined
          ? []
          : [
              {
                title: `Run at ${formatNumber(slower)} bit/s`,
                safe: false,
                edits: [{ kind: 'set-rate', bus: study.bus.index, rate: bitsPerSecond(slower) }],
              },
            ],
    });
  },
  explanation: {
    what: 'A bus is faster than guidance allows for its length.',
    why: 'A long line rounds the edges: at a high rate a bit ends before its level has settled at the far end.',
    field: 'Checksum errors that come with the rate and go when it is lowered.',
    mend: 'Lower the rate on every device of the bus, or shorten it.',
    bad: loadExample({ rate: '115200', runs: ['2100 ft', '1100 ft'] }),
    good: loadExample(),
    sources: ['TIA/EIA-422-B annex A.1.1 (informative): length times rate up to 10^8 m bit/s'],
    since: '0.1.0',
  },
};
