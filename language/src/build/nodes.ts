/** The nodes of a store: declared by themselves, or where they are first landed. */
import type { Place, Sourced } from '@fieldpair/shared';
import type { BusDeclaration, Landing, Name, StoreDeclaration } from '../generated/reader.js';
import { doubleFixes } from './double-node.js';
import { NodeDraft } from './node-draft.js';
import type { Notes, Spot } from './notes.js';
import { repeatedFixes } from './repeated.js';
import type { CatalogueScope } from './scope.js';
import { didYouMean, nameText, nearest, renameFixes } from './suggest.js';
import { reportDuplicate } from './unique.js';

export interface NodePart {
  readonly declaration: StoreDeclaration;
  readonly notes: Notes;
  readonly scope: CatalogueScope;
}

interface WrittenRevision {
  readonly node: Name | undefined;
  readonly revision: Name | undefined;
  readonly notes: Notes;
}

/** What is known of the nodes of a store while its texts are read. */
class Nodes {
  /** All nodes by name, in the order of the text. */
  readonly nodes = new Map<string, NodeDraft>();
  readonly doubles = new Map<Name, NodeDraft>();
  /** Those that a `node` line declares. */
  readonly stated = new Set<string>();
  readonly buses = new Set<string>();
  readonly revisions: WrittenRevision[] = [];

  constructor(readonly parts: readonly NodePart[]) {}

  readonly isTaken = (name: string): boolean =>
    this.nodes.has(name) || this.parts.some(({ declaration }) => landsSplice(declaration, name));
}

/** Where a line of a bus declares a node. */
interface Line {
  readonly bus: BusDeclaration;
  readonly landing: Landing;
  /** The name of the bus was taken before: nothing of it counts, so that this has the one finding. */
  readonly isCopied: boolean;
}

export function buildNodes(parts: readonly NodePart[]): Pick<Nodes, 'nodes' | 'doubles'> {
  const found = new Nodes(parts);
  for (const part of parts) {
    const { members } = part.declaration;
    for (const member of members) {
      if (member.type !== 'NodeDeclaration') continue;
      if (member.name?.text !== undefined) found.stated.add(member.name.text);
      declare(member.name, member.label?.text, member.device, member, found, part);
      if (member.revision) found.revisions.push({ node: member.name, revision: member.revision, notes: part.notes });
    }
    for (const member of members) if (member.type === 'BusDeclaration') declareOn(member, found, part);
  }
  // A revision may be said before its node is declared.
  for (const { node, revision, notes } of found.revisions) {
    const double = node && found.doubles.get(node);
    setRevision(double ?? found.nodes.get(node?.text ?? ''), revision, notes);
  }
  return found;
}

function declareOn(bus: BusDeclaration, found: Nodes, part: NodePart): void {
  const name = bus.name?.text ?? '';
  const isCopied = found.buses.has(name);
  found.buses.add(name);
  for (const statement of bus.statements) {
    if (statement.type !== 'Run' && statement.type !== 'From') continue;
    const { landing } = statement;
    if (!landing) continue;
    const { node, label, device, properties } = landing;
    if (device && node) declare(node, label?.text, device, statement, found, part, { bus, landing, isCopied });
    for (const property of properties) {
      if (property.type === 'LandingRevision')
        found.revisions.push({ node, revision: property.revision, notes: part.notes });
    }
  }
}

function declare(
  name: Name | undefined,
  label: string | undefined,
  device: Name | undefined,
  at: Spot,
  found: Nodes,
  { notes, scope }: NodePart,
  line?: Line,
): void {
  if (name?.text === undefined) return;
  const first = found.nodes.get(name.text);
  const double = first && line && !found.stated.has(name.text) ? line : undefined;
  if (first) {
    if (line?.isCopied) return;
    reportDuplicate('node', name, first.place, notes, () =>
      double ? doubleFixes(double.bus, double.landing, found.isTaken, notes) : [],
    );
    if (!double) return;
  } else notes.declare('node', name);
  const draft = new NodeDraft(name.text, notes.between(name.start, name.end));
  if (label !== undefined) draft.label = label;
  const documentation = notes.documentationAbove(at);
  if (documentation !== undefined) draft.documentation = documentation;
  if (device) {
    draft.devicePlace = notes.between(device.start, device.end);
    const known = scope.device(device, notes);
    if (known) draft.device = known;
  }
  if (double) found.doubles.set(name, draft);
  else found.nodes.set(name.text, draft);
}

const landsSplice = ({ members }: StoreDeclaration, name: string): boolean =>
  members.some(
    (member) =>
      member.type === 'BusDeclaration' &&
      member.statements.some(
        (one) => (one.type === 'From' || one.type === 'Run') && one.landing?.splice?.text === name,
      ),
  );

function setRevision(node: NodeDraft | undefined, written: Name | undefined, notes: Notes): void {
  if (!node || written?.text === undefined) return;
  const place: Place = notes.place(written);
  node.revisionPlace ??= place;
  const { device } = node;
  if (device && !device.revisions.includes(written.text)) {
    const likely = nearest(written.text, device.revisions);
    const known = device.revisions.join(', ') || 'none';
    notes.report(
      'revision-unknown',
      `${node.name} cannot be revision ${written.text} of ${device.name}, which has ${known}${didYouMean(likely)}`,
      place,
      { at: node.name, fixes: () => renameFixes(place, likely.length ? likely : device.revisions.slice(0, 4)) },
    );
    return;
  }
  const declared = device?.revisionPlaces[device.revisions.indexOf(written.text)];
  if (declared) notes.use('revision', written, declared);
  const revision: Sourced<string> = { value: written.text, place };
  const first = node.revision;
  if (!first) node.revision = revision;
  else if (first.value !== written.text) {
    notes.report(
      'statement-repeated',
      `${node.name} is revision ${written.text} here and ${first.value} elsewhere; keep the one on the hardware's label`,
      place,
      {
        at: node.name,
        related: [{ message: `revision ${first.value} is said here`, place: first.place }],
        fixes: () =>
          repeatedFixes(
            { text: nameText(first.value), place: first.place },
            { text: notes.textAt(written), place },
            { ...place, start: notes.source.text.lastIndexOf('revision', place.start) },
          ),
      },
    );
  }
}
