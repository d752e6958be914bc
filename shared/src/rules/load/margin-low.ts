import { healthyMargin, isHealthy } from '../../figures/bus-margin.js';
import { isPlainlyHealthy, type Signal, shortTap } from '../../figures/signal.js';
import type { BusStudy } from '../../figures/study.js';
import { isUnknown } from '../../known.js';
import { lengthForRate, lengthLimit, limitedLength } from '../../limits/length.js';
import { loadLimit } from '../../limits/load.js';
import { formatRate, formatVolts, metres } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { tapsAreTold } from '../shape/tap-verdict.js';
import { leftText } from '../signal-effect.js';
import { overload } from './bias-choice.js';
import { crowd, loadExample } from './example.js';

/** Boards whose ports carry a surge arrester each. */
const protectedBoards = crowd(24);

/**
 * The level that is left at the worst receiver, simulated. Ends, crossings and taps that have findings of their own are
 * taken as mended, so that mending them brings no new finding.
 */
export const marginLow: BusRule = {
  id: 'margin-low',
  severity: 'warning',
  kinds: ['rs485', 'modbus-rtu', 'bacnet-mstp', 'peer-485', 'can'],
  scope: 'bus',
  check: (study, report) => {
    const { bus, shape } = study;
    if (bus.damaged || bus.unclear || !bus.rate || !shape.ends || isPlainlyHealthy(study) || isToldOtherwise(study))
      return;
    const { signal } = study;
    if (isUnknown(signal)) return;
    const worst = tapsAreTold(study) ? signal.withoutTaps : signal.righted;
    if (isHealthy(worst)) return;
    const { name } = bus.landings[worst.landing]!;
    const mended = worst === signal.asWritten ? '' : ', with its other findings mended,';
    const { slower } = signal;
    report({
      message: `simulated at ${formatRate(bus.rate.value)}${mended} ${leftText(study, worst, `at ${name}`)}; ${formatVolts(healthyMargin)} is wanted: ${cureText(study, signal)}`,
      place: bus.rate.place,
      related: [
        { message: `${name} has least left`, place: bus.landings[worst.landing]!.place },
        { message: 'while this one drives', place: bus.landings[worst.driver]!.place },
      ],
      fixes: () =>
        slower
          ? [
              {
                title: `Run at ${formatRate(slower.rate)}`,
                safe: false,
                edits: [{ kind: 'set-rate', bus: bus.index, rate: slower.rate }],
              },
            ]
          : [],
    });
  },
  explanation: {
    what: 'By simulation, too little of the signal is left at some receiver when it samples, at the worst of all tolerances and for the worst pattern of bits. It speaks where no limit of a document has told the cause.',
    why: 'Limits of length, load and taps are each kept alone; what they take from the signal adds up. Long thin wire takes level, capacitance of devices and protection slows the edges, taps and steps of impedance send echoes, bias pulls the zero up. The simulation drives the head, the ends, the longest taps and the middle in turn and looks at all receivers: of what is left beyond the threshold (200 mV on RS-485, 0.9 and 0.5 V on CAN), 0.2 V should be spare for noise and for what was pulled otherwise than planned.',
    field:
      'Checksum errors and retries at a few devices, more of them when it is warm or a drive starts; they go when the rate is lowered. An oscilloscope across the pair shows an eye that is nearly shut there.',
    mend: 'Lower the rate on every device, or take away what the page of waveforms shows to be the cause: protection of less capacitance, shorter taps, thicker cable, fewer devices. `fieldpair wave --advise` tells single changes that would do.',
    bad: loadExample({ rate: '115200', runs: protectedBoards, capacitance: '2.2 nF' }),
    good: loadExample({ rate: '19200', runs: protectedBoards, capacitance: '2.2 nF' }),
    sources: [
      'TIA-485-A: receivers need 200 mV; ISO 11898-2: 0.9 V for dominant, 0.5 V for recessive',
      'Waveforms: the telegraph equations of lossy lines, checked against ngspice (see DEVELOPERS.md)',
      '0.2 V to spare: common practice, no published source; on CAN it is the 20 % of Philips AN96116, equation 11',
    ],
    since: '0.1.0',
  },
};

/** Whether another rule has told that the bus is longer, faster or more loaded than it may be. */
function isToldOtherwise(study: BusStudy): boolean {
  const { bus, unitLoads } = study;
  const length = limitedLength(study);
  const [ofKind, ofRate, loads] = [lengthLimit(study), lengthForRate(bus.kind, bus.rate!.value), loadLimit(bus)];
  if ((ofKind && ofKind.value < length) || (ofRate && ofRate.value < length)) return true;
  if (loads && !isUnknown(unitLoads) && loads.value < unitLoads) return true;
  return bus.kind !== 'can' && overload(study) !== undefined;
}

function cureText({ length, lengthText }: BusStudy, { slower, shorter, righted, withoutTaps }: Signal): string {
  if (!isHealthy(righted) && isHealthy(withoutTaps)) {
    return `with every tap shortened to ${lengthText(shortTap)} it would be ${formatVolts(withoutTaps.margin)}`;
  }
  if (slower) return `at ${formatRate(slower.rate)} it would be ${formatVolts(slower.margin.margin)}`;
  return shorter === undefined
    ? 'no slower rate and no shorter cable would give that; look for what loads the pair'
    : `no slower rate would give that; about ${lengthText(metres(length * shorter))} of cable in place of ${lengthText(length)} would, or thicker cable`;
}
