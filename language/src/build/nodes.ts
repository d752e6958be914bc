/** The nodes of a store: declared by themselves, or where they are first landed. */
import type { Device, Place, Sourced, StoreNode } from '@fieldpair/shared';
import type { Name, StoreDeclaration } from '../generated/reader.js';
import type { Notes, Spot } from './notes.js';
import { repeatedFixes } from './repeated.js';
import type { CatalogueScope } from './scope.js';
import { didYouMean, nameText, nearest, renameFixes } from './suggest.js';
import { reportDuplicate } from './unique.js';

/** Has all properties from the start, so that every node is laid out alike and the rules read them fast. */
class NodeDraft implements StoreNode {
  label?: string;
  documentation?: string;
  device?: Device;
  devicePlace?: Place;
  revision?: Sourced<string>;

  constructor(
    readonly name: string,
    readonly place: Place,
  ) {}
}

export interface NodePart {
  readonly declaration: StoreDeclaration;
  readonly notes: Notes;
  readonly scope: CatalogueScope;
}

/** All nodes by name, in the order of the text. */
export function buildNodes(parts: readonly NodePart[]): Map<string, StoreNode> {
  const nodes = new Map<string, NodeDraft>();
  const revisions: { readonly node: Name | undefined; readonly revision: Name | undefined; readonly notes: Notes }[] =
    [];
  for (const { declaration, notes, scope } of parts) {
    const declare = (name: Name | undefined, label: string | undefined, device: Name | undefined, at: Spot) => {
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
    };
    for (const member of declaration.members) {
      if (member.type !== 'NodeDeclaration') continue;
      declare(member.name, member.label?.text, member.device, member);
      if (member.revision) revisions.push({ node: member.name, revision: member.revision, notes });
    }
    for (const member of declaration.members) {
      if (member.type !== 'BusDeclaration') continue;
      for (const statement of member.statements) {
        if (statement.type !== 'From' && statement.type !== 'Run') continue;
        const { landing } = statement;
        if (!landing) continue;
        if (landing.device && landing.node) declare(landing.node, landing.label?.text, landing.device, statement);
        for (const property of landing.properties) {
          if (property.type === 'LandingRevision')
            revisions.push({ node: landing.node, revision: property.revision, notes });
        }
      }
    }
  }
  // A revision may be said before its node is declared.
  for (const { node, revision, notes } of revisions) setRevision(nodes.get(node?.text ?? ''), revision, notes);
  return nodes;
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
