/** What follows the length of a run, and what follows a landing. */
import type { LandingProperty, RunOption } from '../generated/reader.js';
import { plain, positive, quantity, type Topic } from './topic.js';
import { circuitLandingTopics } from './two-wire-topics.js';

const length = positive('length', '1000 km');

export const runTopics: Readonly<Record<RunOption['type'], Topic>> = {
  OnCable: {
    title: 'on (a run)',
    meaning: 'The run is on another cable than the rest of the bus.',
    values: { CABLE: plain('a cable of the catalogue') },
    unsaid: 'It is on the cable of the bus.',
    example: '26 ft on BellWire18 to case1 : CaseBoard',
  },
  Built: {
    meaning:
      'The length that was really pulled. All computing uses it where it is there; the planned length stays for comparison.',
    values: { LENGTH: quantity('the length', length) },
    example: '28 ft built 31 ft to case1 : CaseBoard',
  },
  Cords: {
    meaning: 'On Ethernet: the patch cords at the two ends of a link, both together. They are not pulled with the run.',
    values: { LENGTH: quantity('the length', length), CABLE: plain('what the cords are made of') },
    example: '60 ft cords 12 ft of PatchCord24 to rooms.net',
    kind: 'ethernet',
  },
  Spare: {
    meaning: 'Pulled for later and connected at neither end: it is in the pull list and not in the circuit.',
    example: '40 ft spare',
  },
  BesideMains: {
    title: 'beside mains',
    meaning: 'The run is laid beside mains. The pull list says so, and on a supply or a loop it is a finding.',
    example: '26 ft beside mains to case1 : CaseBoard',
  },
  Fuse: {
    meaning: 'On a supply: a fuse in the plus conductor where the run starts.',
    values: { CURRENT: quantity('its rating', positive('current', '1000 A')) },
    example: '40 ft fuse 3 A to horn1 : HornLamp',
    kind: 'supply',
  },
};

const dataLandingTopics = {
  LandingAddress: {
    title: 'address (of a landing)',
    meaning: 'The address that the device has on this bus.',
    values: { ADDRESS: plain('a whole number; the kind of bus and the port say which there are') },
    unsaid: 'It has none, which is a finding where its port takes one.',
    example: '38 ft to case1 : CaseBoard address 11',
  },
  Terminate: {
    meaning:
      'A terminator is on here: the one inside the device, switched on, or a resistor that is landed beside it, with a capacitor in series where one is named. On a contact loop it is the end-of-line resistor.',
    values: {
      RESISTANCE: quantity('the resistor', positive('resistance')),
      CAPACITANCE: quantity('the capacitor', positive('capacitance')),
    },
    unsaid: 'Nothing is on, but for what is fixed inside the device.',
    example:
      '38 ft to case1 : CaseBoard address 11 terminate switch\n22 ft to case2 : TwinCoilBoard address 12 terminate resistor 120 ohm',
  },
  SwitchOff: {
    title: 'switch off',
    meaning:
      'The built-in terminator was seen to be off. It changes nothing in the circuit: it tells readers that somebody looked.',
    example: '38 ft to case1 : CaseBoard address 11 switch off',
  },
  Crossed: {
    meaning: 'The two wires of the pair are swapped at this landing.',
    unsaid: 'Plus is on plus.',
    example: '38 ft to case1 : CaseBoard address 11 crossed',
  },
  LandingShield: {
    title: 'shield (at a landing)',
    meaning:
      'What happens to the shields of the cables that meet here. `through`: they are joined, and landed on the shield terminal of the device where it has one. `open`: they are cut and not joined. `floating`: they are joined and kept off the device.',
    unsaid: 'It is `through`.',
    example: '38 ft to case1 : CaseBoard address 11 shield floating',
  },
  LandingRevision: {
    title: 'revision (of a landing)',
    meaning: 'The revision of the node, which may be said here instead of where the node is declared.',
    values: { REVISION: plain('one that the device comes in') },
    unsaid: 'It may be any.',
    example: '38 ft to case1 : CaseBoard address 11 revision B',
  },
} as const satisfies Partial<Record<LandingProperty['type'], Topic>>;

export const landingTopics: Readonly<Record<LandingProperty['type'], Topic>> = {
  ...dataLandingTopics,
  ...circuitLandingTopics,
};

/** What `from` and `to` lead to. */
export const landingTopic: Topic = {
  title: 'landing',
  meaning:
    'Where cable is landed: a port of a node, or a splice, which is a joint, a box or a panel without a device. Every mention of one landing means the same place; what is said of it is said once, at any of them.',
  values: {
    SPLICE: plain('a name of its own in this bus; later mentions may leave out `splice`'),
    NODE: plain('a node of the store'),
    PORT: plain('may be left out where just one port of the device fits the bus'),
    LABEL: plain('what people call the node, where it is declared here'),
    DEVICE: plain('declares the node, as `node` in the store does'),
    PROPERTY: plain('any of those below, in any order'),
  },
  example:
    'from head.field1\n38 ft to case1 "Dairy 1" : CaseBoard address 11\n20 ft to splice ceiling\n15 ft to case2 : CaseBoard address 12',
};
