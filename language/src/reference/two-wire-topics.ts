/** What ports and landings state on supplies and contact loops. */
import { loopMeanings } from '@fieldpair/shared';
import type { LandingProperty, PortProperty } from '../generated/reader.js';
import { from, oneOf, plain, positive, quantity, type Topic } from './topic.js';

/** The most is that of extra-low voltage. */
const voltage = positive('voltage', '120 V');
const amount = [positive('current', '10000 A'), positive('power', '10000 W')] as const;

export const circuitPortTopics = {
  Supplies: {
    meaning: 'On a supply: the port feeds it.',
    values: {
      VOLTAGE: quantity('what it gives; of alternating voltage the effective value', voltage),
      FORM: oneOf(['ac', 'dc'], 'alternating or direct'),
      TOLERANCE: quantity('how far it may be off, up or down', from('0 %', 'ratio', '50 %')),
      LIMIT: quantity('the most that it gives', ...amount),
      MARKED: plain('the class that is marked on it: 1, 2 or 3'),
    },
    unsaid:
      'The tolerance is 5 %. Without `ac` or `dc` either fits, and without a limit nothing is said about overload.',
    example: 'supplies 24 V dc within 2 % limit 4 A class 2',
    kind: 'supply',
  },
  Draws: {
    meaning:
      'On a supply: the port is fed by it. A current does not depend on the voltage; a power does not either, so that less voltage means more current.',
    values: {
      AMOUNT: quantity('what it takes, at most', ...amount),
      FORM: oneOf(['ac', 'dc'], 'what it needs'),
      LOW: quantity('the least voltage that it works at', voltage),
      HIGH: quantity('the most voltage that it stands', voltage),
    },
    unsaid:
      'Without `ac` or `dc` it takes either; without bounds its voltage is computed and not judged, but for what is usually advised.',
    example: 'draws 6 W dc above 19 V below 30 V',
    kind: 'supply',
  },
  Normally: {
    meaning: 'On a contact loop: the port is a contact, and how it stands when nothing is wrong.',
    example: 'normally closed',
    kind: 'contact-loop',
  },
  Expects: {
    meaning: 'On a contact loop: the port is an input, and the resistor that has to be at the end of its loop.',
    values: { RESISTANCE: quantity('the resistor', positive('resistance')) },
    example: 'expects resistor 4.7 kohm',
    kind: 'contact-loop',
  },
  AtMost: {
    title: 'at most',
    meaning:
      'On a contact loop: how many contacts the input serves, or how much its cable may resist, out and back. Both may be said.',
    values: {
      AMOUNT: quantity('for `contacts` a whole number from 1 up; for `of cable` a resistance', positive('resistance')),
    },
    example: 'at most 3 contacts\nat most 150 ohm of cable',
    kind: 'contact-loop',
  },
  Reads: {
    meaning:
      'On a contact loop: what the input takes a resistance of its loop for. It is said as often as needed; readings that differ must not overlap, and in gaps between them the answer is not known.',
    values: {
      MEANING: oneOf(loopMeanings, 'what it is taken for'),
      LOW: quantity('from where on; from nothing where unsaid', from('0 ohm', 'resistance')),
      HIGH: quantity('up to where; without end where unsaid', positive('resistance')),
    },
    example: 'reads fault below 2.5 kohm\nreads normal above 3.6 kohm below 6.2 kohm\nreads alarm above 7.5 kohm',
    kind: 'contact-loop',
  },
} as const satisfies Partial<Record<PortProperty['type'], Topic>>;

export const circuitLandingTopics = {
  Breaks: {
    meaning:
      'On a contact loop: the plus or the minus conductor is cut here, and its two ends are on the contact. `bridged` puts a resistor over the contact.',
    values: { BRIDGE: quantity('the resistor', positive('resistance')) },
    example: '62 ft to sniffer1.relay breaks + bridged 4.7 kohm',
    kind: 'contact-loop',
  },
  Across: {
    meaning:
      'On a contact loop: the contact joins the two conductors, `through` a resistor in line where there is one.',
    values: { THROUGH: quantity('the resistor', positive('resistance')) },
    example: '35 ft to float1 : DrainFloat across through 4.7 kohm',
    kind: 'contact-loop',
  },
} as const satisfies Partial<Record<LandingProperty['type'], Topic>>;
