import { occasion } from '../../figures/occasions.js';
import type { Landing } from '../../network.js';
import type { BusRule } from '../rule.js';
import { exampleFile, soundFile, soundRemarks } from './example.js';

export const polarityCrossed: BusRule = {
  id: 'polarity-crossed',
  scope: 'bus',
  occasions: occasion.crossedPair,
  severity: 'error',
  kinds: ['rs485', 'modbus-rtu', 'bacnet-mstp', 'peer-485', 'free-topology', 'can'],
  explanation: {
    what: 'The two wires of the pair are swapped at a landing.',
    why:
      'A receiver reads the sign of the voltage from plus to minus. With the wires swapped it sees every bit ' +
      'inverted, and its own bias, if it has one, pulls against that of the rest of the bus. At a splice the swap ' +
      'reaches everything behind it.',
    field:
      'The device never answers while all others do; its receive light may stay lit when the bus is idle. The idle ' +
      'voltage from its plus to its minus terminal is negative. Where two devices are swapped, they may answer each ' +
      'other and nobody else.',
    mend: 'De-energise, swap the two wires at this landing and take out `crossed`.',
    bad: exampleFile(`from head : SiteHead terminate switch
38 ft to caseA1 : CaseBoard address 11 crossed
22 ft to caseA2 : CaseBoard address 12 terminate resistor 120 ohm
${soundRemarks}`),
    good: soundFile,
    sources: [
      'MODBUS over Serial Line, Specification and Implementation Guide V1.02, 3.3 (D1 is above D0 for binary 1)',
      'From memory of ISO/IEC 14908-2: the free topology channel does not care for polarity',
    ],
    since: '0.1.0',
  },
  check({ bus, census }, report) {
    for (const landing of census.remarked) {
      const { crossed, name, index } = landing;
      const weight = crossed && weightAt(landing, bus.kind === 'free-topology');
      if (!crossed || !weight) continue;
      const terminals = landing.port?.terminals;
      const wires =
        terminals?.plus !== undefined && terminals.minus !== undefined
          ? `the wires at ${terminals.plus} and ${terminals.minus}`
          : 'its two wires';
      report({
        severity: weight === 'cares' ? 'error' : 'info',
        message:
          weight === 'free'
            ? `the pair is crossed at ${name}, which does not care for polarity; swap ${wires} so that all landings are alike`
            : bus.kind === 'can' && landing.splice === undefined
              ? `the pair is crossed at ${name}, CAN_H under CAN_L, so that it hears nobody and disturbs all others when it speaks; swap ${wires} there`
              : landing.splice === undefined
                ? `the pair is crossed at ${name}, which then reads every bit inverted; swap ${wires} there`
                : `the pair is crossed at splice ${name}, so everything behind it reads inverted; swap ${wires} there`,
        place: crossed,
        at: name,
        fixes: () => [
          {
            title: `Swap the pair back at ${name}`,
            safe: false,
            edits: [{ kind: 'uncross', bus: bus.index, landing: index }],
          },
        ],
      });
    }
  },
};

/** Whether polarity matters at a landing; undefined where its port is not known. */
function weightAt({ splice, port }: Landing, kindIsFree: boolean): 'cares' | 'free' | undefined {
  if (splice !== undefined) return kindIsFree ? 'free' : 'cares';
  if (!port) return undefined;
  return (port.polarity ?? (kindIsFree ? 'free' : 'required')) === 'required' ? 'cares' : 'free';
}
