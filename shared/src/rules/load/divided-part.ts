/** What is written of one part of a bus that is divided. */
import type { BusStudy } from '../../figures/study.js';
import type { DividedLanding, DividedPart, DividedStep } from '../../finding.js';
import type { Bus } from '../../network.js';
import type { Ohms } from '../../quantity.js';
import { isShielded } from '../pair/cables.js';
import { courseOf, shortestChain } from '../shape/straighten.js';
import { newBias } from './bias-choice.js';
import { type DivisibleChain, jumperOf, type Repeater } from './divide-chain.js';
import { isBiased, type Part } from './divide-place.js';
import { type Joint, partBus } from './part-bus.js';

/** One part, from one position of the trunk to another, and the repeaters at its ends by their numbers. */
export interface Section {
  readonly begin: number;
  readonly end: number;
  readonly part: Part;
  /** Undefined where the bus begins. */
  readonly before: number | undefined;
  /** Undefined where the bus ends. */
  readonly behind: number | undefined;
  /** The repeater that it lies beyond, seen from the head; undefined for the part that has the head. */
  readonly beyond: number | undefined;
}

/** Where a part meets a repeater. */
interface Meeting extends Joint {
  readonly landing: DividedLanding;
  readonly repeater: number;
  /** Whether it has the whole run, not the jumper to the repeater that stands beside its last device. */
  readonly isWhole: boolean;
}

/** Undefined where the part needs bias and no resistor serves. */
export function dividedPart(chain: DivisibleChain, repeater: Repeater, section: Section): DividedPart | undefined {
  const { study, positions } = chain;
  const { bus } = study;
  const { begin, end, beyond, part } = section;
  const isMember = (landing: number) => begin <= positions[landing]! && positions[landing]! <= end;
  const before = meeting(chain, repeater, section, 'before');
  const behind = meeting(chain, repeater, section, 'behind');
  const meetings = [before, behind].filter((one) => one !== undefined);
  const own = partBus(bus, isMember, meetings);
  const members = own.landings.length - meetings.length;

  let anchor: DividedLanding;
  let anchorIndex: number;
  if (beyond === undefined) {
    const landing = study.head ?? bus.landings[meetings[0]!.at]!;
    anchor = landing.index;
    anchorIndex = own.landings.findIndex(({ name }) => name === landing.name);
  } else {
    anchor = { repeater: beyond, side: 'far' };
    anchorIndex = members + meetings.findIndex((one) => one.repeater === beyond);
  }
  const bias = missingBias(study, part, own, anchorIndex);
  if (bias === 'none serves') return undefined;
  const isKept = beyond === undefined;
  const isEarthed = bus.earths.some(({ landing }) => (landing === undefined ? isKept : isMember(landing)));
  const wantsEarth = isKept ? 0 < bus.earths.length : own.runs.some(({ cable }) => isShielded(cable));
  return {
    course: partCourse(chain, section, before, behind),
    anchor,
    earth: !isEarthed && wantsEarth,
    ...(bias !== undefined && { bias }),
  };
}

function meeting(
  chain: DivisibleChain,
  { device, near, far }: Repeater,
  section: Section,
  which: 'before' | 'behind',
): Meeting | undefined {
  const repeater = section[which];
  if (repeater === undefined) return undefined;
  const { stretches, study } = chain;
  const cut = which === 'before' ? section.begin - 1 : section.end;
  const own = which === 'before' ? section.begin : section.end;
  const run = stretches.between[cut]!;
  const isWhole = chain.besideCut(cut) !== own;
  return {
    at: chain.landingAt(own).index,
    length: isWhole ? run.length : jumperOf(study.bus),
    run,
    device,
    port: isWhole ? far : near,
    landing: { repeater, side: isWhole ? 'far' : 'near' },
    repeater,
    isWhole,
  };
}

/** The resistor of a bias that a part has to get; undefined where it needs none, or has one. */
function missingBias(study: BusStudy, part: Part, bus: Bus, landing: number): Ohms | 'none serves' | undefined {
  if (0 < part.biases || !isBiased(study, part)) return undefined;
  return newBias(study.store, bus, landing) ?? 'none serves';
}

function partCourse(
  { study, positions }: DivisibleChain,
  { begin, end }: Section,
  before: Meeting | undefined,
  behind: Meeting | undefined,
): DividedStep[] {
  const { bus, shape } = study;
  // A jumper runs on the cable of the bus, or of the run that it continues where the bus names none.
  const pieceOf = ({ length, run, isWhole }: Meeting) => ({
    length,
    ...(isWhole || !bus.cable ? { run: run.index } : {}),
  });
  const whole = courseOf(bus, shape, shortestChain(bus, shape));
  let steps: DividedStep[] = whole.filter(({ landing }) => begin <= positions[landing]! && positions[landing]! <= end);
  if (behind) {
    // The trunk goes on to the repeater; what hangs on taps is told behind that.
    const lifted = steps.findIndex(({ step }, index) => 0 < index && step === 'from');
    const step = { step: 'to', landing: behind.landing, ...pieceOf(behind) } as const;
    steps = steps.toSpliced(lifted < 0 ? steps.length : lifted, 0, step);
  }
  if (before) {
    const first = bus.landings[before.at]!.index;
    const piece = pieceOf(before);
    steps = steps.map((one) =>
      one.landing === first && one.step === 'to' ? { step: one.step, landing: first, ...piece } : one,
    );
    steps.unshift({ step: 'from', landing: before.landing });
  }
  return steps;
}
