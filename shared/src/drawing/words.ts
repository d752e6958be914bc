/** What a drawing says in words: on its labels, and to those who hear it. */
import { endsText, hasEnds, kindText } from '../figures/page/words.js';
import type { BusStudy } from '../figures/study.js';
import { isUnknown } from '../known.js';
import type {
  Bus,
  BusBias,
  ContactWiring,
  Landing,
  LandingIndex,
  LandingTermination,
  Run,
  ShieldEarth,
  Store,
  StoreNode,
} from '../network.js';
import { formatAmperes, formatFarads, formatNumber, formatOhms, formatResistor } from '../quantity.js';

export const nameOf = (bus: Bus, landing: LandingIndex | undefined): string =>
  (landing === undefined ? undefined : bus.landings[landing]?.name) ?? 'nowhere';

/** `area Dairy wall, 3 landings`; which ones, they say themselves. */
export const areaName = (area: string, landings: number): string =>
  `area ${area}, ${landings === 1 ? '1 landing' : `${landings} landings`}`;

/** The line under a bus's name. */
export function busFacts(study: BusStudy): string[] {
  const { bus } = study;
  const facts = [
    kindText(study),
    bus.cable ? `on ${bus.cable.name}` : 'no cable named',
    `${study.lengthText(study.length)} of cable`,
    bus.landings.length === 1 ? '1 landing' : `${bus.landings.length} landings`,
    endsText(study),
  ];
  if (!isUnknown(study.unitLoads) && 0 < study.unitLoads) {
    const loads = formatNumber(study.unitLoads, 2);
    facts.push(`${loads} ${loads === '1' ? 'unit load' : 'unit loads'}`);
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
  if (run.fuse) lines.push(`fuse ${formatAmperes(run.fuse.value)}`);
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
  if (run.fuse) parts.push(`fuse of ${formatAmperes(run.fuse.value)} in plus at ${nameOf(bus, run.from)}`);
  if (run.cords) parts.push(`cords of ${study.lengthText(run.cords.length)} at its ends`);
  if (run.besideMains) parts.push('beside mains');
  if (run.spare) parts.push('connected at neither end');
  else if (run.to === undefined) parts.push('ends nowhere');
  return parts.join(', ');
}

export function terminatorLabel({ means, resistance, capacitance }: LandingTermination): string[] {
  const values = [formatResistor(resistance), ...(capacitance === undefined ? [] : [formatFarads(capacitance)])];
  return means === 'resistor' ? values : [means, ...values];
}

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
  if (landing.wiring) tags.push(wiringText(landing.wiring));
  if (landing.crossed) tags.push('crossed');
  if (landing.shield !== 'through') tags.push(`shield ${landing.shield}`);
  if (landing.switchedOff) tags.push('switch off');
  if (landing.missingSwitch) tags.push('no such switch');
  const others = node ? busesOf(study.store, node).filter((bus) => bus !== study.bus.name) : [];
  if (others.length && node?.device?.role !== 'head') tags.push(`also on ${others.join(', ')}`);
  return tags;
}

const busesOfNodes = new WeakMap<Store, Map<StoreNode, string[]>>();

/** The names of the buses that a node is landed on. */
function busesOf(store: Store, node: StoreNode): readonly string[] {
  let known = busesOfNodes.get(store);
  if (!known) {
    known = new Map();
    for (const { name, landings } of store.buses) {
      for (const landing of landings) {
        if (!landing.node) continue;
        const buses = known.get(landing.node);
        if (!buses) known.set(landing.node, [name]);
        else if (buses.at(-1) !== name) buses.push(name);
      }
    }
    busesOfNodes.set(store, known);
  }
  return known.get(node) ?? [];
}

/** `breaks +, bridged 4.7 kohm`, `across, through 2.2 kohm`: how a contact lies in its loop. */
function wiringText(wiring: ContactWiring): string {
  if (wiring.kind === 'across') {
    return wiring.through === undefined ? 'across' : `across, through ${formatResistor(wiring.through)}`;
  }
  const conductor = wiring.conductor === 'plus' ? '+' : '\u2212';
  return `breaks ${conductor}${wiring.bridge === undefined ? '' : `, bridged ${formatResistor(wiring.bridge)}`}`;
}

/** `shield earthed at head`, with what lies in between. */
export function earthName(bus: Bus, { landing, through }: ShieldEarth): string {
  const between = through
    ? ` through ${formatOhms(through.resistance)}${through.capacitance === undefined ? '' : ` and ${formatFarads(through.capacitance)} beside it`}`
    : '';
  return `shield earthed at ${nameOf(bus, landing)}${between}`;
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
  if (landing.area) parts.push(`in ${landing.area.value}`);
  const distance = study.shape.distance[index];
  if (distance !== undefined) parts.push(`${study.lengthText(distance)} along the cable`);
  for (const one of landing.terminations) parts.push(`terminated: ${terminatorLabel(one).join(' ')}`);
  parts.push(...landingTags(study, landing));
  return parts.join(', ');
}
