/** What the rules about ends share: which terminator is due at a landing, and the edits that bring it there. */
import type { Fix, NetworkEdit, Severity } from '../../finding.js';
import { modbusTerminator, terminatorShare, usualTerminator } from '../../limits/terminator.js';
import { type Bus, type BusKind, type Landing, type LandingIndex, rs485Kinds } from '../../network.js';
import { formatOhms, type Ohms } from '../../quantity.js';

/** The kinds whose pair is terminated at its two ends. */
export const terminatedKinds: readonly BusKind[] = [...rs485Kinds];

/**
 * The Modbus serial line guide asks for it; elsewhere it is advice, or known from memory alone, so that it cannot be
 * an error.
 */
export const severityBySource = (bus: Bus): Severity => (bus.kind === 'modbus-rtu' ? 'error' : 'warning');

/** Impedance of the cable that arrives at a landing; undefined when there is none, or its maker does not say. */
export function impedanceAt(bus: Bus, landing: Landing): Ohms | undefined {
  const [run] = landing.runs;
  return (run === undefined ? bus.cable : bus.runs[run]?.cable)?.impedance;
}

/** The resistor that a landing's cable asks for. */
export const dueResistance = (bus: Bus, landing: Landing): Ohms => impedanceAt(bus, landing) ?? usualTerminator;

/** Whether a terminator is near enough to what the cable asks for. */
export const terminatorFits = (bus: Bus, landing: Landing, resistance: Ohms): boolean =>
  fitsImpedance(bus, resistance, dueResistance(bus, landing));

export const fitsImpedance = ({ kind }: Bus, resistance: Ohms, due: Ohms): boolean =>
  (kind === 'modbus-rtu' && resistance === modbusTerminator) ||
  Math.abs(resistance - due) <= terminatorShare.value * due * (1 + Number.EPSILON);

/** Whether nothing terminates a landing; undefined where its device is not known well enough to say so. */
export function isBare(landing: Landing): boolean | undefined {
  if (landing.terminations.length > 0) return false;
  if (landing.switchRequested || (landing.splice === undefined && !landing.port)) return undefined;
  return true;
}

/** Whether the text can take every terminator off a landing: those fixed inside its device stay. */
export const canUnterminate = (landing: Landing): boolean =>
  landing.terminations.every(({ means }) => means !== 'fixed') && landing.terminations.length > 0;

export const hasSwitch = (landing: Landing): boolean => landing.port?.terminator?.mode === 'switch';

/** By the device's own switch where it has one, else by a resistor that fits the cable. */
export function terminateEdit(bus: Bus, landing: Landing): NetworkEdit {
  const at = { kind: 'terminate', bus: bus.index, landing: landing.index } as const;
  return hasSwitch(landing)
    ? { ...at, means: 'switch' }
    : { ...at, means: 'resistor', resistance: dueResistance(bus, landing) };
}

/** What {@link terminateEdit} does, as an instruction. */
export const terminateTitle = (bus: Bus, landing: Landing): string =>
  hasSwitch(landing)
    ? `Switch on the terminator of ${landing.name}`
    : `Terminate ${landing.name} with a ${formatOhms(dueResistance(bus, landing))} resistor`;

/** Replaces what is written at a landing by a resistor that fits the cable. */
export const resistorFix = (bus: Bus, landing: Landing): Fix => {
  const resistance = dueResistance(bus, landing);
  return {
    title: `Terminate ${landing.name} with a ${formatOhms(resistance)} resistor instead`,
    safe: false,
    edits: [{ kind: 'terminate', means: 'resistor', bus: bus.index, landing: landing.index, resistance }],
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
  const value = `${formatOhms(resistance)}${capacitance === undefined ? '' : ` and ${Number((capacitance * 1e9).toPrecision(3))} nF`}`;
  if (means === 'switch') return `its switch (${value})`;
  return means === 'fixed' ? `one fixed inside (${value})` : `a resistor (${value})`;
}
