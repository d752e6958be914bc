import { occasion } from '../../figures/occasions.js';
import { isUnknown } from '../../known.js';
import { segmentDevices } from '../../limits/free-topology.js';
import { deviceLimit } from '../../limits/load.js';
import type { BusRule } from '../rule.js';
import { divideAdvice, divideFixes, partTexts } from './divide.js';
import { crowd, loadExample } from './example.js';

/** Counts devices where their loads are not documented; where all are, load-over-budget speaks instead. */
export const repeaterNeeded: BusRule = {
  id: 'repeater-needed',
  occasions: occasion.loaded,
  severity: 'error',
  kinds: ['modbus-rtu', 'free-topology'],
  scope: 'bus',
  check: (study, report) => {
    const { bus, unitLoads } = study;
    if (bus.damaged || (bus.kind !== 'free-topology' && !isUnknown(unitLoads))) return;
    const devices = bus.landings.filter(({ node }) => node?.device).length;
    if (bus.kind === 'free-topology') {
      const { value, meaning } = segmentDevices;
      if (devices <= value) return;
      report({
        message: `segment ${bus.name} has ${devices} devices; ${value} is ${meaning} (${devices - value} too many); divide it with a repeater`,
        place: bus.place,
      });
      return;
    }
    if (!isUnknown(unitLoads)) return;
    const limit = deviceLimit(bus.biases.length > 0);
    if (devices <= limit.value) return;
    report({
      message: `bus ${bus.name} has ${devices} devices; ${limit.value} is ${limit.meaning} (${devices - limit.value} too many), and ${unitLoads.unknown} is not documented; state the loads in the catalogue, or ${divideAdvice(study)}`,
      place: bus.place,
      fixes: () => divideFixes(study, partTexts.devices),
    });
  },
  explanation: {
    what: 'More devices than a Modbus line takes without a repeater, and their loads are not all documented; or more than 64 on a segment of free topology.',
    why: 'Thirty-two devices of one unit load are what every driver carries. More are allowed where the documents of the devices show that their loads add up to no more; bias costs four.',
    field: 'The bus grows unsure with each device that is added, first in the heat and at the far end.',
    mend: 'Write the load of each port in the catalogue, from its documents, or divide the bus with a repeater; a fix does that where the catalogue has one that fits, with as many as are needed.',
    bad: loadExample({ load: undefined, runs: crowd(33), repeater: true }),
    good: loadExample({ load: undefined, runs: crowd(31) }),
    sources: [
      'MODBUS over Serial Line V1.02, 3.4.1 and 3.4.6',
      'Free topology transceiver data book: 64 devices per segment, none of them powered by the link',
    ],
    since: '0.1.0',
  },
};
