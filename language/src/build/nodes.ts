/** The nodes of a store: declared by themselves, or where they are first landed. */
import type { Place, Sourced, StoreNode } from '@fieldpair/shared';
import type { Landing, Name, StoreDeclaration } from '../generated/reader.js';
import { documentationAbove, type Notes, type Spot } from './notes.js';
import type { CatalogueScope } from './scope.js';
import { didYouMean, nearest, renameFixes } from './suggest.js';
import { UniqueNames } from './unique.js';

type Draft = { -readonly [Key in keyof StoreNode]: StoreNode[Key] };

export interface NodePart {
  readonly declaration: StoreDeclaration;
  readonly notes: Notes;
  readonly scope: CatalogueScope;
}

/** All nodes by name, in the order of the text. */
export function buildNodes(parts: readonly NodePart[]): Map<string, StoreNode> {
  const nodes = new Map<string, Draft>();
  const [first] = parts;
  if (!first) return nodes;
  const unique = new UniqueNames('node', first.notes);
  for (const { declaration, notes, scope } of parts) {
    const declare = (name: Name | undefined, label: string | undefined, device: Name | undefined, at: Spot) => {
      if (name?.text === undefined || !unique.add(name, notes)) return;
      notes.declare('node', name);
      const draft: Draft = { name: name.text, place: notes.place(name) };
      if (label !== undefined) draft.label = label;
      const documentation = documentationAbove(notes.source.text, at.start);
      if (documentation !== undefined) draft.documentation = documentation;
      if (device) {
        draft.devicePlace = notes.place(device);
        const known = scope.device(device, notes);
        if (known) draft.device = known;
      }
      nodes.set(name.text, draft);
    };
    for (const member of declaration.members) {
      if (member.type === 'NodeDeclaration') declare(member.name, member.label?.text, member.device, member);
    }
    for (const { landing, statement } of landingsOf(declaration)) {
      if (landing.device && landing.node) declare(landing.node, landing.label?.text, landing.device, statement);
    }
  }
  for (const { declaration, notes } of parts) {
    for (const member of declaration.members) {
      if (member.type === 'NodeDeclaration') setRevision(nodes.get(member.name?.text ?? ''), member.revision, notes);
    }
    for (const { landing } of landingsOf(declaration)) {
      for (const property of landing.properties) {
        if (property.type === 'LandingRevision')
          setRevision(nodes.get(landing.node?.text ?? ''), property.revision, notes);
      }
    }
  }
  return nodes;
}

function* landingsOf(declaration: StoreDeclaration): Generator<{ landing: Landing; statement: Spot }> {
  for (const member of declaration.members) {
    if (member.type !== 'BusDeclaration') continue;
    for (const statement of member.statements) {
      if ((statement.type === 'From' || statement.type === 'Run') && statement.landing) {
        yield { landing: statement.landing, statement };
      }
    }
  }
}

function setRevision(node: Draft | undefined, written: Name | undefined, notes: Notes): void {
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
  if (device) notes.use('revision', written, device.place);
  const revision: Sourced<string> = { value: written.text, place };
  if (!node.revision) node.revision = revision;
  else if (node.revision.value !== written.text) {
    notes.report(
      'statement-repeated',
      `${node.name} is revision ${written.text} here and ${node.revision.value} elsewhere; keep the one on the hardware's label`,
      place,
      {
        at: node.name,
        related: [{ message: `revision ${node.revision.value} is said here`, place: node.revision.place }],
      },
    );
  }
}
