/** One part of a bus that a repeater would divide, as a bus of its own to be computed. */
import { usualTerminator } from '../../limits/terminator.js';
import type { Bus, BusBias, Device, Landing, LandingIndex, Port, Run } from '../../network.js';
import type { Metres } from '../../quantity.js';

/** How the repeater is joined to the part: at which landing, by how much of which run's cable, at which port. */
export interface Joint {
  readonly at: LandingIndex;
  readonly length: Metres;
  readonly run: Run;
  readonly device: Device;
  readonly port: Port;
}

/** The landings of the part in their order, its repeaters last. Places are those of the whole bus. */
export function partBus(bus: Bus, isMember: (landing: LandingIndex) => boolean, joints: readonly Joint[]): Bus {
  const indices = new Map<LandingIndex, LandingIndex>();
  for (const { index } of bus.landings) if (isMember(index)) indices.set(index, indices.size);
  const members = indices.size;
  const runs: Run[] = [];
  const pull = (run: Run, from: LandingIndex, to: LandingIndex) => runs.push({ ...run, index: runs.length, from, to });
  for (const run of bus.runs) {
    const [from, to] = [indices.get(run.from), run.to === undefined ? undefined : indices.get(run.to)];
    if (from !== undefined && to !== undefined) pull(run, from, to);
  }
  for (const [order, { at, run, length }] of joints.entries())
    pull({ ...run, length }, indices.get(at)!, members + order);
  const biases: BusBias[] = bus.biases.flatMap((bias) => {
    const landing = bias.landing === undefined ? undefined : indices.get(bias.landing);
    return landing === undefined ? [] : [{ ...bias, landing }];
  });
  for (const [order, { port }] of joints.entries()) {
    if (port.bias?.mode !== 'fixed') continue;
    biases.push({ ...port.bias, landing: members + order, place: bus.place, builtIn: true });
  }
  const meeting: number[][] = Array.from({ length: members + joints.length }, () => []);
  for (const { index, from, to } of runs) for (const landing of [from, to!]) meeting[landing]!.push(index);
  const landings: Landing[] = [...indices.keys()].map((old, index) => ({
    ...bus.landings[old]!,
    index,
    runs: meeting[index]!,
  }));
  for (const joint of joints) landings.push(repeaterLanding(bus, landings.length, joint, meeting[landings.length]!));
  return { ...bus, landings, runs, biases };
}

function repeaterLanding({ place }: Bus, index: LandingIndex, { device, port, run }: Joint, runs: number[]): Landing {
  const due = port.terminator ?? { resistance: run.cable?.impedance ?? usualTerminator };
  return {
    index,
    node: { name: device.name, place, device },
    port,
    name: device.name,
    place,
    visits: [],
    otherAddresses: [],
    terminations: [{ ...due, means: 'fixed' }],
    terminatorUnclear: false,
    shield: 'through',
    runs,
  };
}
