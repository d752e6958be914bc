/** A store: its nodes, buses, networks and waivers, from all the texts that describe it. */
import type { Bus, HostNetwork, Place, Store, StoreNode, Waiver } from '@fieldpair/shared';
import type { NetworkDeclaration, StoreDeclaration, Waiver as WaiverTree } from '../generated/reader.js';
import { buildBus } from './bus.js';
import { unknownPort } from './device.js';
import { buildNodes } from './nodes.js';
import { reportNotOnBus } from './not-on-bus.js';
import { Notes } from './notes.js';
import type { CatalogueScope } from './scope.js';
import type { NameUse, SourceText, TextReport } from './source.js';
import { didYouMean, nearest, renameFixes, writeFixes } from './suggest.js';
import { UniqueNames } from './unique.js';

/** One `store` block and the catalogue that its file sees. The part that is not `continued` comes first. */
export interface StorePart {
  readonly source: SourceText;
  readonly declaration: StoreDeclaration;
  readonly scope: CatalogueScope;
}

export interface BuiltStore {
  readonly store: Store;
  readonly reports: readonly TextReport[];
  readonly uses: readonly NameUse[];
}

/** Builds a store from its parts; undefined when it has no name yet. `rules` are the ids that may be waived. */
export function buildStore(
  parts: readonly StorePart[],
  rules: ReadonlySet<string>,
  namesWanted = false,
): BuiltStore | undefined {
  const [main] = parts;
  const name = main?.declaration.name?.text;
  if (!main?.declaration.name || name === undefined) return undefined;
  const noted = parts.map((part) => ({ ...part, notes: new Notes(part.source, namesWanted) }));
  const [first] = noted;
  if (!first) return undefined;
  const place = first.notes.place(main.declaration.name);
  for (const { notes, declaration } of noted) if (declaration.name) notes.use('store', declaration.name, place);

  const { nodes, doubles } = buildNodes(noted);
  const buses: Bus[] = [];
  const networks: HostNetwork[] = [];
  const waivers: Waiver[] = [];
  const uniqueBuses = new UniqueNames('bus', first.notes);
  const uniqueNetworks = new UniqueNames('network', first.notes);
  for (const { declaration, scope, notes } of noted) {
    for (const member of declaration.members) {
      switch (member.type) {
        case 'BusDeclaration': {
          notes.declare('bus', member.name);
          if (!uniqueBuses.add(member.name, notes)) break;
          const built = buildBus(member, buses.length, nodes, doubles, scope, notes);
          if (!built) break;
          buses.push(built.bus);
          for (const waiver of built.waivers) readWaiver(waiver, built.bus, waivers, rules, notes);
          break;
        }
        case 'NetworkDeclaration':
          notes.declare('network', member.name);
          if (uniqueNetworks.add(member.name, notes)) networks.push(buildNetwork(member, nodes, notes));
          break;
        default:
          break;
      }
    }
  }
  for (const { declaration, notes } of noted) {
    for (const member of declaration.members) {
      if (member.type === 'Waiver') readStoreWaiver(member, buses, nodes, waivers, rules, notes);
    }
  }
  if (namesWanted) noteAreas(noted);
  const documentation = first.notes.documentationAbove(main.declaration);
  const store: Store = {
    name,
    ...(main.declaration.label?.text === undefined ? {} : { label: main.declaration.label.text }),
    ...(documentation === undefined ? {} : { documentation }),
    place,
    nodes: [...nodes.values()],
    buses,
    networks,
    waivers,
    choices: main.scope.choices(),
  };
  return {
    store,
    reports: noted.flatMap(({ notes }) => notes.reports),
    uses: noted.flatMap(({ notes }) => notes.uses),
  };
}

/** An area is a place of the store, whichever bus leads through it; where it is named first it is declared. */
function noteAreas(parts: readonly (StorePart & { readonly notes: Notes })[]): void {
  const places = new Map<string, Place>();
  for (const { declaration, notes } of parts) {
    for (const member of declaration.members) {
      for (const statement of member.type === 'BusDeclaration' ? member.statements : []) {
        const name = statement.type === 'Area' ? statement.name : undefined;
        if (!name?.text?.trim()) continue;
        const place = places.get(name.text) ?? notes.place(name);
        places.set(name.text, place);
        notes.use('area', name, place);
      }
    }
  }
}

function buildNetwork(tree: NetworkDeclaration, nodes: ReadonlyMap<string, StoreNode>, notes: Notes): HostNetwork {
  const name = tree.name?.text ?? '';
  const members = tree.members.map((member): HostNetwork['members'][number] => {
    const place = notes.place(member);
    const written = member.node;
    const node = nodes.get(written?.text ?? '');
    if (written?.text !== undefined) {
      if (node) notes.use('node', written, node.place);
      else reportUnknownNode(written.text, notes.place(written), nodes, notes);
    }
    const value = member.address?.value;
    const address =
      member.address && value !== undefined
        ? { value: member.address.negative ? -value : value, place: notes.place(member.address) }
        : undefined;
    return { place, ...(node ? { node } : {}), ...(address ? { address } : {}) };
  });
  return { name, place: notes.place(tree.name ?? tree), members };
}

function reportUnknownNode(
  name: string,
  place: ReturnType<Notes['place']>,
  nodes: ReadonlyMap<string, StoreNode>,
  notes: Notes,
): void {
  const likely = nearest(name, nodes.keys());
  notes.report('unknown-name', `no node ${name} is declared in this store${didYouMean(likely)}`, place, {
    at: name,
    fixes: () => renameFixes(place, likely),
  });
}

/** What every waiver must have; undefined, with a report, when it has not. */
function waiverBase(
  tree: WaiverTree,
  rules: ReadonlySet<string>,
  notes: Notes,
): Pick<Waiver, 'rule' | 'rulePlace' | 'reason' | 'place'> | undefined {
  const { rule } = tree;
  if (rule?.text === undefined) return undefined;
  const rulePlace = notes.place(rule);
  if (!rules.has(rule.text)) {
    const likely = nearest(rule.text, rules);
    notes.report('unknown-word', `there is no rule ${rule.text}${didYouMean(likely)}`, rulePlace, {
      fixes: () => writeFixes(rulePlace, likely),
    });
    return undefined;
  }
  const reason = tree.reason?.text?.trim();
  if (!reason) {
    notes.report(
      'waiver-unreasoned',
      `this waiver of ${rule.text} gives no reason, so it waives nothing; add because "REASON" for whoever reads the next change`,
      notes.place(tree),
    );
    return undefined;
  }
  return { rule: rule.text, rulePlace, reason, place: notes.place(tree) };
}

function readWaiver(tree: WaiverTree, bus: Bus, waivers: Waiver[], rules: ReadonlySet<string>, notes: Notes): void {
  const base = waiverBase(tree, rules, notes);
  if (!base) return;
  const at = tree.at?.node?.text;
  if (at === undefined || !tree.at?.node) {
    waivers.push({ ...base, bus: bus.index });
    return;
  }
  const port = tree.at.port?.text;
  const landing = bus.landings.find(
    (one) => (one.splice ?? one.node?.name) === at && (port === undefined || one.port?.name === port),
  );
  if (landing) {
    notes.use(landing.splice === undefined ? 'node' : 'splice', tree.at.node, landing.node?.place ?? landing.place);
    if (tree.at.port && landing.port) notes.use('port', tree.at.port, landing.port.place);
    // By its port just this landing is meant, which findings call as the text does.
    waivers.push({ ...base, bus: bus.index, at: port === undefined ? at : landing.name });
  } else {
    reportNotOnBus(tree.at, bus.name, bus.landings, 'this waives nothing', notes);
  }
}

/** In a store, `at` may name a bus, a node or a splice. */
function readStoreWaiver(
  tree: WaiverTree,
  buses: readonly Bus[],
  nodes: ReadonlyMap<string, StoreNode>,
  waivers: Waiver[],
  rules: ReadonlySet<string>,
  notes: Notes,
): void {
  const base = waiverBase(tree, rules, notes);
  if (!base) return;
  const written = tree.at?.node;
  const at = written?.text;
  if (!written || at === undefined) {
    waivers.push(base);
    return;
  }
  const bus = buses.find(({ name }) => name === at);
  const node = nodes.get(at);
  const splice = buses.flatMap(({ landings }) => landings).find((landing) => landing.splice === at);
  if (node) notes.use('node', written, node.place);
  const port = tree.at?.port;
  if (node && port?.text !== undefined) {
    const declared = node.device?.ports.find(({ name }) => name === port.text);
    if (declared) notes.use('port', port, declared.place);
    else if (node.device) unknownPort(port, node.device.name, node.device.ports, notes);
    const landing = buses.flatMap(({ landings }) => landings).find((one) => one.node === node && one.port === declared);
    waivers.push({ ...base, at: declared && landing ? landing.name : `${at}.${port.text}` });
    return;
  }
  if (node) {
    waivers.push({ ...base, at });
    return;
  }
  if (bus) notes.use('bus', written, bus.place);
  else if (splice) notes.use('splice', written, splice.place);
  else {
    reportUnknownNode(at, notes.place(written), nodes, notes);
    return;
  }
  waivers.push(bus ? { ...base, bus: bus.index } : { ...base, at });
}
