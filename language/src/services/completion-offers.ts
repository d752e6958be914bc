/** What completion offers at a place, likeliest first: names, addresses, units and words by what is in scope. */
import {
  type Bus,
  type BusKind,
  busKinds,
  ethernetRates,
  lineOf,
  type Port,
  portServes,
  preferredRate,
  ruleIds,
  type Store,
  type StoreNode,
  servingPorts,
  usualRates,
} from '@fieldpair/shared';
import { CompletionItemKind } from 'vscode-languageserver';
import { nameText } from '../build/suggest.js';
import { unquote } from '../read/text-value.js';
import { kindTopics } from '../reference/kind-topics.js';
import type { Due } from './completion-place.js';
import {
  biasOffers,
  colourOffers,
  coloursOffers,
  formatOffers,
  landedOffers,
  type Offer,
  pathOffers,
  plain,
  resistorOffers,
  shieldOffers,
  terminateOffers,
} from './completion-values.js';
import { type BusInStore, contains, type Desk } from './desk.js';

const names = (list: Iterable<{ readonly name: string; readonly label?: string }>, kind: CompletionItemKind): Offer[] =>
  [...list].map(({ name, label }) => ({ text: nameText(name), kind, detail: label }));

export function offersFor(desk: Desk, file: string, offset: number, due: Due): Offer[] {
  const { project } = desk;
  const inside = desk.busAt(file, offset);
  switch (due.what) {
    case 'nothing':
    case 'prose':
      return [];
    case 'path':
      return pathOffers(desk, file, due.quoted);
    case 'area':
      return plain(areaNames(inside).map(nameText));
    case 'cable':
      return names(
        project.catalogueOf(file).flatMap(({ cables }) => [...cables.values()]),
        CompletionItemKind.Constant,
      );
    case 'device': {
      const devices = project.catalogueOf(file).flatMap((one) => [...one.devices.values()]);
      const kind = inside?.bus.kind;
      const fits = kind ? devices.filter(({ ports }) => ports.some((port) => portServes(port, kind))) : devices;
      return names([...fits, ...devices.filter((one) => !fits.includes(one))], CompletionItemKind.Class);
    }
    case 'node':
      return nodeOffers(desk, file, inside);
    case 'landed':
      return landedOffers(inside);
    case 'unit-of-network':
      return unitOffers(desk, file);
    case 'format':
      return formatOffers(due.kind);
    case 'shield':
      return shieldOffers(due.begins);
    case 'terminate':
      return terminateOffers(inside, offset);
    case 'resistor':
      return resistorOffers(inside, offset);
    case 'bias':
      return biasOffers(inside, due.node);
    case 'colours':
      return coloursOffers(inside);
    case 'colour':
      return colourOffers(inside);
    case 'port':
      return portOffers(nodeNamed(desk, file, due.node), inside);
    case 'revision': {
      const node = due.node === undefined ? undefined : nodeNamed(desk, file, due.node);
      return plain((node?.device?.revisions ?? []).map(nameText), CompletionItemKind.EnumMember);
    }
    case 'kind':
      return busKinds.map((kind) => ({ text: kind, kind: CompletionItemKind.EnumMember, detail: kindTopics[kind] }));
    case 'rate':
      return plain(rateOffers[due.kind] ?? []);
    case 'address':
      return addressOffers(inside, offset);
    case 'unit':
      return plain(due.units, CompletionItemKind.Unit);
    case 'rule':
      return plain([...ruleIds].sort(), CompletionItemKind.EnumMember);
    case 'word':
      return plain(due.words, CompletionItemKind.EnumMember);
  }
}

/** The areas of the store, those of other buses first: what this bus walks through it walks through once. */
function areaNames(inside: BusInStore | undefined): string[] {
  const areasOf = (bus: Bus) => bus.landings.flatMap(({ area }) => area?.value ?? []);
  const others = inside?.store.buses.filter((bus) => bus !== inside.bus).flatMap(areasOf) ?? [];
  return [...new Set([...others, ...(inside ? areasOf(inside.bus) : [])])];
}

const shortRate = (rate: number) => (rate < 1e6 ? `${rate / 1e3} kbit/s` : `${rate / 1e6} Mbit/s`);
/** Rates that bus wiring is mostly set to; the others can be typed. */
const offered = { least: 9600, most: 115_200 };

/** Rates of a start-stop bus, the preferred one first and the others rising. */
function serialOffers(kind: BusKind, format = ''): string[] {
  const rates = usualRates(kind).filter((rate) => offered.least <= rate && rate <= offered.most);
  const preferred = preferredRate(kind);
  const others = rates.toReversed().filter((rate) => rate !== preferred);
  return [...(preferred === undefined ? [] : [preferred]), ...others].map((rate) => `${rate}${format}`);
}

/** Rates as they are written, by kind. */
const rateOffers: Readonly<Partial<Record<BusKind, readonly string[]>>> = {
  rs485: serialOffers('rs485'),
  'modbus-rtu': serialOffers('modbus-rtu', ' 8E1'),
  'bacnet-mstp': serialOffers('bacnet-mstp'),
  can: usualRates('can').map(shortRate),
  ethernet: ethernetRates.map(shortRate),
};

/**
 * First the nodes that have a port for this bus which nothing is landed on, for most landings are new ones; then those
 * that are on the bus, and those that are full.
 */
function nodeOffers(desk: Desk, file: string, inside: BusInStore | undefined): Offer[] {
  const stores = inside ? [inside.store] : desk.project.storesOf(file);
  const nodes = stores.flatMap((store) => store.nodes);
  const here = new Set(inside?.bus.landings.flatMap(({ node }) => node?.name ?? []));
  const taken = new Set(
    stores.flatMap((store) =>
      store.buses.flatMap(({ landings }) => landings.map((one) => portKey(one.node, one.port))),
    ),
  );
  const rank = (node: StoreNode) => {
    if (here.has(node.name)) return 1;
    if (!inside?.bus.kind || !node.device) return 0;
    return servingPorts(node, inside.bus).fit.some((port) => !taken.has(portKey(node, port))) ? 0 : 2;
  };
  const ordered = nodes.toSorted((left, right) => rank(left) - rank(right));
  const splices = inside?.bus.landings.flatMap(({ splice }) => splice ?? []) ?? [];
  return [
    ...ordered.map(({ name, device }) => ({
      text: nameText(name),
      kind: CompletionItemKind.Variable,
      detail: device?.name,
    })),
    ...splices.map((splice) => ({ text: nameText(splice), kind: CompletionItemKind.Variable, detail: 'splice' })),
  ];
}

const takenPorts = (stores: readonly Store[]) =>
  new Set(
    stores.flatMap((store) =>
      store.buses.flatMap(({ landings }) => landings.map((one) => portKey(one.node, one.port))),
    ),
  );
const portKey = (node: StoreNode | undefined, port: Port | undefined) => JSON.stringify([node?.name, port?.name]);

/** Heads first: they are what a host network joins. */
function unitOffers(desk: Desk, file: string): Offer[] {
  const nodes = desk.project.storesOf(file).flatMap((store) => store.nodes);
  const isHead = ({ device }: StoreNode) => device?.role === 'head';
  return [...nodes.filter(isHead), ...nodes.filter((node) => !isHead(node))].map(({ name, device }) => ({
    text: nameText(name),
    kind: CompletionItemKind.Variable,
    detail: device?.name,
  }));
}

function nodeNamed(desk: Desk, file: string, written: string): StoreNode | undefined {
  const name = written.startsWith('"') ? unquote(written) : written;
  return desk.project
    .storesOf(file)
    .flatMap((store) => store.nodes)
    .find((node) => node.name === name);
}

/** Ports that fit the bus and carry none yet come first, then the others that fit, then those that are reserved or twins, then the others. */
function portOffers(node: StoreNode | undefined, inside: BusInStore | undefined): Offer[] {
  if (!node?.device) return [];
  const { fit, poor } = servingPorts(node, { kind: inside?.bus.kind });
  const others = node.device.ports.filter((port) => !fit.includes(port) && !poor.includes(port));
  const taken = takenPorts(inside ? [inside.store] : []);
  const isFree = (port: Port) => !taken.has(portKey(node, port));
  const free = fit.filter(isFree);
  const full = fit.filter((port) => !isFree(port));
  return [...free, ...full, ...poor, ...(fit.length + poor.length ? [] : others)].map(({ name, kind }) => ({
    text: nameText(name),
    kind: CompletionItemKind.Property,
    detail: kind,
  }));
}

/** The next free ones, counted on from the nearest address in front. */
function addressOffers(inside: BusInStore | undefined, offset: number): Offer[] {
  if (!inside) return plain(['dial', 'switches', 'software'], CompletionItemKind.EnumMember);
  const { landings } = inside.bus;
  const line = lineOf(inside.store, inside.bus);
  const used = new Set(line.flatMap((bus) => bus.landings.flatMap(({ address }) => address?.value ?? [])));
  const here = landings.find(({ visits }) => visits.some(({ place }) => contains(place, offset)));
  const before = landings.findLast(({ address }) => address && address.place.end < offset)?.address?.value ?? 0;
  const { low, high } = here?.port?.address ?? { low: 1, high: 247 };
  const free: string[] = [];
  for (let address = Math.max(low, before + 1); address <= high && free.length < 5; address++) {
    if (!used.has(address)) free.push(String(address));
  }
  for (let address = low; address <= Math.min(high, before) && free.length < 5; address++) {
    if (!used.has(address)) free.push(String(address));
  }
  return plain(free);
}
