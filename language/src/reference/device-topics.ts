/** What a device of the catalogue states beside its ports. */
import { busKinds } from '@fieldpair/shared';
import type { DeviceMember } from '../generated/reader.js';
import { oneOf, plain, type Topic } from './topic.js';

export const deviceTopics: Readonly<Record<DeviceMember['type'], Topic>> = {
  Role: {
    meaning:
      'What the device does on its buses. A `head` asks and the others answer: a Modbus or MS/TP bus wants one. A `repeater` joins two buses and drives each anew; fixes that divide a long bus take one from the catalogue.',
    values: { ROLE: oneOf(['head', 'node', 'repeater'], 'the role') },
    unsaid: 'It is a `node`.',
    example: 'role head',
  },
  Revisions: {
    title: 'revision (of a device)',
    meaning: 'The revisions that the device comes in. A node may state its own, and ports may be reserved in some.',
    values: { NAME: plain('as the label on the hardware has it; in quotes where it is no name, such as `"2.1"`') },
    example: 'revision A, B, C',
  },
  PortDeclaration: {
    meaning: 'A connector on which a bus can be landed. Its properties stand in braces, which may be left out.',
    values: {
      NAME: plain('unique in the device; a landing names it after a dot, as in `head.field1`'),
      LABEL: plain('what people call it; shown on hover and in the packet'),
      KIND: oneOf(
        busKinds,
        'what it is electrically; a port of kind `rs485` says with `speaks` which of the RS-485 kinds it can be used for',
      ),
    },
    example: 'port field1 "Field bus 1" : rs485 {\n  terminals + "D+" - "D-" shield "SH"\n}',
  },
  Indicator: {
    meaning: 'A lamp, and what it shows when all is well. The commissioning sheet tells the installer to look at it.',
    values: { NAME: plain('what is printed beside it'), TEXT: plain('what to see') },
    example: 'indicator poll "blinks green each time the head polls it"',
  },
  Mark: {
    meaning: 'Where the revision or the setting of the hardware can be read. The landing schedule repeats it.',
    values: { TEXT: plain('where to look and what is there') },
    example: 'mark "yellow label under the lid: revision B"',
  },
};
