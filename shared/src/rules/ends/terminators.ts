/** What the rules about ends share: where a terminator is due, the edits that bring it there, and words for it. */
import type { BusStudy } from '../../figures/study.js';
import type { Fix, NetworkEdit, Severity } from '../../finding.js';
import { dueTermination, isSegmentTerminator } from '../../limits/due-terminator.js';
import { type SegmentForm, segmentForm } from '../../limits/free-topology.js';
import {
  type Bus,
  type BusKind,
  type Landing,
  type LandingIndex,
  rs485Kinds,
  type Termination,
} from '../../network.js';
import { formatFarads, formatOhms } from '../../quantity.js';

/** The kinds whose pair is terminated at its two ends; on free topology, where it is meant to be such a bus. */
export const terminatedKinds: readonly BusKind[] = [...rs485Kinds, 'can', 'free-topology'];

/** The two ends that each want a terminator; undefined where the shape has none, and for a segment of free form. */
export function terminatedEnds(study: BusStudy): readonly [LandingIndex, LandingIndex] | undefined {
  const isFree = study.bus.kind === 'free-topology' && segmentForm(study) === 'free';
  return isFree ? undefined : study.shape.ends;
}

/**
 * The Modbus serial line guide and the data books of free topology ask for it; elsewhere it is advice, or known from
 * memory alone, so that it cannot be an error.
 */
export const severityBySource = ({ kind }: Bus): Severity =>
  kind === 'modbus-rtu' || kind === 'free-topology' ? 'error' : 'warning';

/** Whether nothing terminates a landing; undefined where its device is not known well enough to say so. */
export function isBare(landing: Landing): boolean | undefined {
  if (landing.terminations.length > 0) return false;
  if (landing.terminatorUnclear || landing.switchRequested || (landing.splice === undefined && !landing.port))
    return undefined;
  return true;
}

/** Whether the text can take every terminator off a landing: those fixed inside its device stay. */
export const canUnterminate = (landing: Landing): boolean =>
  landing.terminations.every(({ means }) => means !== 'fixed') && landing.terminations.length > 0;

/** Whether the device has a terminator to switch on that is what is due. */
export function hasSwitch(bus: Bus, landing: Landing, form?: SegmentForm): boolean {
  const own = landing.port?.terminator;
  if (own?.mode !== 'switch') return false;
  return bus.kind !== 'free-topology' || isSegmentTerminator(own, dueTermination(bus, landing, form));
}

/** By the device's own switch where it has one, else by a resistor that fits the cable. */
export function terminateEdit(bus: Bus, landing: Landing, form?: SegmentForm): NetworkEdit {
  const at = { kind: 'terminate', bus: bus.index, landing: landing.index } as const;
  return hasSwitch(bus, landing, form)
    ? { ...at, means: 'switch' }
    : { ...at, means: 'resistor', ...dueTermination(bus, landing, form) };
}

/** What {@link terminateEdit} does, as an instruction. */
export const terminateTitle = (bus: Bus, landing: Landing, form?: SegmentForm): string =>
  hasSwitch(bus, landing, form)
    ? `Switch on the terminator of ${landing.name}`
    : `Terminate ${landing.name} with ${partsText(dueTermination(bus, landing, form))}`;

/** `a 120 ohm resistor`, `a 52.3 ohm resistor and 100 uF in series`. */
export const partsText = ({ resistance, capacitance }: Termination): string =>
  `a ${formatOhms(resistance)} resistor${capacitance === undefined ? '' : ` and ${formatFarads(capacitance)} in series`}`;

/** Replaces what is written at a landing by the terminator that is due. */
export const resistorFix = (bus: Bus, landing: Landing, form?: SegmentForm): Fix => {
  const due = dueTermination(bus, landing, form);
  return {
    title: `Terminate ${landing.name} with ${partsText(due)} instead`,
    safe: false,
    edits: [{ kind: 'terminate', means: 'resistor', bus: bus.index, landing: landing.index, ...due }],
  };
};

/** Keeps one of several terminators and takes the others off, as far as they are written in the text. */
export const keepOnlyFix = (landing: Landing, kept: Landing['terminations'][number]): Fix => ({
  title: `Terminate ${landing.name} by ${terminationText(kept)} alone`,
  safe: false,
  edits: landing.terminations.flatMap((other) =>
    other !== kept && other.place ? [{ kind: 'write', place: other.place, text: '' }] : [],
  ),
});

export const unterminateEdit = (bus: Bus, landing: Landing): NetworkEdit => ({
  kind: 'unterminate',
  bus: bus.index,
  landing: landing.index,
});

/** Takes the terminator off one landing and puts one on another. */
export const moveFix = (bus: Bus, from: Landing, to: Landing): Fix => ({
  title: `Move the terminator from ${from.name} to ${to.name}`,
  safe: false,
  edits: [unterminateEdit(bus, from), terminateEdit(bus, to)],
});

/** What makes the terminators right once the bus is a chain between these two landings. */
export function terminatorEdits(bus: Bus, ends: readonly [LandingIndex, LandingIndex]): NetworkEdit[] {
  return bus.landings.flatMap((landing) => {
    if (ends.includes(landing.index)) return isBare(landing) ? [terminateEdit(bus, landing)] : [];
    return canUnterminate(landing) ? [unterminateEdit(bus, landing)] : [];
  });
}

/** `a 120 ohm resistor`, `a switch of 120 ohm`, `a fixed 120 ohm`: a terminator in a sentence. */
export function terminationText({ means, resistance, capacitance }: Landing['terminations'][number]): string {
  const value = `${formatOhms(resistance)}${capacitance === undefined ? '' : ` and ${formatFarads(capacitance)}`}`;
  if (means === 'switch') return `its switch (${value})`;
  return means === 'fixed' ? `one fixed inside (${value})` : `a resistor (${value})`;
}
