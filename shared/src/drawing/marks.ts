/** Findings at the parts of a drawing that they are about. Severity is told by shape first, so that print keeps it. */
import type { Place } from '../catalogue.js';
import { type Finding, type Severity, severities } from '../finding.js';
import type { Bus, LandingIndex, RunIndex, Store } from '../network.js';
import type { Shape } from './scene.js';
import { circle, n, path, text } from './shapes.js';

/** The findings of a store by what they are drawn at; those of other stores are left out. */
export interface Marks {
  readonly store: readonly Finding[];
  readonly network: ReadonlyMap<number, readonly Finding[]>;
  readonly buses: readonly BusMarks[];
}

export interface BusMarks {
  readonly bus: readonly Finding[];
  readonly landings: ReadonlyMap<LandingIndex, readonly Finding[]>;
  readonly runs: ReadonlyMap<RunIndex, readonly Finding[]>;
  readonly earths: ReadonlyMap<number, readonly Finding[]>;
  readonly biases: ReadonlyMap<number, readonly Finding[]>;
}

type Open = Map<number, Finding[]>;
interface OpenBus {
  bus: Finding[];
  landings: Open;
  runs: Open;
  earths: Open;
  biases: Open;
}

export function marksOf(store: Store, findings: readonly Finding[]): Marks {
  const buses: OpenBus[] = store.buses.map(() => ({
    bus: [],
    landings: new Map(),
    runs: new Map(),
    earths: new Map(),
    biases: new Map(),
  }));
  const network: Open = new Map();
  const ofStore: Finding[] = [];
  for (const finding of findings) {
    if (finding.store !== undefined && finding.store !== store.name) continue;
    const index = store.buses.findIndex(({ blockPlace }) => within(finding.place, blockPlace));
    const bus = store.buses[index];
    const marks = buses[index];
    if (bus && marks) take(finding, bus, marks);
    else if (atNode(finding, store, buses) || atNetwork(finding, store, network)) continue;
    // What is said of a file as a whole is not about this store.
    else if (finding.store === store.name) ofStore.push(finding);
  }
  return { store: ofStore, network, buses };
}

/** Puts a finding at the smallest part of the bus that its place lies in. */
function take(finding: Finding, bus: Bus, marks: OpenBus): void {
  const { place } = finding;
  const landing = bus.landings.findIndex(({ visits }) => visits.some((visit) => within(place, visit.place)));
  const earth = bus.earths.findIndex((one) => one.landing !== undefined && within(place, one.place));
  const bias = bus.biases.findIndex((one) => one.landing !== undefined && within(place, one.place));
  const run = bus.runs.findIndex((one) => within(place, one.place));
  if (0 <= landing) add(marks.landings, landing, finding);
  else if (0 <= earth) add(marks.earths, earth, finding);
  else if (0 <= bias) add(marks.biases, bias, finding);
  else if (0 <= run) add(marks.runs, run, finding);
  else marks.bus.push(finding);
}

/** A finding about a node itself is shown at its first landing. */
function atNode(finding: Finding, store: Store, buses: readonly OpenBus[]): boolean {
  const { place } = finding;
  const node = store.nodes.find((one) =>
    [one.place, one.devicePlace, one.revision?.place].some((part) => part && within(place, part)),
  );
  if (!node) return false;
  for (const bus of store.buses) {
    const landing = bus.landings.find((one) => one.node === node);
    const marks = buses[bus.index];
    if (!landing || !marks) continue;
    add(marks.landings, landing.index, finding);
    return true;
  }
  return false;
}

function atNetwork(finding: Finding, store: Store, network: Open): boolean {
  const index = store.networks.findIndex(
    ({ place, members }) => within(finding.place, place) || members.some((one) => within(finding.place, one.place)),
  );
  if (index < 0) return false;
  add(network, index, finding);
  return true;
}

function add(map: Open, key: number, finding: Finding): void {
  const known = map.get(key);
  if (known) known.push(finding);
  else map.set(key, [finding]);
}

export const within = (inner: Place, outer: Place): boolean =>
  inner.file === outer.file && outer.start <= inner.start && inner.end <= outer.end;

/** How wide a row of signs is. */
export const signsWidth = (findings: readonly Finding[] | undefined): number =>
  findings?.length ? new Set(findings.map(signOf)).size * signPitch : 0;

type Sign = Severity | 'waived';
const signOf = ({ severity, waived }: Finding): Sign => (waived ? 'waived' : severity);
const everySign: readonly Sign[] = [...severities, 'waived'];

const signPitch = 17;

/**
 * A sign for each severity that occurs, the gravest first, with how many there are of it beyond one: a square on its
 * corner for errors, a triangle for warnings, a circle for notes. What is waived has a small quiet one, whatever its
 * severity, with a tick because somebody has agreed to it. `x` is the left side, `y` the middle.
 */
export function signs(findings: readonly Finding[] | undefined, x: number, y: number): Shape[] {
  const shapes: Shape[] = [];
  let left = x;
  for (const sign of everySign) {
    const count = findings?.reduce((sum, finding) => sum + (signOf(finding) === sign ? 1 : 0), 0) ?? 0;
    if (count === 0) continue;
    const middle = left + signPitch / 2;
    shapes.push(outlines[sign](middle, y));
    if (sign === 'waived' && count === 1) {
      shapes.push(path('waived-tick', `M${n(middle - 2.6)} ${n(y)}l1.9 2.1l3.4 -4.2`));
    } else {
      const letter = 1 < count ? String(Math.min(count, 9)) : sign === 'info' ? 'i' : '!';
      const drop = sign === 'warning' ? 4.6 : 3.4;
      shapes.push(
        text(`sign-letter ${sign}-letter`, middle, y + drop, letter, { size: 9, anchor: 'middle', bold: true }),
      );
    }
    left += signPitch;
  }
  return shapes;
}

const outlines: Readonly<Record<Sign, (x: number, y: number) => Shape>> = {
  error: (x, y) => path('sign error', `M${x} ${y - 8}L${x + 8} ${y}L${x} ${y + 8}L${x - 8} ${y}Z`),
  warning: (x, y) => path('sign warning', `M${x} ${y - 7.5}L${x + 8} ${y + 6.5}L${x - 8} ${y + 6.5}Z`),
  info: (x, y) => circle('sign info', x, y, 7),
  waived: (x, y) => circle('sign waived', x, y, 5.8),
};
