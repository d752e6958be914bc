/** Values that completion offers because they follow from what is written: files, colours, resistors, formats. */
import { type Bus, type BusKind, dueTermination, formatOhms, formatsOf, type Landing } from '@fieldpair/shared';
import { CompletionItemKind } from 'vscode-languageserver';
import { nameText } from '../build/suggest.js';
import { quote } from '../read/text-value.js';
import type { BusInStore, Desk } from './desk.js';

export interface Offer {
  /** What is written; names are quoted where they need it. */
  readonly text: string;
  readonly kind: CompletionItemKind;
  readonly detail?: string | undefined;
}

export const plain = (words: readonly string[], kind: CompletionItemKind = CompletionItemKind.Value): Offer[] =>
  words.map((text) => ({ text, kind }));

/** Files of the workspace that this one does not import yet, those with a catalogue first. */
export function pathOffers(desk: Desk, file: string, quoted: boolean): Offer[] {
  const { project } = desk;
  const imported = new Set(project.importsOf(file).flatMap(({ target }) => target ?? []));
  const catalogues = new Set(project.catalogueFiles());
  const others = project.files().filter((other) => other !== file && !imported.has(other));
  const rank = (other: string) => (catalogues.has(other) ? 0 : 1);
  return others
    .map((other) => ({ other, path: pathBetween(file, other) }))
    .sort((left, right) => rank(left.other) - rank(right.other) || (left.path < right.path ? -1 : 1))
    .slice(0, mostPaths)
    .map(({ path }) => ({ text: quoted ? path : quote(path), kind: CompletionItemKind.File }));
}

/** A longer list helps nobody, and a fleet has thousands of files. */
const mostPaths = 100;

/** The path that leads from one file to another, both named by URIs or by paths with forward slashes. */
function pathBetween(from: string, to: string): string {
  const [own, other] = [from.split('/').slice(0, -1), to.split('/')];
  let common = 0;
  while (common < own.length && own[common] === other[common]) common++;
  const path = [...own.slice(common).map(() => '..'), ...other.slice(common)].join('/');
  try {
    return to.includes('://') ? decodeURIComponent(path) : path;
  } catch {
    return path;
  }
}

/** Whatever a bus mentions: each node once, and its splices. */
export const landedOffers = (inside: BusInStore | undefined): Offer[] =>
  plain(
    [...new Set((inside?.bus.landings ?? []).map((one) => nameText(one.splice ?? one.node?.name ?? one.name)))],
    CompletionItemKind.Variable,
  );

/** Plain RS-485 may have any. */
const formats: Readonly<Partial<Record<BusKind, readonly string[]>>> = {
  ...formatsOf,
  rs485: ['8N1', '8E1', '8O1', '8N2'],
};
export const formatOffers = (kind: BusKind): Offer[] => plain(formats[kind] ?? []);

/** The last landing that is written in front of an offset. */
export function landingBefore({ landings }: Bus, offset: number): Landing | undefined {
  let nearest: Landing | undefined;
  let start = -1;
  for (const landing of landings) {
    for (const { place } of landing.visits) {
      if (start < place.start && place.start <= offset) [nearest, start] = [landing, place.start];
    }
  }
  return nearest;
}

/** The device's own terminator where it has one to switch on, and the resistor that is due. */
export function terminateOffers(inside: BusInStore | undefined, offset: number): Offer[] {
  const landing = inside && landingBefore(inside.bus, offset);
  if (!landing) return plain(['switch', 'resistor'], CompletionItemKind.Keyword);
  const own = landing.port?.terminator?.mode === 'switch' ? ['switch'] : [];
  return plain([...own, `resistor ${formatOhms(dueTermination(inside.bus, landing).resistance)}`]);
}

/** What happens to the shield at a landing, and where that of the bus is earthed. */
export function shieldOffers(ofBus: boolean): Offer[] {
  const atLanding = plain(['through', 'open', 'floating'], CompletionItemKind.EnumMember);
  const earth = plain(['earthed at'], CompletionItemKind.Keyword);
  return ofBus ? [...earth, ...atLanding] : [...atLanding, ...earth];
}

export function resistorOffers(inside: BusInStore | undefined, offset: number): Offer[] {
  const landing = inside && landingBefore(inside.bus, offset);
  return landing ? plain([formatOhms(dueTermination(inside.bus, landing).resistance)]) : [];
}

/** The device's own bias where it has one to switch on, and resistors inside the 450 to 650 ohm of Modbus. */
export function biasOffers(inside: BusInStore | undefined, node: string): Offer[] {
  const landing = inside?.bus.landings.find((one) => nameText(one.splice ?? one.node?.name ?? '') === node);
  return plain([...(landing?.port?.bias?.mode === 'switch' ? ['switch'] : []), '510 ohm', '560 ohm']);
}

/** The wires of the cable in the order of its maker: the first two as a pair, either way round. */
export function coloursOffers(inside: BusInStore | undefined): Offer[] {
  const cable = inside?.bus.cable;
  const [plus, minus] = cable?.colours ?? [];
  if (plus === undefined || minus === undefined) return [];
  return plain([`+ ${plus} - ${minus}`, `+ ${minus} - ${plus}`]);
}

export const colourOffers = (inside: BusInStore | undefined): Offer[] =>
  plain(inside?.bus.cable?.colours ?? [], CompletionItemKind.Color);
