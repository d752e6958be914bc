import { occasion } from '../../figures/occasions.js';
import { rightedBusOf } from '../../figures/righted-bus.js';
import { type BusStudy, createStudy } from '../../figures/study.js';
import type { Fix } from '../../finding.js';
import { isUnknown, listed } from '../../known.js';
import { dueResistance, fitsImpedance } from '../../limits/due-terminator.js';
import { leastDriverLoad } from '../../limits/level.js';
import { biasLimit, unitLoadLimit } from '../../limits/load.js';
import { usualTerminator } from '../../limits/terminator.js';
import type { Bus, Landing } from '../../network.js';
import { formatOhms } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { signalEffect } from '../signal-effect.js';
import { changeableBias, changedBias, idles, overload } from './bias-choice.js';
import { loadExample } from './example.js';

/**
 * What the head drives into, all resistors and loads of the bus together. A terminator that should not be there or does
 * not fit, a shape that is no chain and a bias too many have their own findings, and are the cause where it is not there
 * without them.
 */
export const driverOverloaded: BusRule = {
  id: 'driver-overloaded',
  occasions: occasion.loaded,
  severity: 'warning',
  kinds: ['rs485', 'modbus-rtu', 'bacnet-mstp', 'peer-485'],
  scope: 'bus',
  check: (study, report) => {
    const { bus, shape, head } = study;
    if (bus.damaged || !shape.ends || !head) return;
    if (bus.biases.length > (biasLimit(bus.kind)?.value ?? bus.biases.length)) return;
    if (!isUnknown(study.unitLoads) && unitLoadLimit.value < study.unitLoads) return;
    const load = overload(study);
    if (load === undefined) return;
    const { righted } = rightedBusOf(study);
    if (righted !== bus && overload(createStudy(study.store, righted)) === undefined) return;
    report({
      message: `the driver of ${head.name} works into ${formatOhms(load)} on bus ${bus.name}; ${leastDriverLoad.value} ohm is ${leastDriverLoad.meaning}; use larger bias resistors, terminators of the cable's impedance or fewer loads`,
      place: bus.place,
      at: head.name,
      related: signalEffect(study, 'load'),
      fixes: () => [...biasFixes(study), ...terminatorFixes(study)],
    });
  },
  explanation: {
    what: 'Terminators, bias and loads together are less than a driver must drive.',
    why: 'A driver gives its 1.5 V into 54 ohm, which is two terminators of 120 ohm with 32 unit loads. Into less it may give less, and the far receivers get what is left.',
    field: 'Levels under traffic are low at every point; the meter reads under 54 ohm across the unpowered pair.',
    mend: 'Use bias resistors of a larger value, within what the idle level allows, and terminators that match the cable.',
    bad: loadExample({ more: ['bias at head 200 ohm'] }),
    good: loadExample({ more: ['bias at head 510 ohm'] }),
    sources: ['TIA-485-A: 1.5 V into 54 ohm, as quoted in application notes'],
    since: '0.1.0',
  },
};

/** Whether a changed bus idles well enough and overloads no driver. */
function serves({ store }: BusStudy, changed: Bus): boolean {
  const study = createStudy(store, changed);
  return overload(study) === undefined && (changed.biases.length === 0 || idles(study) !== 'weakly');
}

/** Larger bias resistors; of several biases, one less. */
function biasFixes(study: BusStudy): Fix[] {
  const { store, bus } = study;
  const fixes: Fix[] = [];
  const index = changeableBias(bus);
  const resistor = index === undefined ? undefined : changedBias(store, bus, index);
  if (index !== undefined && resistor !== undefined) {
    fixes.push({
      title: `Bias the pair with ${formatOhms(resistor)} instead`,
      safe: false,
      edits: [{ kind: 'set-bias', bus: bus.index, bias: index, up: resistor, down: resistor }],
    });
  }
  for (const [at, { builtIn, landing }] of bus.biases.entries()) {
    if (builtIn || landing === undefined || bus.biases.length < 2) continue;
    if (!serves(study, { ...bus, biases: bus.biases.toSpliced(at, 1) })) continue;
    fixes.push({
      title: `Remove the bias at ${bus.landings[landing]!.name}`,
      safe: false,
      edits: [{ kind: 'remove-bias', bus: bus.index, bias: at }],
    });
  }
  return fixes;
}

/** Terminators as large as the cable allows, where they are smaller than what drivers are made for. */
function terminatorFixes(study: BusStudy): Fix[] {
  const { bus } = study;
  const larger = (landing: Landing) => {
    const [first] = landing.terminations;
    const due = Math.max(dueResistance(bus, landing), usualTerminator) as typeof usualTerminator;
    return first &&
      first.means !== 'fixed' &&
      first.resistance < due &&
      fitsImpedance(bus, due, dueResistance(bus, landing))
      ? due
      : undefined;
  };
  const changed = bus.landings.filter((landing) => larger(landing) !== undefined);
  const landings = bus.landings.map((landing) => {
    const resistance = larger(landing);
    return resistance === undefined
      ? landing
      : { ...landing, terminations: [{ means: 'resistor' as const, resistance }] };
  });
  if (changed.length === 0 || !serves(study, { ...bus, landings })) return [];
  return [
    {
      title: `Terminate ${listed(changed.map(({ name }) => name))} with ${formatOhms(larger(changed[0]!)!)} instead`,
      safe: false,
      edits: changed.map((landing) => ({
        kind: 'terminate',
        means: 'resistor',
        bus: bus.index,
        landing: landing.index,
        resistance: larger(landing)!,
      })),
    },
  ];
}
