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

/** The landings of the part in their order, the repeater last. Places are those of the whole bus. */
export function partBus(bus: Bus, isMember: (landing: LandingIndex) => boolean, joint: Joint): Bus {
  const indices = new Map<LandingIndex, LandingIndex>();
  for (const { index } of bus.landings) if (isMember(index)) indices.set(index, indices.size);
  const repeater = indices.size;
  const runs: Run[] = [];
  const pull = (run: Run, from: LandingIndex, to: LandingIndex) => runs.push({ ...run, index: runs.length, from, to });
  for (const run of bus.runs) {
    const [from, to] = [indices.get(run.from), run.to === undefined ? undefined : indices.get(run.to)];
    if (from !== undefined && to !== undefined) pull(run, from, to);
  }
  pull({ ...joint.run, length: joint.length }, indices.get(joint.at)!, repeater);
  const biases: BusBias[] = bus.biases.flatMap((bias) => {
    const landing = bias.landing === undefined ? undefined : indices.get(bias.landing);
    return landing === undefined ? [] : [{ ...bias, landing }];
  });
  const { device, port } = joint;
  if (port.bias?.mode === 'fixed') biases.push({ ...port.bias, landing: repeater, place: bus.place, builtIn: true });
  const meeting: number[][] = Array.from({ length: repeater + 1 }, () => []);
  for (const { index, from, to } of runs) for (const landing of [from, to!]) meeting[landing]!.push(index);
  const landings: Landing[] = [...indices.keys()].map((old, index) => ({
    ...bus.landings[old]!,
    index,
    runs: meeting[index]!,
  }));
  const due = port.terminator ?? { resistance: joint.run.cable?.impedance ?? usualTerminator };
  landings.push({
    index: repeater,
    node: { name: device.name, place: bus.place, device },
    port,
    name: device.name,
    place: bus.place,
    visits: [],
    otherAddresses: [],
    terminations: [{ ...due, means: 'fixed' }],
    shield: 'through',
    runs: meeting[repeater]!,
  });
  return { ...bus, landings, runs, biases };
}
