/** What a drawing says in words: on its labels, and to those who hear it. */
import { endsText, hasEnds } from '../figures/page/words.js';
import type { BusStudy } from '../figures/study.js';
import { isUnknown } from '../known.js';
import type { Bus, BusBias, Landing, LandingIndex, LandingTermination, Run } from '../network.js';
import { formatFarads, formatNumber, formatOhms, formatRate } from '../quantity.js';

export const nameOf = (bus: Bus, landing: LandingIndex | undefined): string =>
  (landing === undefined ? undefined : bus.landings[landing]?.name) ?? 'nowhere';

/** `modbus-rtu 19200 8E1`. */
export function kindText({ kind, rate, format }: Bus): string {
  const parts = [kind ?? 'unknown kind'];
  if (rate) parts.push(rate.value < 1e5 ? String(rate.value) : formatRate(rate.value));
  if (format) parts.push(`${format.value.dataBits}${format.value.parity}${format.value.stopBits}`);
  return parts.join(' ');
}

/** What the bus is as a shape: its ends, or why it has not two. */
export function shapeText(study: BusStudy): string {
  const { bus, shape } = study;
  if (bus.kind === 'ethernet' || (bus.kind === 'free-topology' && !hasEnds(study))) return endsText(study);
  if (shape.ends) return `ends at ${shape.ends.map((end) => nameOf(bus, end)).join(' and ')}`;
  if (1 < shape.components.length) return `in ${shape.components.length} pieces that no cable joins`;
  if (shape.closing.length) return 'closes a ring';
  if (shape.branches.length) return `branches at ${shape.branches.map((branch) => nameOf(bus, branch)).join(', ')}`;
  return bus.landings.length === 1 ? 'one landing' : 'no plain chain';
}

/** The line under a bus's name. */
export function busFacts(study: BusStudy): string[] {
  const { bus } = study;
  const facts = [
    kindText(bus),
    bus.cable ? `on ${bus.cable.name}` : 'no cable named',
    `${study.lengthText(study.length)} of cable`,
    bus.landings.length === 1 ? '1 landing' : `${bus.landings.length} landings`,
    shapeText(study),
  ];
  if (!isUnknown(study.unitLoads) && 0 < study.unitLoads) {
    facts.push(`${formatNumber(study.unitLoads, 2)} unit loads`);
  }
  const { colours } = bus;
  const roles = [
    ['+', colours?.plus],
    ['\u2212', colours?.minus],
    ['common', colours?.common],
    ['shield', colours?.shield],
  ].flatMap(([role, colour]) => (colour === undefined ? [] : [`${role} ${colour}`]));
  if (roles.length) facts.push(roles.join(' '));
  return facts;
}

/** The label of a run: its length, then whatever is unlike the rest of the bus, a line each. */
export function runLabel(study: BusStudy, run: Run): string[] {
  const lines = [study.lengthText(run.length)];
  if (run.built) lines.unshift(`planned ${study.lengthText(run.planned)}`);
  if (run.cable !== study.bus.cable) lines.push(run.cable ? run.cable.name : 'cable unknown');
  if (run.cords) lines.push(`cords ${study.lengthText(run.cords.length)}`);
  if (run.besideMains) lines.push('beside mains');
  return run.built ? [`built ${lines[1]}`, lines[0] ?? '', ...lines.slice(2)] : lines;
}

export function runName(study: BusStudy, run: Run): string {
  const { bus } = study;
  const what = run.spare ? 'spare run' : run.tap ? 'tap' : 'run';
  const parts = [`${what} from ${nameOf(bus, run.from)} to ${nameOf(bus, run.to)}`, study.lengthText(run.length)];
  if (run.built) parts.push(`built so, planned ${study.lengthText(run.planned)}`);
  if (run.cable) parts.push(`on ${run.cable.name}`);
  if (run.besideMains) parts.push('beside mains');
  if (run.spare) parts.push('connected at neither end');
  else if (run.to === undefined) parts.push('ends nowhere');
  return parts.join(', ');
}

export const terminatorLabel = ({ means, resistance, capacitance }: LandingTermination): string[] => {
  const values = [formatOhms(resistance)];
  if (capacitance !== undefined) values.push(formatFarads(capacitance));
  return means === 'resistor' ? values : [means, ...values];
};

export const biasLabel = ({ up, down, builtIn }: BusBias): string[] => [
  builtIn ? 'bias, built in' : 'bias',
  up === down ? formatOhms(up) : `${formatOhms(up)} / ${formatOhms(down)}`,
];

/** What a landing is beyond its name, device and address; short, for its card. */
export function landingTags(study: BusStudy, landing: Landing): string[] {
  const { index, node } = landing;
  const tags: string[] = [];
  if (node?.device?.role === 'head') tags.push('head');
  if (node?.device?.role === 'repeater') tags.push('repeater');
  if (hasEnds(study) && study.shape.ends?.includes(index)) tags.push('end');
  if (landing.crossed) tags.push('crossed');
  if (landing.shield !== 'through') tags.push(`shield ${landing.shield}`);
  if (landing.switchedOff) tags.push('switch off');
  if (landing.missingSwitch) tags.push('no such switch');
  const others = study.store.buses.filter(
    (bus) => node && bus !== study.bus && bus.landings.some((one) => one.node === node),
  );
  if (others.length && node?.device?.role !== 'head') tags.push(`also on ${others.map(({ name }) => name).join(', ')}`);
  return tags;
}

export function deviceText({ node, splice }: Landing): string {
  if (splice !== undefined || !node) return 'splice';
  if (!node.device) return 'device unknown';
  return node.revision ? `${node.device.name}, rev. ${node.revision.value}` : node.device.name;
}

export function landingName(study: BusStudy, landing: Landing): string {
  const { node, address, otherAddresses, index } = landing;
  const parts = [landing.name];
  if (node?.label !== undefined) parts.push(node.label);
  parts.push(deviceText(landing));
  if (address) parts.push(`address ${[address, ...otherAddresses].map(({ value }) => value).join(' and ')}`);
  const distance = study.shape.distance[index];
  if (distance !== undefined) parts.push(`${study.lengthText(distance)} along the cable`);
  for (const one of landing.terminations) parts.push(`terminated: ${terminatorLabel(one).join(' ')}`);
  parts.push(...landingTags(study, landing));
  return parts.join(', ');
}
