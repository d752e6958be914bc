/**
 * The order in which a bus is proven: dead first, then from what harms most when it is wrong to what harms least.
 * Common practice, no published source, except where a step names one.
 */
import type { BusStudy } from '../figures/study.js';
import { deadSteps, quietSteps, trafficSteps } from './kind-steps.js';

export function commissioningSteps(study: BusStudy): string[] {
  return [
    'Dead: switch off and lock out every supply of the devices of this bus, and all else in their panels. Prove dead: no voltage between the wires, nor from any of them to earth.',
    'Look: go along the bus with the landing schedule; every landing as it says, labels on, no strand outside its screw.',
    ...shieldStep(study),
    ...deadSteps(study),
    ...addressStep(study),
    'Power: take the locks off with whoever set them, switch on, and look for lights and smells that should not be.',
    ...quietSteps(study),
    ...trafficSteps(study),
    'Record: as found and as left, with the temperature; leave a copy in the panel.',
  ];
}

function shieldStep({ bus }: BusStudy): string[] {
  const shielded = bus.runs.some(({ cable, spare }) => !spare && (cable?.shield ?? 'none') !== 'none');
  if (!shielded) return [];
  const names = bus.earths.flatMap(({ landing }) => (landing === undefined ? [] : (bus.landings[landing]?.name ?? [])));
  if (names.length === 0) {
    return ['Shield: continuous from end to end. The plan earths it nowhere: ask before you power up.'];
  }
  return [
    `Shield: with its earth at ${names.join(' and ')} lifted and the devices unplugged, more than 1 Mohm from shield to earth and from each wire to shield, and continuity from end to end. Then put the earth back.`,
  ];
}

function addressStep({ bus }: BusStudy): string[] {
  if (!bus.landings.some(({ address }) => address)) return [];
  return [
    'Addresses: one device after the other by the address table; read each one back, and let a second person read it.',
  ];
}
