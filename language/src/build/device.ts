import type { BitsPerSecond, Device, DeviceRole, Port } from '@fieldpair/shared';
import type { DeviceDeclaration, Name, PortDeclaration, PortProperty } from '../generated/reader.js';
import type { Notes } from './notes.js';
import { type PortDraft, readPortProperty } from './port.js';
import { repeatedFixes, type Said } from './repeated.js';
import { didYouMean, nearest, renameFixes } from './suggest.js';
import { UniqueNames } from './unique.js';
import { kindOf, wordOf } from './words.js';

/** A device of the catalogue with its ports. */
export function buildDevice(declaration: DeviceDeclaration, notes: Notes): Device | undefined {
  const name = declaration.name?.text;
  if (name === undefined || !declaration.name) return undefined;
  let role: DeviceRole = 'node';
  const revisions: Name[] = [];
  const portDeclarations: PortDeclaration[] = [];
  const indicators: { name: string; text: string }[] = [];
  const marks: string[] = [];
  for (const member of declaration.members) {
    switch (member.type) {
      case 'Role':
        role = wordOf(member.role, ['head', 'node', 'repeater'], 'role of a device', notes) ?? role;
        break;
      case 'Revisions':
        revisions.push(...member.names);
        break;
      case 'PortDeclaration':
        portDeclarations.push(member);
        break;
      case 'Indicator':
        if (member.name?.text !== undefined) indicators.push({ name: member.name.text, text: member.text?.text ?? '' });
        notes.declare('indicator', member.name);
        break;
      case 'Mark':
        if (member.text?.text !== undefined) marks.push(member.text.text);
        break;
    }
  }
  const uniqueRevisions = new UniqueNames(`revision of device ${name}`, notes);
  const ownRevisions = revisions.filter((revision) => {
    notes.declare('revision', revision);
    return uniqueRevisions.add(revision);
  });
  const revisionOf = (used: Name): string | undefined => knownRevision(used, revisions, name, notes);
  const unique = new UniqueNames(`port of device ${name}`, notes);
  const ports: Port[] = [];
  for (const port of portDeclarations) {
    notes.declare('port', port.name);
    const built = unique.add(port.name) && buildPort(port, revisionOf, notes);
    if (built) ports.push(built);
  }
  checkTwins(portDeclarations, ports, name, notes);
  const documentation = notes.documentationAbove(declaration);
  return {
    name,
    ...(declaration.label?.text === undefined ? {} : { label: declaration.label.text }),
    ...(documentation === undefined ? {} : { documentation }),
    place: notes.place(declaration.name),
    role,
    revisions: ownRevisions.map(({ text }) => text ?? ''),
    revisionPlaces: ownRevisions.map((revision) => notes.place(revision)),
    ports,
    indicators,
    marks,
  };
}

function knownRevision(used: Name, revisions: readonly Name[], device: string, notes: Notes): string | undefined {
  const declared = revisions.find(({ text }) => text === used.text);
  const place = notes.place(used);
  if (declared) {
    notes.use('revision', used, notes.place(declared));
    return declared.text;
  }
  const names = revisions.flatMap(({ text }) => text ?? []);
  const likely = nearest(used.text ?? '', names);
  notes.report(
    'revision-unknown',
    `device ${device} has no revision ${used.text ?? ''}; it has ${names.join(', ') || 'none'}${didYouMean(likely)}`,
    place,
    { at: device, fixes: () => renameFixes(place, likely) },
  );
  return undefined;
}

function buildPort(
  declaration: PortDeclaration,
  revisionOf: (used: Name) => string | undefined,
  notes: Notes,
): Port | undefined {
  const name = declaration.name?.text;
  if (name === undefined || !declaration.name) return undefined;
  const kind = kindOf(declaration.kind, notes);
  const draft: PortDraft = {
    name,
    place: notes.place(declaration.name),
    speaks: [],
    terminals: {},
    needsBias: false,
    rates: [] as BitsPerSecond[],
  };
  if (kind) draft.kind = kind;
  if (declaration.label?.text !== undefined) draft.label = declaration.label.text;
  const documentation = notes.documentationAbove(declaration);
  if (documentation !== undefined) draft.documentation = documentation;
  const seen = new Map<string, Said>();
  for (const property of declaration.properties) {
    const key = statementKey(property);
    const said = { text: notes.textAt(property), place: notes.place(property) };
    const first = key === undefined ? undefined : seen.get(key);
    if (first) {
      const message = `port ${name} says this twice; remove one of the two: ${said.text}`;
      notes.report('statement-repeated', message, said.place, { at: name, fixes: () => repeatedFixes(first, said) });
      continue;
    }
    if (key !== undefined) seen.set(key, said);
    readPortProperty(property, draft, revisionOf, notes);
  }
  return draft;
}

/** What a property may be said of just once; undefined where it may be said again. */
function statementKey(property: PortProperty): string | undefined {
  switch (property.type) {
    case 'PortBias':
      return `PortBias ${property.needed}`; // What the port needs, and what it provides.
    case 'AtMost':
      return `AtMost ${property.contacts}`;
    case 'Reads':
      return undefined;
    default:
      return property.type;
  }
}

function checkTwins(
  declarations: readonly PortDeclaration[],
  ports: readonly Port[],
  device: string,
  notes: Notes,
): void {
  for (const { name, properties } of declarations) {
    for (const property of properties) {
      if (property.type !== 'Twin' || !property.port) continue;
      const original = ports.find((port) => port.name === property.port?.text && port.name !== name?.text);
      if (original) notes.use('port', property.port, original.place);
      else
        unknownPort(
          property.port,
          device,
          ports.filter((port) => port.name !== name?.text),
          notes,
        );
    }
  }
}

/** Reports a port that a device does not have. */
export function unknownPort(used: Name, device: string, ports: readonly Port[], notes: Notes, bus?: string): void {
  const place = notes.place(used);
  const names = ports.map((port) => port.name);
  const likely = nearest(used.text ?? '', names);
  notes.report(
    'unknown-name',
    `device ${device} has no port ${used.text ?? ''}; it has ${names.join(', ') || 'none'}${didYouMean(likely)}`,
    place,
    {
      at: used.text ?? '',
      ...(bus === undefined ? {} : { bus }),
      fixes: () => renameFixes(place, likely.length ? likely : names.slice(0, 4)),
    },
  );
}
