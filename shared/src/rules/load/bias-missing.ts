import { occasion } from '../../figures/occasions.js';
import { formatOhms } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { newBias } from './bias-choice.js';
import { loadExample } from './example.js';

/** Ports that say `bias needed` against what biases the bus. */
export const biasMissing: BusRule = {
  id: 'bias-missing',
  severity: 'error',
  kinds: ['rs485', 'modbus-rtu', 'bacnet-mstp'],
  scope: 'bus',
  occasions: occasion.biasNeeded,
  check: (study, report) => {
    const { bus } = study;
    if (bus.damaged || bus.biasUnclear || bus.biases.length > 0) return;
    if (!study.census.outfits.some(({ port }) => port?.needsBias)) return;
    const needy = bus.landings.filter(({ port }) => port?.needsBias);
    const [first] = needy;
    if (!first) return;
    const others = needy.length > 1 ? ` and ${needy.length - 1} more` : '';
    report({
      message: `${first.name}${others} on bus ${bus.name} ${needy.length > 1 ? 'need' : 'needs'} a biased line, and nothing biases it; add bias at one place, best at the head`,
      place: bus.place,
      related: needy.map(({ name, place }) => ({ message: `${name} needs bias`, place })),
      fixes: () => {
        const { head } = study;
        const resistor = head && newBias(study.store, bus, head.index);
        if (!head || resistor === undefined) return [];
        return [
          {
            title: `Bias the pair at ${head.name} with ${formatOhms(resistor)}`,
            safe: false,
            edits: [{ kind: 'add-bias', bus: bus.index, landing: head.index, up: resistor, down: resistor }],
          },
        ];
      },
    });
  },
  explanation: {
    what: 'A device needs a biased line, and no place of the bus biases it.',
    why: 'With every driver off the pair floats between the thresholds of the receiver, which then reads noise as characters.',
    field:
      'Phantom characters between frames, first bytes lost, errors that vanish when a service tool with its own bias is plugged in.',
    mend: 'Bias at one place, usually the head: one resistor from plus up to 5 V, one from minus down to common.',
    bad: loadExample({ needsBias: true }),
    good: loadExample({ needsBias: true, more: ['bias at head 510 ohm'] }),
    sources: ['MODBUS over Serial Line V1.02, 3.4.6'],
    since: '0.1.0',
  },
};
