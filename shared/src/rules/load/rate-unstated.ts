import { occasion } from '../../figures/occasions.js';
import type { Fix } from '../../finding.js';
import type { Bus } from '../../network.js';
import { ratesInCommon } from '../../ports.js';
import { type BitsPerSecond, formatRate } from '../../quantity.js';
import { canExample } from '../other-example.js';
import type { BusRule } from '../rule.js';

const line = [
  'from head : RackHead terminate switch',
  '60 ft to valve1 : ValveBoard address 1 terminate resistor 120 ohm',
];
const withRates = (rate: string) =>
  canExample(line, { rate }).replaceAll('polarity required', 'polarity required\n    rates 125 kbit/s, 250 kbit/s');

/** What depends on the rate, and how one is written. */
const unjudged = {
  can: ['neither its length nor its stubs nor its bit time', 'can 250 kbit/s'],
  rs485: ['neither its length at that rate nor what is left of its signal', 'rs485 9600'],
  'modbus-rtu': [
    'neither its timing nor its length at that rate nor what is left of its signal',
    'modbus-rtu 19200 8E1',
  ],
  'bacnet-mstp': ['neither its timing nor its length at that rate nor what is left of its signal', 'bacnet-mstp 38400'],
  'peer-485': ['neither its length at that rate nor what is left of its signal', 'peer-485 39062'],
} as const;

/** A bus whose rate is left open, and with it what depends on that. */
export const rateUnstated: BusRule = {
  id: 'rate-unstated',
  occasions: occasion.noRate,
  severity: 'info',
  kinds: ['rs485', 'modbus-rtu', 'bacnet-mstp', 'peer-485', 'can'],
  scope: 'bus',
  check: ({ bus }, report) => {
    const { kind } = bus;
    if (bus.damaged || bus.ratePlace || bus.runs.length === 0 || kind === undefined || !(kind in unjudged)) return;
    const [what, written] = unjudged[kind as keyof typeof unjudged];
    report({
      message: `bus ${bus.name} does not state its rate, so that ${what} can be judged; write it, such as ${written}`,
      place: bus.kindPlace ?? bus.place,
      fixes: () => rateFixes(bus),
    });
  },
  explanation: {
    what: 'A bus does not say at which rate it runs.',
    why: 'Timing, length and what is left of the signal depend on the rate, and are not judged without it. On CAN it decides how long the line and its stubs may be, by a factor of two hundred from the fastest to the slowest.',
    field:
      'A device that comes up at another rate than the rest never answers; on CAN it stops them all with error frames.',
    mend: 'Write the rate after the kind, and set it on each device before it joins the bus.',
    bad: withRates(''),
    good: withRates('250 kbit/s'),
    sources: ['CiA 301 and 102, bit timing table: lengths by rate'],
    since: '0.1.0',
  },
};

/** The rates that every device can be set to, where all of them state theirs and these are few. */
function rateFixes(bus: Bus): Fix[] {
  const common = ratesInCommon(bus.landings.flatMap(({ port }) => (port ? [port.rates] : [])));
  return common.length <= 3 ? common.map((rate) => rateFix(bus, rate)) : [];
}

const rateFix = (bus: Bus, rate: BitsPerSecond): Fix => ({
  title: `State ${formatRate(rate)}`,
  safe: false,
  edits: [{ kind: 'set-rate', bus: bus.index, rate }],
});
