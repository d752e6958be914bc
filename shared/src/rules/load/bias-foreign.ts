import { occasion } from '../../figures/occasions.js';
import { canExample } from '../other-example.js';
import type { BusRule } from '../rule.js';

const why = {
  can: 'on CAN the idle bus is at 0 V, and what pulls plus above minus pulls it towards dominant',
  'free-topology': 'on free topology transformers couple the devices, and a direct level only loads them',
  ethernet: 'on Ethernet transformers couple the devices, and nothing may hang on the pairs',
} as const;

const line = [
  'from head : RackHead terminate switch',
  '60 ft to valve1 : ValveBoard address 1 terminate resistor 120 ohm',
];

/** Bias on a kind that has none. */
export const biasForeign: BusRule = {
  id: 'bias-foreign',
  severity: 'error',
  kinds: ['can', 'free-topology', 'ethernet'],
  scope: 'bus',
  occasions: occasion.bias,
  check: ({ bus }, report) => {
    const { kind } = bus;
    if (kind !== 'can' && kind !== 'free-topology' && kind !== 'ethernet') return;
    bus.biases.forEach((bias, index) => {
      const landing = bias.landing === undefined ? undefined : bus.landings[bias.landing];
      const isWritten = landing?.port?.bias?.mode !== 'fixed' || !bias.builtIn;
      report({
        message: `${landing?.name ?? 'a landing'} biases bus ${bus.name} (${kind}); ${why[kind]}: ${isWritten ? 'remove the bias' : 'use a port without one'}`,
        place: bias.place,
        ...(landing && { at: landing.name }),
        fixes: () =>
          isWritten
            ? [
                {
                  title: 'Remove this bias',
                  safe: false,
                  edits: [{ kind: 'remove-bias', bus: bus.index, bias: index }],
                },
              ]
            : [],
      });
    });
  },
  explanation: {
    what: 'A bus is biased whose kind has no bias: CAN, free topology or Ethernet.',
    why: 'Fail-safe bias is for RS-485, whose idle pair floats. A recessive CAN bus is held at 0 V by its terminators; bias moves it towards the threshold of a dominant bit.',
    field:
      'The recessive level of a CAN bus reads some hundred millivolts where about 0 V are due, and errors come with long messages.',
    mend: 'Take the resistors out.',
    bad: canExample([...line, 'bias at head 560 ohm']),
    good: canExample(line),
    sources: [
      'TI SLOA101B: a recessive CAN bus has about 0 V between its wires, both near 2.5 V',
      'Free topology and Ethernet: coupled by transformers, from memory of ISO/IEC 14908-2 and IEEE 802.3',
    ],
    since: '0.1.0',
  },
};
