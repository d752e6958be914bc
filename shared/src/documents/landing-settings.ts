/** What has to be set or done at a landing beside its screws: terminator, bias, shield, address. */
import { type Bus, type Landing, type LandingTermination, rs485Kinds } from '../network.js';
import { formatAmperes, formatFarads, formatNumber, formatOhms, formatResistor } from '../quantity.js';

/** `Terminator: ON`, `Bias: OFF`, `Shield: join both drains under SH`, in the order in which they are done. */
export function settingLines(bus: Bus, landing: Landing): string[] {
  const shield = shieldText(bus, landing);
  const bias = biasText(bus, landing);
  const terminator = bus.kind === 'contact-loop' ? undefined : terminatorText(bus, landing);
  return [
    ...(terminator === undefined ? [] : [`Terminator: ${terminator}`]),
    ...contactLines(landing),
    ...endOfLineLines(bus, landing),
    ...fuseLines(bus, landing),
    ...(bias === undefined ? [] : [`Bias: ${bias}`]),
    ...(shield === undefined ? [] : [`Shield: ${shield}`]),
    ...(landing.address === undefined ? [] : [`Address: ${landing.address.value}`]),
    ...(landing.crossed === undefined ? [] : ['Pair crossed here, as the plan records it']),
  ];
}

/** `120 ohm`, `120 ohm and 1 nF in series`. */
export const terminationValue = ({ resistance, capacitance }: Omit<LandingTermination, 'means'>): string =>
  capacitance === undefined
    ? formatOhms(resistance)
    : `${formatOhms(resistance)} and ${formatFarads(capacitance)} in series`;

/** What terminates a landing, and that nothing does where something could; undefined where the kind knows of none. */
export function terminatorText(
  { kind }: Bus,
  { terminations, port, switchedOff, splice }: Landing,
): string | undefined {
  const on = terminations.map((one) => {
    const value = terminationValue(one);
    if (one.means === 'switch') return `ON (switch, ${value})`;
    return one.means === 'fixed'
      ? `built in (${value}), cannot be switched`
      : `land a resistor, ${value}, across the pair`;
  });
  const hasSwitch = port?.terminator?.mode === 'switch';
  if (hasSwitch && !terminations.some(({ means }) => means === 'switch'))
    on.push(0 < on.length ? 'its own switch OFF' : 'OFF');
  if (0 < on.length) return on.join('; ');
  if (switchedOff !== undefined) return 'OFF';
  return kind !== undefined && rs485Kinds.has(kind) && splice === undefined ? 'none here' : undefined;
}

function biasText({ biases }: Bus, { index, port }: Landing): string | undefined {
  const here = biases.filter(({ landing }) => landing === index);
  const lines = here.map(({ builtIn, up, down, supply }) => {
    if (builtIn) return port?.bias?.mode === 'fixed' ? 'built in, cannot be switched' : 'ON (switch)';
    return `land ${formatOhms(up)} from plus to ${formatNumber(supply, 1)} V and ${formatOhms(down)} from minus to common`;
  });
  if (port?.bias?.mode === 'switch' && !here.some(({ builtIn }) => builtIn))
    lines.push(0 < lines.length ? 'its own switch OFF' : 'OFF');
  return lines.length === 0 ? undefined : lines.join('; ');
}

/** What happens to the shields that meet at a landing; undefined where no cable with a shield arrives. */
export function shieldText(bus: Bus, { index, runs, port, shield }: Landing): string | undefined {
  const shielded = runs.filter((run) => (bus.runs[run]?.cable?.shield ?? 'none') !== 'none').length;
  if (shielded === 0) return undefined;
  const drains = shielded === 1 ? 'the drain' : shielded === 2 ? 'both drains' : `all ${shielded} drains`;
  const earth = earthText(bus, index);
  if (shield === 'open') return `cut back and tape ${drains}, join nothing${earth}`;
  const terminal = shield === 'through' ? port?.terminals.shield : undefined;
  if (terminal !== undefined) return `${shielded === 1 ? 'land' : 'join'} ${drains} under ${terminal}${earth}`;
  return `${shielded === 1 ? 'tape' : 'join and tape'} ${drains}, keep off the device${earth}`;
}

/** `; earth it here and nowhere else`; nothing where it is not earthed. */
function earthText({ earths, kind }: Bus, index: number): string {
  const here = earths.find(({ landing }) => landing === index);
  if (!here) return '';
  const through = here.through ? ` through ${partsText(here.through)}` : '';
  // Free topology may earth its shield at each device.
  const alone = earths.length === 1 && kind !== 'free-topology';
  return `; earth it here${through}${alone ? ' and nowhere else' : ''}`;
}

/** `1 Mohm and 10 nF side by side`. */
const partsText = ({ resistance, capacitance }: Omit<LandingTermination, 'means'>) =>
  capacitance === undefined
    ? formatOhms(resistance)
    : `${formatOhms(resistance)} and ${formatFarads(capacitance)} side by side`;

/** How a contact lies in its loop. */
function contactLines({ wiring, port }: Landing): string[] {
  if (!port?.contact) return [];
  const rest = `at rest ${port.contact}`;
  if (!wiring) return [`Contact, ${rest}: the plan does not say how it lies in the loop; ask`];
  if (wiring.kind === 'breaks') {
    const bridge = wiring.bridge === undefined ? '' : `; bridge it with ${formatResistor(wiring.bridge)}`;
    return [`Contact, ${rest}: cut the ${wiring.conductor} wire and land its two ends on the contact${bridge}`];
  }
  const through = wiring.through === undefined ? '' : ` through ${formatResistor(wiring.through)}`;
  return [`Contact, ${rest}: land it across the two wires${through}`];
}

/**
 * The resistor at the end of a loop. Where the contact there breaks a conductor the resistor belongs behind it: before
 * it, the input would see the resistor whatever the contact does.
 */
function endOfLineLines(bus: Bus, { index, terminations, wiring, port }: Landing): string[] {
  if (bus.kind !== 'contact-loop') return [];
  return terminations.map(({ resistance, means }) => {
    const value = formatResistor(resistance);
    if (means !== 'resistor') return `End of line: built in (${value})`;
    if (wiring?.kind !== 'breaks') return `End of line: land a resistor, ${value}, across the pair`;
    const arrives = bus.runs.some(({ to, spare }) => to === index && !spare);
    const free = (arrives ? port?.terminals.minus : port?.terminals.plus) ?? 'the free side of the contact';
    const other = wiring.conductor === 'plus' ? 'minus' : 'plus';
    return `End of line: land a resistor, ${value}, from ${free}, behind the contact, to the ${other} wire; not across the pair that arrives`;
  });
}

function fuseLines(bus: Bus, { index, runs }: Landing): string[] {
  return runs.flatMap((one) => {
    const run = bus.runs[one];
    if (run?.from !== index || !run.fuse) return [];
    const to = run.to === undefined ? '' : ` to ${bus.landings[run.to]?.name ?? ''}`;
    return [`Fuse: ${formatAmperes(run.fuse.value)} in plus of the run${to}`];
  });
}
