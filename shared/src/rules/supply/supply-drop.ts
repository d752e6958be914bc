/** A device that gets less voltage than it needs. */
import { isUnknown, type Range } from '../../known.js';
import type { Landing, SupplyLoad } from '../../network.js';
import type { Feed, Supply } from '../../physics/supply.js';
import { formatVolts, type Volts, volts } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { soundSupply, supplyExample, withCare } from './example.js';
import { soleFeeds } from './feeds.js';
import { thickerFixes } from './thicker.js';

export const supplyDrop: BusRule = {
  id: 'supply-drop',
  scope: 'bus',
  severity: 'error',
  kinds: ['supply'],
  check(study, report) {
    const { supply } = study;
    if (isUnknown(supply)) return;
    for (const feed of soleFeeds(study)) {
      if (feed.collapses) continue;
      const short = shortLoads(supply, feed);
      const [worst, ...others] = short;
      if (!worst) continue;
      const { landing, load, level, least } = worst;
      const always = level.nominal < least;
      const from = `${formatVolts(feed.source.voltage)} at ${feed.landing.name}`;
      report({
        severity: always ? 'error' : 'warning',
        message: always
          ? `${landing.name} gets ${formatVolts(level.nominal)} of the ${from} and needs ${formatVolts(least)} (${formatVolts(volts(least - level.nominal))} short); pull a thicker cable, or feed it from nearer`
          : `${landing.name} gets ${formatVolts(level.nominal)} of the ${from}, and ${formatVolts(level.low)} at the worst (source low, cable warm); it needs ${formatVolts(least)}: pull a thicker cable, or feed it from nearer`,
        place: landing.place,
        at: landing.name,
        related: [
          { message: 'it needs that by its catalogue entry', place: load.place },
          ...others.map((other) => ({
            message: `${other.landing.name} gets too little too: ${formatVolts(other.level.low)} at the worst`,
            place: other.landing.place,
          })),
        ],
        fixes: () => thickerFixes(study, everyLoadGetsEnough),
      });
    }
  },
  explanation: {
    what: 'A device of a supply gets less voltage than it needs, by stated values or at the worst.',
    why: 'Current makes a voltage along the wire, out and back: V = 2 L I r. What is left at the end of the run is what the device lives on. A device that draws a constant power draws more current the less it gets. At the worst the source is at the lower end of its tolerance and the cable is warm (50 degC where nothing is said of its surroundings).',
    field: 'The last devices of a run restart, relays chatter, and the meter reads enough as long as nothing draws.',
    mend: `Pull a thicker cable, feed from nearer or from both sides, or take a source of its own for the far devices. Measure with everything on. ${withCare}`,
    bad: supplyExample(['300 ft to board1 : Board', '200 ft to board2 : Board'], {
      conductor: '20 AWG stranded',
      thicker: true,
    }),
    good: supplyExample(soundSupply),
    sources: [
      "The device's own documentation, as the catalogue repeats it",
      "Ohm's law; resistance of copper: NBS Handbook 100 (the gauges), IEC 60028 (resistivity)",
      'Warm cable and a source of 5 % where nothing is said: common practice, no published source',
    ],
    since: '0.1.0',
  },
};

interface ShortLoad {
  readonly landing: Landing;
  readonly load: SupplyLoad;
  readonly least: Volts;
  readonly level: Range<Volts>;
}

/** Loads that get too little at the worst, the one that lacks the most first. */
function shortLoads(supply: Supply, { loads }: Feed): ShortLoad[] {
  const short = loads.flatMap(({ landing, load }): ShortLoad[] => {
    const level = supply.volts[landing.index]!;
    const { least } = load;
    return least === undefined || isUnknown(level) || least <= level.low ? [] : [{ landing, load, least, level }];
  });
  return short.sort((left, right) => lack(right) - lack(left));
}

export const everyLoadGetsEnough = (supply: Supply): boolean =>
  supply.feeds.every((feed) => !feed.collapses && shortLoads(supply, feed).length === 0);

const lack = ({ least, level }: ShortLoad) => least - level.nominal;
