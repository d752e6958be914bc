import { occasion } from '../../figures/occasions.js';
import type { Fix } from '../../finding.js';
import { listed } from '../../known.js';
import type { Bus, Landing } from '../../network.js';
import { portServes, ratesInCommon, takesRate } from '../../ports.js';
import { type BitsPerSecond, formatNumber } from '../../quantity.js';
import { exampleFile, soundRemarks } from '../pair/example.js';
import type { BusRule } from '../rule.js';

const withRates = (rate: string) =>
  exampleFile(
    `from head : SiteHead terminate switch
38 ft to caseA1 : CaseBoard address 11 terminate resistor 120 ohm
${soundRemarks}`,
    `modbus-rtu ${rate} 8E1 on ShieldedPair22`,
  ).replace('address dial 1..99', 'address dial 1..99\n    rates 9600 bit/s, 19200 bit/s');

export const rateMismatch: BusRule = {
  id: 'rate-mismatch',
  scope: 'bus',
  occasions: occasion.unusualRate,
  severity: 'error',
  kinds: 'every',
  explanation: {
    what: 'The bus runs at a rate that one of its devices cannot be set to.',
    why: 'A receiver samples in the middle of each bit. At another rate it samples other bits and takes nothing as valid.',
    field: 'The device never answers, and its receive light flickers while the others talk.',
    mend: 'Run the bus at a rate that all its devices have, or put the device on a bus of its own.',
    bad: withRates('38400'),
    good: withRates('19200'),
    sources: [
      'MODBUS over Serial Line, Specification and Implementation Guide V1.02, 2.5 and 3.2 (one rate for the whole bus)',
      "The device's own documentation, as the catalogue repeats it",
    ],
    since: '0.1.0',
  },
  check({ bus, census }, report) {
    const { rate, kind } = bus;
    if (!rate || kind === undefined || !census.outfits.some(({ port }) => port && !takesRate(port, rate.value))) return;
    const stating = bus.landings.filter(({ port }) => port?.rates.length && portServes(port, kind));
    const unable = stating.filter(({ port }) => !port?.rates.includes(rate.value));
    const [first] = unable;
    if (!first) return;
    report({
      message: `bus ${bus.name} runs at ${rateText(rate.value)}, which ${listed(unable.map(({ name }) => name))} cannot be set to (${first.name} has ${listed((first.port?.rates ?? []).map(rateText))}); run it at a rate that all devices have`,
      place: rate.place,
      related: unable.map(({ name, place }) => ({ message: `${name} cannot run at ${rateText(rate.value)}`, place })),
      at: first.name,
      fixes: () => rateFixes(bus, rate.value, stating),
    });
  },
};

const rateText = (rate: number) => `${formatNumber(rate)} bit/s`;

/** Rates that every port has, the nearest below the present one first. */
function rateFixes(bus: Bus, present: number, stating: readonly Landing[]): Fix[] {
  const common = ratesInCommon(stating.map(({ port }) => port?.rates ?? []));
  const order = (rate: BitsPerSecond) => (rate < present ? present - rate : rate);
  return [...new Set(common)]
    .sort((left, right) => order(left) - order(right))
    .slice(0, 3)
    .map((rate) => ({
      title: `Run bus ${bus.name} at ${rateText(rate)}`,
      safe: false,
      edits: [{ kind: 'set-rate', bus: bus.index, rate }],
    }));
}
