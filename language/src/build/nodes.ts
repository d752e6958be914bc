/** The nodes of a store: declared by themselves, or where they are first landed. */
import type { Place, Sourced } from '@fieldpair/shared';
import type { Landing, Name, StoreDeclaration } from '../generated/reader.js';
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

/** All nodes by name, in the order of the text. */
export function buildNodes(parts: readonly NodePart[]): Map<string, NodeDraft> {
  const nodes = new Map<string, NodeDraft>();
  const revisions: WrittenRevision[] = [];
  for (const part of parts) {
    const { members } = part.declaration;
    for (const member of members) {
      if (member.type !== 'NodeDeclaration') continue;
      declare(member.name, member.label?.text, member.device, member, nodes, part);
      if (member.revision) revisions.push({ node: member.name, revision: member.revision, notes: part.notes });
    }
    for (const member of members) {
      if (member.type !== 'BusDeclaration') continue;
      for (const statement of member.statements) {
        if (statement.type !== 'Run' && statement.type !== 'From') continue;
        const { landing } = statement;
        if (landing) declareAt(landing, statement, nodes, revisions, part);
      }
    }
  }
  // A revision may be said before its node is declared.
  for (const { node, revision, notes } of revisions) setRevision(nodes.get(node?.text ?? ''), revision, notes);
  return nodes;
}

/** What a landing says of its node. */
function declareAt(
  { node, label, device, properties }: Landing,
  statement: Spot,
  nodes: Map<string, NodeDraft>,
  revisions: WrittenRevision[],
  part: NodePart,
): void {
  if (device && node) declare(node, label?.text, device, statement, nodes, part);
  for (const property of properties) {
    if (property.type === 'LandingRevision') revisions.push({ node, revision: property.revision, notes: part.notes });
  }
}

function declare(
  name: Name | undefined,
  label: string | undefined,
  device: Name | undefined,
  at: Spot,
  nodes: Map<string, NodeDraft>,
  { notes, scope }: NodePart,
): void {
  if (name?.text === undefined) return;
  const first = nodes.get(name.text);
  if (first) {
    reportDuplicate('node', name, first.place, notes);
    return;
  }
  notes.declare('node', name);
  const draft = new NodeDraft(name.text, notes.between(name.start, name.end));
  if (label !== undefined) draft.label = label;
  const documentation = notes.documentationAbove(at);
  if (documentation !== undefined) draft.documentation = documentation;
  if (device) {
    draft.devicePlace = notes.between(device.start, device.end);
    const known = scope.device(device, notes);
    if (known) draft.device = known;
  }
  nodes.set(name.text, draft);
}

function setRevision(node: NodeDraft | undefined, written: Name | undefined, notes: Notes): void {
  if (!node || written?.text === undefined) return;
  const place: Place = notes.place(written);
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
