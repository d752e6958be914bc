import { occasion } from '../../figures/occasions.js';
import { rightedBusOf } from '../../figures/righted-bus.js';
import { createStudy } from '../../figures/study.js';
import { isUnknown } from '../../known.js';
import { idleThreshold } from '../../limits/level.js';
import { formatOhms, formatVolts, volts } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { changeableBias, changedBias, idles } from './bias-choice.js';
import { loadExample } from './example.js';

const threshold = volts(idleThreshold.value);

/**
 * Where a biased bus is weakest. A bus that nothing biases, or whose shape has its own finding, is not judged; nor one
 * whose level is low by its terminators alone, which have their own findings.
 */
export const biasWeak: BusRule = {
  id: 'bias-weak',
  severity: 'warning',
  kinds: ['rs485', 'modbus-rtu', 'bacnet-mstp'],
  scope: 'bus',
  occasions: occasion.bias,
  check: (study, report) => {
    const { bus } = study;
    if (bus.damaged || bus.biases.length === 0 || !study.shape.ends) return;
    if (study.census.remarked.some(({ crossed }) => crossed)) return;
    const { idle } = study;
    let weakest = threshold;
    let at: number | undefined;
    for (const { index } of bus.landings) {
      const level = idle[index];
      if (!level || isUnknown(level) || weakest <= level.nominal) continue;
      weakest = level.nominal;
      at = index;
    }
    const landing = at === undefined ? undefined : bus.landings[at];
    if (!landing) return;
    const { righted } = rightedBusOf(study);
    if (righted !== bus && idles(createStudy(study.store, righted)) !== 'weakly') return;
    report({
      message: `bus ${bus.name} idles at ${formatVolts(weakest)} at ${landing.name}; ${formatVolts(threshold)} is ${idleThreshold.meaning}; use smaller bias resistors, or fewer unit loads`,
      place: bus.biases[0]?.place ?? bus.place,
      at: landing.name,
      fixes: () => {
        const index = changeableBias(bus);
        const resistor = index === undefined ? undefined : changedBias(study.store, bus, index);
        if (index === undefined || resistor === undefined) return [];
        return [
          {
            title: `Bias the pair with ${formatOhms(resistor)} instead`,
            safe: false,
            edits: [{ kind: 'set-bias', bus: bus.index, bias: index, up: resistor, down: resistor }],
          },
        ];
      },
    });
  },
  explanation: {
    what: 'A biased bus idles below the level that a receiver needs.',
    why: 'Bias and terminators divide the supply; many unit loads and long cable pull the idle level under 200 mV, where a receiver may read anything. A third terminator does so too, and has its own finding.',
    field: 'Phantom characters between frames although bias is fitted, worst at the landing furthest from it.',
    mend: 'Take bias resistors of a smaller value, within what the kind of bus allows.',
    bad: loadExample({ more: ['bias at head 1500 ohm'] }),
    good: loadExample({ more: ['bias at head 510 ohm'] }),
    sources: ['TIA-485-A: receiver threshold of 200 mV', 'MODBUS over Serial Line V1.02, 3.4.6: 450 to 650 ohm'],
    since: '0.1.0',
  },
};
