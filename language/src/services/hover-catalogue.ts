/** What hovers say about entries of the catalogue. */
import {
  type Cable,
  type Device,
  formatAmperes,
  formatOhms,
  formatRate,
  formatResistor,
  formatSeconds,
  formatSignificant,
  loadText,
  type Port,
  sourceText,
} from '@fieldpair/shared';
import { literal, literalLines } from './words.js';

interface Documented {
  readonly name: string;
  readonly label?: string;
  readonly documentation?: string;
}

/** A heading with the label and the documentation above the declaration. */
export function documented(what: string, { name, label, documentation }: Documented): string[] {
  const lines = [`**${what} ${literal(name)}**${label === undefined ? '' : `: ${literal(label)}`}`];
  if (documentation !== undefined) lines.push(literalLines(documentation));
  return lines;
}

export function cableFacts(cable: Cable): string[] {
  const facts: string[] = [];
  if (cable.gauge !== undefined) facts.push(`${cable.gauge < 1 ? '0'.repeat(1 - cable.gauge) : cable.gauge} AWG`);
  if (cable.area !== undefined) facts.push(`${formatSignificant(cable.area * 1e6)} mm2`);
  if (cable.stranding) facts.push(cable.stranding);
  if (cable.insulation) facts.push(`${cable.insulation} insulation`);
  if (cable.pairs !== undefined) facts.push(cable.pairs === 0 ? 'untwisted' : `twisted pairs: ${cable.pairs}`);
  if (cable.shield) facts.push(cable.shield === 'none' ? 'no shield' : `${cable.shield} shield`);
  if (cable.class) facts.push(`class ${cable.class}`);
  if (cable.impedance !== undefined) facts.push(`impedance ${formatOhms(cable.impedance)}`);
  if (cable.capacitance !== undefined) facts.push(`${formatSignificant(cable.capacitance * 1e12)} pF/m`);
  if (cable.velocity !== undefined) facts.push(`velocity ${formatSignificant(cable.velocity * 100)} %`);
  if (cable.resistance !== undefined)
    facts.push(`${formatSignificant(cable.resistance * 1000)} ohm/km of one conductor at 20 degC`);
  if (cable.carries !== undefined) facts.push(`carries ${formatAmperes(cable.carries)}`);
  return withFacts(documented('cable', cable), facts);
}

export function deviceFacts(device: Device): string[] {
  const lines = documented('device', device);
  const facts = [`role ${device.role}`];
  if (device.revisions.length) facts.push(`revisions ${literal(device.revisions.join(', '))}`);
  const ports = device.ports.map((port) => `- ${literal(port.name)}: ${portLine(port)}`);
  lines.push(facts.join(', '));
  if (ports.length) lines.push(ports.join('\n'));
  for (const { name, text } of device.indicators) lines.push(`Indicator ${literal(name)}: ${literal(text)}`);
  for (const mark of device.marks) lines.push(`Mark: ${literal(mark)}`);
  return lines;
}

export function portFacts(port: Port): string[] {
  return withFacts(documented('port', port), [portLine(port)]);
}

function portLine(port: Port): string {
  const facts: string[] = [port.kind ?? 'unknown kind'];
  if (port.speaks.length) facts.push(`speaks ${port.speaks.join(', ')}`);
  const { plus, minus, shield, common } = port.terminals;
  const terminals = [
    plus && `+ ${plus}`,
    minus && `- ${minus}`,
    shield && `shield ${shield}`,
    common && `common ${common}`,
  ];
  const marked = terminals.filter((one) => one !== undefined);
  if (marked.length) facts.push(`terminals ${literal(marked.join(', '))}`);
  if (port.unitLoad !== undefined) facts.push(`load ${formatSignificant(port.unitLoad)}`);
  if (port.resistance !== undefined) facts.push(`resistance ${formatOhms(port.resistance)}`);
  if (port.delay !== undefined) facts.push(`delay ${formatSeconds(port.delay)}`);
  if (port.terminator) facts.push(`terminator ${formatOhms(port.terminator.resistance)} (${port.terminator.mode})`);
  if (port.bias) facts.push(`bias ${biasText(port.bias)} (${port.bias.mode})`);
  if (port.needsBias) facts.push('needs a biased line');
  if (port.address) facts.push(`address by ${port.address.means}, ${port.address.low} to ${port.address.high}`);
  if (port.rates.length) facts.push(`rates ${port.rates.map((rate) => formatRate(rate)).join(', ')}`);
  if (port.edge !== undefined) facts.push(`edge ${formatSeconds(port.edge)}`);
  if (port.reserved) {
    const { revisions, reason } = port.reserved;
    facts.push(
      `reserved${revisions.length ? ` in ${literal(revisions.join(', '))}` : ''}${reason === undefined ? '' : ` (${literal(reason)})`}`,
    );
  }
  facts.push(...twoWireFacts(port));
  if (port.twinOf) facts.push(`twin of ${literal(port.twinOf.port)}`);
  return facts.join('; ');
}

const biasText = ({ up, down }: NonNullable<Port['bias']>): string =>
  up === down ? formatOhms(up) : `${formatOhms(up)} up and ${formatOhms(down)} down`;

/** What the port is on a supply or a contact loop. */
function twoWireFacts({ supplies, draws, contact, input }: Port): string[] {
  const facts: string[] = [];
  if (supplies) facts.push(`supplies ${sourceText(supplies)}`);
  if (draws) facts.push(`draws ${loadText(draws)}`);
  if (contact) facts.push(`normally ${contact}`);
  if (input?.resistor) facts.push(`expects ${formatResistor(input.resistor.resistance)} at the end of its loop`);
  if (input?.mostContacts) facts.push(`at most ${input.mostContacts.count} contacts`);
  if (input?.mostCable) facts.push(`at most ${formatOhms(input.mostCable.resistance)} of cable`);
  for (const { meaning, above, below } of input?.windows ?? []) {
    const low = above === undefined ? '' : ` above ${formatResistor(above)}`;
    facts.push(`reads ${meaning}${low}${below === undefined ? '' : ` below ${formatResistor(below)}`}`);
  }
  return facts;
}

const withFacts = (lines: string[], facts: readonly string[]): string[] =>
  facts.length ? [...lines, facts.join('; ')] : lines;
