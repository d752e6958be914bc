import { occasion } from '../../figures/occasions.js';
import type { BusStudy } from '../../figures/study.js';
import type { Fix } from '../../finding.js';
import { segmentForm, segmentLimits, segmentStub, unclassedCables } from '../../limits/free-topology.js';
import { lengthLimit, limitedLength } from '../../limits/length.js';
import { severityOf } from '../../limits/limit.js';
import { metres } from '../../quantity.js';
import { canUnterminate, terminateEdit, unterminateEdit } from '../ends/terminators.js';
import type { BusRule } from '../rule.js';
import { divideAdvice, divideFixes, partTexts } from './divide.js';
import { loadExample } from './example.js';

/** All runs together, taps too, against the limit of the kind. A ring has its own finding first. */
export const busTooLong: BusRule = {
  id: 'bus-too-long',
  occasions: occasion.long,
  severity: 'error',
  kinds: ['rs485', 'modbus-rtu', 'bacnet-mstp', 'peer-485', 'free-topology'],
  scope: 'bus',
  check: (study, report) => {
    const { bus } = study;
    const limit = lengthLimit(study);
    const length = limitedLength(study);
    // A free-topology segment may close loops; its wire adds up all the same.
    if (!limit || length <= limit.value || (0 < study.shape.closing.length && bus.kind !== 'free-topology')) return;
    const over = study.lengthText(metres(length - limit.value));
    report({
      message: `bus ${bus.name} runs ${study.lengthText(length)}; ${study.lengthText(metres(limit.value))} is ${limit.meaning} (${over} over); ${adviceFor(study)}`,
      place: bus.place,
      severity: severityOf(limit),
      fixes: () => (bus.kind === 'free-topology' ? busFormFixes(study) : divideFixes(study, partTexts.length)),
    });
  },
  explanation: {
    what: 'The runs of a bus add up to more than its kind may have.',
    why: 'Copper resistance takes its share of the signal with every metre: at 1,200 m of 24 AWG two thirds of it are gone, and what is left must still move the last receiver past its threshold.',
    field:
      'The far devices answer only sometimes, worse when it is warm or when many answer at once; near ones never fail.',
    mend: 'Take a shorter way, or divide the bus with a repeater; a fix does that where the catalogue has one whose two ports take the bus, with as many as it needs. Thicker cable helps the resistance but lifts no stated limit.',
    bad: loadExample({ runs: ['2100 ft', '2210 ft'], repeater: true }),
    good: loadExample(),
    sources: [
      'MODBUS over Serial Line V1.02, 3.4.3',
      'TIA/EIA-422-B annex A.1.1 (informative)',
      'ASHRAE 135-2004 clause 9.2 (as quoted publicly)',
      'Free topology transceiver data book: all wire of a segment, and the length of a doubly terminated bus, by class of cable',
    ],
    since: '0.1.0',
  },
};

/** Whether a segment of free form is a chain that a terminator at each end would let be as long as it is. */
function mayBeBus({ bus, shape, trunkLength }: BusStudy): boolean {
  return (
    bus.kind === 'free-topology' &&
    shape.ends !== undefined &&
    unclassedCables(bus).length === 0 &&
    trunkLength <= segmentLimits(bus).bus &&
    shape.taps.every(({ reach }) => reach <= segmentStub.value)
  );
}

function adviceFor(study: BusStudy): string {
  if (segmentForm(study) === 'bus' || !mayBeBus(study)) {
    // Of a free-topology segment one repeater makes two; how many may follow is not documented.
    const divide = study.bus.kind === 'free-topology' ? 'divide it with a repeater' : divideAdvice(study);
    return divide.startsWith('no ') ? `shorten it, for ${divide}` : `shorten it or ${divide}`;
  }
  const most = study.lengthText(metres(segmentLimits(study.bus).bus));
  return `terminate both ends with 105 ohm, which allows this chain ${most}, or divide it with a repeater`;
}

function busFormFixes(study: BusStudy): Fix[] {
  const { bus, shape } = study;
  if (!shape.ends || segmentForm(study) === 'bus' || !mayBeBus(study)) return [];
  const others = bus.landings.filter(({ index }) => !shape.ends?.includes(index));
  if (others.some((landing) => landing.terminations.length > 0 && !canUnterminate(landing))) return [];
  return [
    {
      title: 'Terminate both ends with 105 ohm, as a doubly terminated bus',
      safe: false,
      edits: [
        ...shape.ends.map((end) => terminateEdit(bus, bus.landings[end]!, 'bus')),
        ...others.filter(canUnterminate).map((landing) => unterminateEdit(bus, landing)),
      ],
    },
  ];
}
