/** What stands at the top of a file and in a store. */
import { busKinds } from '@fieldpair/shared';
import type { Declaration, Import, StoreMember } from '../generated/reader.js';
import { oneOf, plain, positive, quantity, type Topic } from './topic.js';

const label = plain('what people call it; shown on hover, in the drawing and in the packet');

export const fileTopics: Readonly<Record<(Declaration | Import)['type'], Topic>> = {
  Import: {
    meaning:
      'Makes the cables and devices of another file known here, and those of the files that it imports. Where two files have one name, the nearer file counts.',
    values: { PATH: plain('from the folder of this file, with `/` between folders') },
    example: 'import "../catalogue/controls.pair"',
  },
  CableDeclaration: {
    meaning:
      'A kind of cable. What its maker does not state is left out: what needs it says so, and nothing is invented.',
    values: { NAME: plain('unique in the file'), LABEL: label },
    example: 'cable ShieldedPair20 "20 AWG shielded pair" {\n  conductor 20 AWG stranded\n  twisted pairs 1\n}',
  },
  DeviceDeclaration: {
    meaning: 'A kind of hardware, with its ports and what helps to recognise it.',
    values: { NAME: plain('unique in the file'), LABEL: label },
    example: 'device ValveBoard "Valve drive" {\n  revision A, B\n  port field : rs485\n}',
  },
  StoreDeclaration: {
    meaning:
      'One store with its nodes and buses. `continued` goes on with a store of another file, which this file imports; each file has its own imports.',
    values: {
      NAME: plain(
        'unique in its file, but for blocks that go on; name each store of a chain differently, since its packet is named after it',
      ),
      LABEL: label,
    },
    example: 'store northgate "Northgate Market" {\n  node head : SiteHead revision B\n}',
  },
};

export const storeTopics: Readonly<Record<StoreMember['type'], Topic>> = {
  NodeDeclaration: {
    meaning:
      'One device that is installed in the store. It may be declared where it is landed first instead: `38 ft to caseA1 : CaseBoard`. Without a device it can be landed, and what depends on its device is not judged.',
    values: {
      NAME: plain('unique in the store'),
      LABEL: label,
      DEVICE: plain('a device of the catalogue'),
      REVISION: plain('one that the device comes in, as the label on the hardware has it'),
    },
    example: 'node annex "Annex panel" : PanelHead revision B',
  },
  NetworkDeclaration: {
    meaning:
      'Units that share one address space on the host network, so that two of them must not have the same address.',
    values: {
      NAME: plain('unique in the store'),
      LABEL: plain('for whoever reads the file'),
      NODE: plain('a node of the store'),
      ADDRESS: plain('a whole number'),
    },
    example: 'network host { head address 1, kiosk address 2 }',
  },
  BusDeclaration: {
    meaning:
      'One bus: what kind it is, how fast it runs, which cable it is pulled with, and in braces its course and what else is known of it.',
    values: {
      NAME: plain('unique in the store'),
      LABEL: label,
      KIND: oneOf(busKinds, 'the kind decides which rules and limits hold; see *Kinds of bus*'),
      RATE: quantity('in bits per second where no unit follows', positive('rate', '10000 Mbit/s')),
      FORMAT: plain('data bits (7, 8), parity (`N`, `E`, `O`) and stop bits (1, 2) in one word, as in `8E1`'),
      CABLE: plain('a cable of the catalogue, for all runs that name no other'),
    },
    unsaid: 'Without a rate or a cable, what depends on it is not judged, and a finding says so.',
    example:
      'bus chillers "Medium-temperature cases" : modbus-rtu 19200 8E1 on ShieldedPair22 {\n  from head.field1 terminate switch\n  38 ft to case1 : CaseBoard address 11 terminate switch\n}',
  },
  Waiver: {
    meaning:
      'Lets the findings of a rule stand, visibly and with a reason: in a bus those of the bus, in a store those of all its buses, with `at` those of one landing, or of one bus where it stands in the store.',
    values: {
      RULE: plain('the id of a rule, as its finding shows it'),
      NODE: plain('a node, a splice or, in the store, a bus'),
      PORT: plain('a port of the node, where it is landed with several'),
      REASON: plain('for whoever reads the next change; without it nothing is waived'),
    },
    example: 'waive tap-too-long at head because "9600 bit/s only, agreed in change 41"',
  },
};
