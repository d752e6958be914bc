/**
 * The waveforms of a bus for an editor: which simulations a choice asks for, and what their answers look like.
 *
 * The simulating itself happens elsewhere, in between: it takes longer than an editor should wait.
 */
import {
  type Bus,
  bitsPerSecond,
  type Finding,
  type Fix,
  type Landing,
  listed,
  type NetworkEdit,
  type Store,
  seconds,
  type WaveQuestion,
} from '@fieldpair/shared';
import { closeSamples, eyePattern, plotSamples, type WaveView } from '@fieldpair/shared/plot';
import type { Position } from 'vscode-languageserver';
import { type FaultChoices, faultChoices, landingNamed, quantityFrom, Refusal, readFault } from '../what-if/index.js';
import { mendedBus } from '../what-if/mended.js';
import { type BusInStore, contains, type Desk } from './desk.js';
import { openFindings } from './diagnostics.js';

/** What somebody wants to see; see the protocol for each field. */
export interface WaveWishes {
  readonly store?: string;
  readonly bus?: string;
  readonly driver?: string;
  readonly view: WaveView;
  readonly rate?: string;
  readonly edge?: string;
  readonly bits?: string;
  readonly faults?: readonly string[];
  readonly fix?: string;
  readonly span?: readonly [from: number, to: number];
}

/** A bus of a store, and what is asked of it. */
export interface WaveCase {
  readonly store: Store;
  readonly bus: Bus;
  readonly question: WaveQuestion;
}

export interface WavePlan {
  readonly written: WaveCase;
  /** With the fix or the faults that were chosen. */
  readonly changed?: WaveCase & { readonly name: string };
  readonly buses: readonly BusInStore[];
  readonly fixes: readonly { readonly id: string; readonly title: string }[];
  readonly faults: readonly FaultChoices[];
  /** What could not be done as it was wished, each a sentence. */
  readonly problems: readonly string[];
}

/** Undefined for a file without a bus that has a landing. @param position where the bus is written, when no name is given. */
export function planWaves(desk: Desk, file: string, wishes: WaveWishes, position?: Position): WavePlan | undefined {
  const buses = desk.busesIn(file).filter(({ bus }) => bus.landings.length);
  const offset = position && desk.offsetOf(file, position);
  const found =
    buses.find(({ store, bus }) => store.name === wishes.store && bus.name === wishes.bus) ??
    buses.find(({ bus }) => offset !== undefined && contains(bus.blockPlace, offset)) ??
    buses[0];
  if (!found) return undefined;
  const { store, bus } = found;
  const problems: string[] = [];
  const had: Had = (answer) => {
    if (!(answer instanceof Refusal)) return answer;
    problems.push(sentence(answer.reason));
    return undefined;
  };
  const wished = wishes.driver === undefined ? undefined : had(landingNamed(bus, wishes.driver));
  const driver = wished ?? desk.studyOf(found).head ?? bus.landings[0]!;
  const question = questionOf(wishes, had);
  const fixes = fixesOf(desk, file, store, bus);
  const changed = changedCase({ desk, file, wishes, found, driver, question, fixes, had });
  return {
    written: { store, bus, question: { ...question, driver: driver.index } },
    ...(changed ? { changed } : {}),
    buses,
    fixes: fixes.map(({ id, title }) => ({ id, title })),
    faults: faultChoices(bus),
    problems,
  };
}

/** What a wish comes to; a wish that cannot be had is told and left aside. */
type Had = <T>(answer: T | Refusal) => T | undefined;
type Question = Omit<WaveQuestion, 'driver' | 'faults'>;

function questionOf({ rate, edge, bits, view, span }: WaveWishes, had: Had): Question {
  const rateIs = rate === undefined ? undefined : had(quantityFrom(rate, 'rate', { least: 10, most: 1e8 }, 'bit/s'));
  const edgeIs = edge === undefined ? undefined : had(quantityFrom(edge, 'time', { least: 1e-10, most: 1 }));
  const pattern = (bits === undefined ? undefined : had(bitsFrom(bits))) ?? (view === 'eye' ? eyePattern : undefined);
  return {
    ...(rateIs === undefined ? {} : { rate: bitsPerSecond(rateIs) }),
    ...(edgeIs === undefined ? {} : { edge: seconds(edgeIs) }),
    ...(pattern === undefined ? {} : { pattern }),
    samples: span ? closeSamples : plotSamples,
  };
}

interface Change {
  readonly desk: Desk;
  readonly file: string;
  readonly wishes: WaveWishes;
  readonly found: BusInStore;
  readonly driver: Landing;
  readonly question: Question;
  readonly fixes: readonly OfferedFix[];
  readonly had: Had;
}

/** The same question of the bus with the fix applied and with the faults in it; undefined when neither is to be had. */
function changedCase(change: Change): WavePlan['changed'] {
  const { desk, file, wishes, found, driver, question, had } = change;
  const fix = change.fixes.find(({ id }) => id === wishes.fix);
  if (wishes.fix !== undefined && !fix)
    had(new Refusal('the fix to compare with is not offered any more: what it mends is mended, or has changed'));
  const mended = fix && mendedBus(desk.project, file, fix.finding, fix.fix, found.bus);
  if (fix && !mended) had(new Refusal(`"${fix.fix.title}" leaves no bus ${found.bus.name} to compare with`));
  const { store, bus } = mended ?? found;
  const cables = desk.project.catalogueOf(file);
  const cableNamed = (name: string) => cables.map((one) => one.cables.get(name)).find((cable) => cable);
  const faults = (wishes.faults ?? []).flatMap((phrase) => {
    const fault = had(readFault(bus, phrase, cableNamed));
    return fault ? [{ phrase, fault }] : [];
  });
  if (!mended && !faults.length) return undefined;
  // A fix may number the landings anew.
  const index = bus.landings.find(({ name }) => name === driver.name)?.index;
  if (index === undefined) {
    had(new Refusal(`after the fix ${driver.name} is no landing of bus ${bus.name}`));
    return undefined;
  }
  const asked = { ...question, driver: index, ...(faults.length ? { faults: faults.map(({ fault }) => fault) } : {}) };
  const name = changeName(
    mended !== undefined,
    faults.map(({ phrase }) => phrase),
  );
  return { store, bus, question: asked, name };
}

const sentence = (reason: string) => `${reason.charAt(0).toUpperCase()}${reason.slice(1)}.`;

function changeName(mended: boolean, faults: readonly string[]): string {
  const faulty = faults.length ? `with ${listed(faults)}` : '';
  if (!mended) return faulty;
  return faulty === '' ? 'as it should be' : `mended, and ${faulty}`;
}

function bitsFrom(bits: string): string | Refusal {
  const pattern = bits.replaceAll(/[\s_]/g, '');
  return /^[01]{2,4096}$/.test(pattern) ? pattern : new Refusal('bits are a row of 2 to 4096 zeros and ones');
}

/** Edits that change what a signal meets on its way; the others leave its waves as they are. */
const electrical: ReadonlySet<NetworkEdit['kind']> = new Set<NetworkEdit['kind']>([
  ...([
    'terminate',
    'unterminate',
    'uncross',
    'set-port',
    'add-bias',
    'set-bias',
    'remove-bias',
    'set-run-cable',
  ] as const),
  ...(['set-bus-cable', 'set-rate', 'mark-spare', 'remove-run', 'rewire'] as const),
]);

interface OfferedFix {
  readonly id: string;
  readonly title: string;
  readonly finding: Finding;
  readonly fix: Fix;
}

/** The fixes of a bus's findings that change its waves. Ids stay the same while the text changes elsewhere. */
function fixesOf(desk: Desk, file: string, store: Store, bus: Bus): OfferedFix[] {
  const offered = new Map<string, OfferedFix>();
  for (const finding of openFindings(desk, file)) {
    if (finding.store !== store.name || finding.bus !== bus.name) continue;
    for (const fix of finding.fixes()) {
      if (!fix.edits.some(({ kind }) => electrical.has(kind))) continue;
      const id = `${finding.rule}: ${fix.title}`;
      offered.set(id, { id, title: `${fix.title} (${finding.rule})`, finding, fix });
    }
  }
  return [...offered.values()];
}
