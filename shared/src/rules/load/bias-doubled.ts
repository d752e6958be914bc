import { occasion } from '../../figures/occasions.js';
import { severityOf } from '../../limits/limit.js';
import { biasLimit } from '../../limits/load.js';
import type { BusRule } from '../rule.js';
import { loadExample } from './example.js';

/** Places that bias, against the number that the kind allows. */
export const biasDoubled: BusRule = {
  id: 'bias-doubled',
  severity: 'error',
  kinds: ['modbus-rtu', 'bacnet-mstp'],
  scope: 'bus',
  occasions: occasion.bias,
  check: (study, report) => {
    const { bus } = study;
    const limit = biasLimit(bus.kind);
    const extra = limit && bus.biases[limit.value];
    if (!limit || !extra) return;
    report({
      message: `bus ${bus.name} is biased at ${bus.biases.length} places; ${limit.value === 1 ? 'one' : limit.value} is ${limit.meaning}; keep the one nearest to the head`,
      place: extra.place,
      severity: severityOf(limit),
      related: bus.biases.slice(0, limit.value).map(({ place }) => ({ message: 'it is biased here too', place })),
      fixes: () => {
        const fixed = bus.biases.findIndex((bias) => !bias.builtIn && bias.place === extra.place);
        return fixed < 0 || bus.biases.length > limit.value + 1
          ? []
          : [{ title: 'Remove this bias', safe: false, edits: [{ kind: 'remove-bias', bus: bus.index, bias: fixed }] }];
      },
    });
  },
  explanation: {
    what: 'More places bias the pair than its kind allows.',
    why: 'Each bias network loads every driver, and together they hold the idle level so hard that a driver may not overcome it.',
    field: 'Idle levels well above 0.5 V; far devices stop answering when another biased device is connected.',
    mend: 'Keep one bias, at the head, and take out or switch off the others.',
    bad: loadExample({ more: ['bias at head 560 ohm', 'bias at n2 560 ohm'] }),
    good: loadExample({ more: ['bias at head 560 ohm'] }),
    sources: ['MODBUS over Serial Line V1.02, 3.4.6', 'from memory of ASHRAE 135 clause 9: one or two sets'],
    since: '0.1.0',
  },
};
