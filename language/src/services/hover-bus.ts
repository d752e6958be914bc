/** What hovers say about a bus, its landings and its runs, all taken from the bus's study. */
import {
  amperesText,
  type Bus,
  type BusStudy,
  endsText,
  formatAmperes,
  hasEnds,
  isUnknown,
  kindText,
  type Landing,
  type LandingColumn,
  type LandingIndex,
  ohms,
  ohmsText,
  originOf,
  type Place,
  type Run,
  rs485Kinds,
  secondsText,
  summary,
  viewOf,
  voltsText,
} from '@fieldpair/shared';
import { documented } from './hover-catalogue.js';
import { literal, terminationText } from './words.js';

export function runFacts(study: BusStudy, run: Run): string[] {
  const { bus, shape } = study;
  const nameOf = (index: LandingIndex | undefined) =>
    literal(index === undefined ? 'nowhere' : (bus.landings[index]?.name ?? 'nowhere'));
  const what = run.spare ? 'spare run' : run.tap ? 'tap' : 'run';
  const cable = run.cable ? ` on ${literal(run.cable.name)}` : '';
  const facts = [`**${study.lengthText(run.length)}** ${what} from ${nameOf(run.from)} to ${nameOf(run.to)}${cable}`];
  const rows: string[] = [];
  if (run.built) rows.push(`built ${study.lengthText(run.length)}, planned ${study.lengthText(run.planned)}`);
  if (run.cords) {
    const of = run.cords.cable ? ` of ${literal(run.cords.cable.name)}` : '';
    rows.push(`cords at its ends: ${study.lengthText(run.cords.length)}${of}`);
  }
  const distance = run.to === undefined || run.spare ? undefined : shape.distance[run.to];
  if (distance !== undefined)
    rows.push(`along the cable from ${nameOf(originOf(shape, run.from))}: ${study.lengthText(distance)}`);
  const one = study.runResistance(run);
  const both = isUnknown(one)
    ? one
    : { nominal: ohms(2 * one.nominal), low: ohms(2 * one.low), high: ohms(2 * one.high) };
  rows.push(`resistance out and back: ${ohmsText(both)}`);
  if (run.fuse) rows.push(`fuse in plus where it leaves ${nameOf(run.from)}: ${formatAmperes(run.fuse.value)}`);
  if (bus.kind === 'supply' && !isUnknown(study.supply)) {
    rows.push(`current: ${amperesText(study.supply.amperes[run.index] ?? { unknown: 'not computed' })}`);
  }
  if (!isTwoWire(bus)) rows.push(`delay: ${secondsText(study.runDelay(run))}`);
  return [...facts, list(rows)];
}

export function landingFacts(study: BusStudy, landing: Landing): string[] {
  const { bus, shape } = study;
  const { node, port, index } = landing;
  const lines = node ? documented('node', node) : [`**splice ${literal(landing.name)}**`];
  const rows: string[] = [];
  if (node?.device) {
    const label = node.device.label === undefined ? '' : `, ${literal(node.device.label)}`;
    rows.push(
      `device ${literal(node.device.name)}${label}${node.revision ? `, revision ${literal(node.revision.value)}` : ''}`,
    );
  }
  if (port) rows.push(`port ${literal(port.name)}`);
  if (landing.area) rows.push(`area ${literal(landing.area.value)}`);
  if (landing.address) rows.push(`address ${landing.address.value}`);
  const distance = shape.distance[index];
  if (distance !== undefined)
    rows.push(
      `along the cable from ${literal(bus.landings[originOf(shape, index)]?.name ?? '')}: ${study.lengthText(distance)}`,
    );
  if (hasEnds(study) && shape.ends?.includes(index)) rows.push('an end of the bus');
  const neighbours = landing.runs.flatMap((one) => {
    const run = bus.runs[one];
    const other = run && (run.from === index ? run.to : run.from);
    const name = other === undefined ? undefined : bus.landings[other]?.name;
    return run && name !== undefined ? [`${literal(name)} (${study.lengthText(run.length)})`] : [];
  });
  if (neighbours.length) rows.push(`beside it: ${neighbours.join(', ')}`);
  const terminations = terminationText(landing);
  if (terminations !== undefined) rows.push(`terminated: ${terminations}`);
  if (!isRs485(bus)) {
    rows.push(...viewOf(bus.kind).columns.flatMap((column) => columnRow(study, landing, column)));
    return [...lines, list(rows)];
  }
  const { [index]: meter } = study.meter;
  if (meter) rows.push(`meter across the pair, unpowered: ${ohmsText(meter)}`);
  const { [index]: idle } = study.idle;
  if (idle) rows.push(`idle level: ${voltsText(idle)}`);
  const { [index]: driven } = study.driven;
  if (driven) rows.push(`level that the head drives: ${voltsText(driven)}`);
  const delay = study.delay[index];
  if (delay !== undefined) rows.push(`delay from ${literal(bus.landings[0]?.name ?? '')}: ${secondsText(delay)}`);
  return [...lines, list(rows)];
}

/** @param heading where the area is written */
export function areaFacts(study: BusStudy, heading: Place): string[] {
  const { bus, shape } = study;
  const inside = bus.landings.filter(({ area }) => area?.place.start === heading.start);
  const [first, last] = [inside[0], inside.at(-1)];
  if (!first || !last) return ['**area** without a landing: none is first landed below this line'];
  const rows = [
    `${inside.length} ${inside.length === 1 ? 'landing' : 'landings'}: ${inside.map(({ name }) => literal(name)).join(', ')}`,
  ];
  const [start, end] = [shape.distance[first.index], shape.distance[last.index]];
  if (first !== last && start !== undefined && end !== undefined)
    rows.push(`along the cable: ${study.lengthText(start)} to ${study.lengthText(end)}`);
  const others = study.store.buses.filter(
    (one) => one !== bus && one.landings.some(({ area }) => area?.value === first.area?.value),
  );
  if (others.length) rows.push(`also on ${others.map(({ name }) => literal(name)).join(', ')}`);
  return [`**area ${literal(first.area?.value ?? '')}**`, list(rows)];
}

export function busFacts(study: BusStudy): string[] {
  const { bus } = study;
  const rows = [
    kindText(study),
    `${study.lengthText(study.length)} of cable, ${bus.landings.length} ${bus.landings.length === 1 ? 'landing' : 'landings'}`,
    literal(endsText(study)),
  ];
  if (bus.cable) rows.push(`on ${literal(bus.cable.name)}`);
  if (isRs485(bus)) rows.push(`loop resistance between the ends: ${ohmsText(study.loopResistance)}`);
  else for (const [name, value] of viewOf(bus.kind).facts(study)) rows.push(`${literal(name)}: ${literal(value)}`);
  const limits = summary(study).map(
    ({ what, value, limit, document }) => `${what}: ${literal(value)}, ${limit} (${literal(document)})`,
  );
  return [...documented('bus', bus), list(rows), ...(limits.length ? ['Against its limits:', list(limits)] : [])];
}

const isRs485 = ({ kind }: Bus): boolean => kind !== undefined && rs485Kinds.has(kind);

/** Supplies and loops carry no signal: no wave travels on them, and their levels are other ones. */
const isTwoWire = ({ kind }: Bus): boolean => kind === 'supply' || kind === 'contact-loop';

/** A column of the page of figures as a row; empty where it has nothing to say of the landing. */
function columnRow(study: BusStudy, landing: Landing, { title, meaning, cell }: LandingColumn): string[] {
  const value = cell(study, landing);
  if (value === '') return [];
  const explained = meaning === undefined ? '' : ` (${literal(meaning)})`;
  return [`${title}: ${isUnknown(value) ? `unknown: ${literal(value.unknown)}` : literal(value)}${explained}`];
}

const list = (rows: readonly string[]) => rows.map((row) => `- ${row}`).join('\n');
