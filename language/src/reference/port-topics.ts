/** What a port states of itself as a connector for data. */
import { busKinds } from '@fieldpair/shared';
import type { PortProperty } from '../generated/reader.js';
import { from, oneOf, plain, positive, quantity, type Topic } from './topic.js';
import { circuitPortTopics } from './two-wire-topics.js';

export const biasValues = {
  UP: quantity(
    'the resistor from plus to the supply, and that from minus to common too where `to` does not follow',
    positive('resistance'),
  ),
  DOWN: quantity('the resistor from minus to common', positive('resistance')),
  SUPPLY: quantity('the voltage that the upper resistor is at', positive('voltage', '60 V')),
};
export const biasUnsaid = 'The supply is 5 V.';

const dataPortTopics = {
  Terminals: {
    meaning:
      'The screws, each with what is printed beside it, in quotes: the plus and the minus of the pair, the shield and the common. The landing schedule names them.',
    values: { MARK: plain('as it is printed') },
    unsaid: 'The schedule shows plus and minus, and nothing is said about a shield terminal or a common.',
    example: 'terminals + "D+" - "D-" shield "SH" common "0V"',
  },
  Speaks: {
    meaning: 'The kinds of bus that a port of kind `rs485` can be used for.',
    values: { KIND: oneOf(busKinds, 'one of the RS-485 kinds') },
    unsaid: 'It can be used for each of the RS-485 kinds.',
    example: 'speaks modbus-rtu, bacnet-mstp',
  },
  Polarity: {
    meaning: 'Whether plus and minus may be swapped at this port.',
    values: { VALUE: oneOf(['required', 'free'], '`free` where either way will do') },
    unsaid: 'It is required, but for free topology, whose ports take either way.',
    example: 'polarity required',
  },
  Load: {
    meaning: 'On RS-485: the share of one unit load that the receiver is, at most. All of a bus together may be 32.',
    values: {
      NUMERATOR: plain('a number; the share is 32 at most'),
      DENOMINATOR: plain('a number'),
    },
    unsaid: 'Levels and the number of loads of its bus cannot be computed, and each says so.',
    example: 'load 1/8',
  },
  Capacitance: {
    title: 'capacitance (of a port)',
    meaning: 'What the port hangs across the pair, with its protection and its connector.',
    values: { VALUE: quantity('the capacitance', from('0 pF', 'capacitance')) },
    unsaid: 'Waveforms count 0, and their worst case 25 pF.',
    example: 'capacitance 30 pF',
  },
  Resistance: {
    title: 'resistance (of a port)',
    meaning: 'On CAN: what the port resists between the two wires.',
    values: { VALUE: quantity('the resistance', positive('resistance')) },
    unsaid: 'It counts as 20 kohm.',
    example: 'resistance 30 kohm',
    kind: 'can',
  },
  PortTerminator: {
    meaning:
      'A terminator inside the device: `switch` where it can be switched on and off, `fixed` where it is always on. With a capacitor the two are in series.',
    values: {
      RESISTANCE: quantity('the resistor', positive('resistance')),
      CAPACITANCE: quantity('the capacitor', positive('capacitance')),
    },
    unsaid: 'The device has none; where it is at an end, a resistor has to be landed beside it.',
    example: 'terminator switch 120 ohm',
  },
  PortBias: {
    title: 'bias (of a port)',
    meaning:
      '`bias needed`: the receiver reads an idle line as idle only where the line is biased. `switch` and `fixed`: the device has the resistors inside, and they can be switched on or always are.',
    values: biasValues,
    unsaid: `The port neither needs nor has a bias. ${biasUnsaid}`,
    example: 'bias switch 510 ohm',
  },
  PortAddress: {
    title: 'address (of a port)',
    meaning:
      'How the address is set and which can be set. The address table of the packet draws the dials or the switches as they have to stand.',
    values: {
      MEANS: oneOf(['dial', 'switches', 'software'], 'what it is set with'),
      LOW: plain('the lowest address, a whole number'),
      HIGH: plain('the highest address, a whole number'),
      POSITIONS: plain('how many dials or switches there are, at most 16'),
      CODING: plain(
        '`least-first` or `most-first`: whether the first dial or switch counts least or most; for switches `up-is-on` or `down-is-on`, and `on-is-zero` where a switch that is on counts nothing; for dials `hexadecimal` where their digits run to F',
      ),
    },
    unsaid:
      'The port takes no address. Without a range it takes 0 to 255; without `of`, there are as many positions as the highest address needs.',
    example: 'address switches 1..127 of 8 least-first up-is-on',
  },
  Rates: {
    meaning: 'The rates that can be set.',
    values: { RATE: quantity('a rate, in bits per second where no unit follows', positive('rate')) },
    unsaid: 'The port is not known to refuse any rate.',
    example: 'rates 9600, 19200, 38400',
  },
  Edge: {
    meaning:
      'How long its driver takes from 10 % to 90 % of a change, as the fastest of its make does. Waveforms need it.',
    values: { TIME: quantity('the time', positive('time')) },
    unsaid: 'Waveforms are computed with 25 ns, and their worst case with slow edges too.',
    example: 'edge 250 ns',
  },
  Delay: {
    meaning: 'On CAN: what a bit takes from the controller to the pair and back to it, isolators included.',
    values: { TIME: quantity('the time', from('0 ns', 'time')) },
    unsaid: 'It counts as 255 ns, the most that the standard lets a transceiver take.',
    example: 'delay 210 ns',
    kind: 'can',
  },
  Reserved: {
    meaning: 'The connector is there and must not be used: in some revisions, or in all where none is named.',
    values: {
      REVISION: plain('a revision that the device declares'),
      REASON: plain('shown in the finding and in the landing schedule'),
    },
    unsaid: 'The port can be used in every revision.',
    example: 'reserved in A "its driver is fitted from revision B on"',
  },
  Twin: {
    title: 'twin of',
    meaning:
      'The connector looks like another one of the device and is not meant for the bus. A landing that names no port goes to the other one.',
    values: { PORT: plain('the port that is meant'), REASON: plain('what this one is for') },
    example: 'twin of net "for bench set-up only"',
  },
} as const satisfies Partial<Record<PortProperty['type'], Topic>>;

export const portTopics: Readonly<Record<PortProperty['type'], Topic>> = { ...dataPortTopics, ...circuitPortTopics };
