/** What a cable of the catalogue states. */
import { cableClasses } from '@fieldpair/shared';
import type { CableProperty } from '../generated/reader.js';
import { from, oneOf, positive, quantity, type Topic } from './topic.js';

export const cableTopics: Readonly<Record<CableProperty['type'], Topic>> = {
  Conductor: {
    meaning:
      'The size and the make of one conductor. Resistance follows from it: that of copper of that size, and a little more for strands and for tin.',
    values: {
      SIZE: quantity('the size', from('0 AWG', 'gauge', '40 AWG'), positive('area', '1000 mm2')),
      MAKE: oneOf(
        ['solid', 'stranded', 'tinned', 'fluoropolymer', 'pvc'],
        'one wire or strands, whether it is tinned, and the insulation, on which a length limit of free topology depends',
      ),
    },
    unsaid: 'Without a size and without `resistance`, no meter reading, level or drop is computed, and each says so.',
    example: 'conductor 22 AWG stranded tinned',
  },
  Twist: {
    meaning: 'How many twisted pairs the cable has, or that its conductors are not twisted.',
    values: { PAIRS: { what: 'a whole number' } },
    example: 'twisted pairs 2',
  },
  CableShield: {
    title: 'shield (of a cable)',
    meaning: 'What the shield is made of. A cable without one says so with `none`.',
    values: {
      MAKE: oneOf(
        ['foil', 'braid', 'none', 'drain'],
        '`foil` and `braid` may stand together; `drain` is a bare wire along it',
      ),
    },
    unsaid: 'Whether there is a shield is not known, and rules about shields leave the cable alone.',
    example: 'shield foil drain',
  },
  CableClass: {
    title: 'class (of a cable)',
    meaning: 'The class that the maker states, where a document gives limits by class: free topology does.',
    values: { NAME: oneOf(cableClasses, 'the class') },
    unsaid: 'Some makes tell their class: four pairs of 23 or 24 AWG at 100 ohm are a category cable.',
    example: 'class level-4',
  },
  Impedance: {
    meaning: 'The characteristic impedance of the pair. Terminators are held against it.',
    values: { VALUE: quantity('the impedance', positive('resistance', '10 kohm')) },
    example: 'impedance 120 ohm',
  },
  Capacitance: {
    title: 'capacitance (of a cable)',
    meaning: 'The capacitance between the two conductors of a pair, per length.',
    values: { VALUE: quantity('the capacitance', positive('capacitance per length')) },
    example: 'capacitance 12.8 pF/ft',
  },
  Velocity: {
    meaning: 'How fast a signal runs along the cable, as a share of the speed of light.',
    values: { VALUE: quantity('the share', positive('ratio', '100 %')) },
    unsaid: 'It follows from impedance and capacitance where both are there.',
    example: 'velocity 66 %',
  },
  Resistance: {
    title: 'resistance (of a cable)',
    meaning: 'What one conductor resists per length at 20 degC, as its maker states it.',
    values: { VALUE: quantity('the resistance', from('0 ohm/km', 'resistance per length')) },
    unsaid: 'It is derived from the size and the make of the conductor.',
    example: 'resistance 56 ohm/km',
  },
  CableColours: {
    title: 'colours (of a cable)',
    meaning: "The colours of the conductors, in the maker's order. The landing schedule shows those that a bus uses.",
    values: { COLOUR: { what: 'any word; two colours are joined by a hyphen, as in `white-blue`' } },
    example: 'colours white, blue, orange, brown',
  },
  Carries: {
    meaning:
      'The most current that its maker lets one conductor carry. The fuses and the loads of a supply are held against it.',
    values: { CURRENT: quantity('the current', positive('current', '1000 A')) },
    unsaid: 'A usual limit for the size of the conductor stands in, which never makes an error.',
    example: 'carries 8 A',
  },
};
