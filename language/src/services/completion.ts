/**
 * Completion: keywords by the grammar, through Langium; names, addresses, units and words by what is in scope.
 */

import {
  type Bus,
  type BusKind,
  busKinds,
  ethernetRates,
  lineOf,
  portServes,
  preferredRate,
  ruleIds,
  type StoreNode,
  servingPorts,
  usualRates,
} from '@fieldpair/shared';
import { type AstNode, AstUtils, GrammarAST, type LangiumDocument, stream } from 'langium';
import {
  type CompletionAcceptor,
  type CompletionContext,
  DefaultCompletionProvider,
  type LangiumServices,
} from 'langium/lsp';
import {
  type CompletionItem,
  CompletionItemKind,
  type CompletionList,
  type CompletionParams,
} from 'vscode-languageserver';
import { nameText } from '../build/suggest.js';
import { unquote } from '../read/text-value.js';
import { type Entry, entryOf } from '../reference/index.js';
import { kindTopics } from '../reference/kind-topics.js';
import { entryText } from '../reference/page.js';
import { completionPlace, type Due } from './completion-place.js';
import { type BusInStore, contains, type Desk } from './desk.js';

interface Offer {
  /** What is written; names are quoted where they need it. */
  readonly text: string;
  readonly kind: CompletionItemKind;
  readonly detail?: string | undefined;
}

export class Completion extends DefaultCompletionProvider {
  readonly #desk: Desk;
  override readonly completionOptions = { triggerCharacters: ['.', ' '] };

  readonly #failed: (error: unknown) => void;

  constructor(services: LangiumServices, desk: Desk, failed: (error: unknown) => void) {
    super(services);
    this.#desk = desk;
    this.#failed = failed;
  }

  override async getCompletion(
    document: LangiumDocument,
    params: CompletionParams,
  ): Promise<CompletionList | undefined> {
    try {
      return await this.#complete(document, params);
    } catch (error) {
      this.#failed(error);
      return undefined;
    }
  }

  /** With what the reference says of each statement that the word can begin or go on with here. */
  protected override completionForKeyword(
    context: CompletionContext,
    keyword: GrammarAST.Keyword,
    acceptor: CompletionAcceptor,
  ): void {
    if (!this.filterKeyword(context, keyword)) return;
    const alike = stream(context.features)
      .map(({ feature }) => feature)
      .filter((feature) => GrammarAST.isKeyword(feature) && feature.value === keyword.value)
      .toArray();
    const entries = new Set([keyword, ...alike].flatMap((feature) => entryAt(context, feature) ?? []));
    acceptor(context, {
      label: keyword.value,
      kind: this.getKeywordCompletionItemKind(keyword),
      detail: [...entries].map(({ form }) => form).join(' · ') || 'keyword',
      ...(entries.size > 0 && {
        documentation: { kind: 'markdown', value: [...entries].map(entryText).join('\n\n---\n\n') },
      }),
      sortText: '1',
    });
  }

  async #complete(document: LangiumDocument, params: CompletionParams): Promise<CompletionList | undefined> {
    const file = document.uri.toString();
    const offset = document.textDocument.offsetAt(params.position);
    const { start, due } = completionPlace(document.textDocument.getText(), offset);
    const range = { start: document.textDocument.positionAt(start), end: params.position };
    const offers = offersFor(this.#desk, file, offset, due);
    const items = offers.map(
      ({ text, kind, detail }, index): CompletionItem => ({
        label: text,
        kind,
        ...(detail === undefined ? {} : { detail }),
        // What fits best was put first.
        sortText: `0${String(index).padStart(5, '0')}`,
        filterText: text,
        textEdit: { range, newText: text },
      }),
    );
    // After a space only what the place asks for: a list at every space would be in the way of typing.
    if (params.context?.triggerCharacter !== undefined) return { isIncomplete: false, items };
    const keywords = await super.getCompletion(document, params);
    return { isIncomplete: keywords?.isIncomplete ?? false, items: [...items, ...(keywords?.items ?? [])] };
  }
}

/** The statement of the grammar that a word is of. */
function entryAt({ node }: CompletionContext, feature: AstNode): Entry | undefined {
  const rule = AstUtils.getContainerOfType(feature, GrammarAST.isParserRule);
  const port = AstUtils.getContainerOfType(node, (one): one is AstNode => one.$type === 'PortDeclaration');
  return rule && entryOf(rule.name, port ? 'port' : 'cable');
}

const names = (list: Iterable<{ readonly name: string; readonly label?: string }>, kind: CompletionItemKind): Offer[] =>
  [...list].map(({ name, label }) => ({ text: nameText(name), kind, detail: label }));
const plain = (words: readonly string[], kind: CompletionItemKind = CompletionItemKind.Value): Offer[] =>
  words.map((text) => ({ text, kind }));

function offersFor(desk: Desk, file: string, offset: number, due: Due): Offer[] {
  const { project } = desk;
  const inside = desk.busAt(file, offset);
  switch (due.what) {
    case 'nothing':
      return [];
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
      return (inside?.bus.landings ?? []).map((one) => ({
        text: nameText(one.splice ?? one.node?.name ?? one.name),
        kind: CompletionItemKind.Variable,
      }));
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

/** Nodes that are not landed yet come first: most landings are new ones. */
function nodeOffers(desk: Desk, file: string, inside: BusInStore | undefined): Offer[] {
  const nodes = (inside ? [inside.store] : desk.project.storesOf(file)).flatMap((store) => store.nodes);
  const landed = new Set(inside?.bus.landings.flatMap(({ node }) => node?.name ?? []));
  const ordered = [...nodes.filter(({ name }) => !landed.has(name)), ...nodes.filter(({ name }) => landed.has(name))];
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

function nodeNamed(desk: Desk, file: string, written: string): StoreNode | undefined {
  const name = written.startsWith('"') ? unquote(written) : written;
  return desk.project
    .storesOf(file)
    .flatMap((store) => store.nodes)
    .find((node) => node.name === name);
}

/** Ports that fit the bus come first, then those that are reserved or twins, then the others. */
function portOffers(node: StoreNode | undefined, inside: BusInStore | undefined): Offer[] {
  if (!node?.device) return [];
  const { fit, poor } = servingPorts(node, { kind: inside?.bus.kind });
  const others = node.device.ports.filter((port) => !fit.includes(port) && !poor.includes(port));
  return [...fit, ...poor, ...(fit.length + poor.length ? [] : others)].map(({ name, kind }) => ({
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
