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

/** A CAN bus whose lengths cannot be judged. */
export const rateUnstated: BusRule = {
  id: 'rate-unstated',
  severity: 'info',
  kinds: ['can'],
  scope: 'bus',
  check: ({ bus }, report) => {
    if (bus.damaged || bus.rate || bus.runs.length === 0) return;
    report({
      message: `bus ${bus.name} does not state its rate, so that neither its length nor its stubs nor its bit time can be judged; write it, such as can 250 kbit/s`,
      place: bus.kindPlace ?? bus.place,
      fixes: () => rateFixes(bus),
    });
  },
  explanation: {
    what: 'A CAN bus does not say at which rate it runs.',
    why: 'On CAN the rate decides how long the line and its stubs may be, by a factor of two hundred from the fastest to the slowest.',
    field: 'A controller that comes up at another rate than the rest stops them all with error frames.',
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
