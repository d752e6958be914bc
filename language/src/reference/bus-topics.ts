/** What stands in a bus: its course and its remarks. */
import { canGuideNames } from '@fieldpair/shared';
import type { BusStatement } from '../generated/reader.js';
import { biasUnsaid, biasValues } from './port-topics.js';
import { storeTopics } from './store-topics.js';
import { from, oneOf, plain, positive, quantity, type Topic } from './topic.js';

const landing = plain('where; see *Landings*');
const at = {
  NODE: plain('a node or splice of this bus'),
  PORT: plain('needed where the node is landed on this bus with several ports'),
};

export const busTopics: Readonly<Record<BusStatement['type'], Topic>> = {
  From: {
    meaning:
      'Puts the pen on a landing. A bus begins with it; a later one lifts the pen and goes on elsewhere, which is how a star, a ring or a second branch is written.',
    values: { LANDING: landing },
    example: 'from head.field1 terminate switch',
  },
  Run: {
    title: 'to and tap',
    meaning:
      'One run of cable from where the pen is. It begins with its length. Without `tap` the pen goes along to the landing; with `tap` it stays, and the run is a tap. A run without `to` ends nowhere, which is right only for one that is `spare`.',
    values: {
      LENGTH: quantity('what is planned to be pulled', positive('length', '1000 km')),
      OPTION: plain('see *Options of a run*'),
      LANDING: landing,
    },
    example:
      '38 ft to case1 : CaseBoard address 11\ntap 2 ft to probe1 : AirProbe address 21\n12 ft 6 in to case2 : CaseBoard address 12',
  },
  Area: {
    meaning:
      'A heading: what is first landed below it lies in that area of the store, which the drawing and the landing schedule show. The next `area` ends it, and `area ""` ends it without beginning another.',
    values: { NAME: plain('in quotes where it is more than one word') },
    example: 'area "Dairy wall"\n34 ft to dairy1 : CaseBoard address 11',
  },
  BusShield: {
    title: 'shield earthed at',
    meaning:
      'Where the shield is led to earth: directly, or through a resistor and a capacitor beside it, as free topology wants it. Twice in one stretch of shield is a finding.',
    values: {
      ...at,
      RESISTANCE: quantity('the resistor', positive('resistance')),
      CAPACITANCE: quantity('the capacitor', positive('capacitance')),
    },
    unsaid: 'It is earthed nowhere, which is a finding where the kind of bus wants its shield earthed.',
    example: 'shield earthed at head',
  },
  BusBias: {
    title: 'bias at',
    meaning:
      'Where the pair is biased: by the resistors inside the device, switched on, or by two resistors that were added there.',
    values: { ...at, ...biasValues },
    unsaid: `The bus is not biased, unless a device biases it by itself. ${biasUnsaid}`,
    example: 'bias at head 560 ohm',
  },
  Ambient: {
    meaning: 'The temperature of the cable. Its resistance follows.',
    values: { TEMPERATURE: quantity('the temperature', from('-90 degC', 'temperature', '200 degC')) },
    unsaid: 'It is 20 degC; the least voltage of a supply is computed for 50 degC.',
    example: 'ambient 40 degC',
  },
  SamplePoint: {
    title: 'sample at',
    meaning: 'On CAN: where in the bit its devices sample.',
    values: { POINT: quantity('a share of the bit', from('50 %', 'ratio', '100 %')) },
    unsaid: 'It is 87.5 %.',
    example: 'sample at 80 %',
    kind: 'can',
  },
  Guide: {
    meaning: "On CAN: the document by which lengths are judged: CiA's table of lengths by rate, or ISO 11898.",
    values: { NAME: oneOf(canGuideNames, 'the document') },
    unsaid: "It is CiA's table.",
    example: 'guide iso',
    kind: 'can',
  },
  BusColours: {
    title: 'colours (of a bus)',
    meaning:
      'Which conductor is plus, which is minus, and which is the shield and the common: one convention for the whole bus.',
    values: { COLOUR: plain('any word, as in the `colours` of the cable') },
    unsaid: 'A finding asks for it, because an installer has to know.',
    example: 'colours + white - blue shield drain',
  },
  Waiver: storeTopics.Waiver,
};
