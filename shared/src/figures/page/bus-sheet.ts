/** The figures of one bus as facts and tables of words: what its page shows, whatever the page is made of. */
import { isIncomplete, type LandingIndex } from '../../network.js';
import { plainLine } from '../../plain-text.js';
import { formatNumber } from '../../quantity.js';
import { type BusStudy, isUnknown } from '../study.js';
import { summary } from '../summary.js';
import type { Fact } from './figures-view.js';
import { viewOf } from './view.js';
import { endsText, kindText } from './words.js';

/** All of its texts are one line each, without characters that a terminal or a page would act on. */
export interface BusSheet {
  /** `northgate, bus cases: Medium-temperature cases`. */
  readonly heading: string;
  readonly facts: readonly Fact[];
  /** Each value beside its limit. */
  readonly limits: readonly LimitRow[];
  readonly columns: readonly SheetColumn[];
  /** A row for each landing, with a cell for each column. */
  readonly rows: readonly { readonly landing: LandingIndex; readonly cells: readonly string[] }[];
  /** Why cells are unknown, and of what: `meter, driven unknown: …`. */
  readonly unknown: readonly string[];
}

export interface LimitRow {
  readonly what: string;
  readonly value: string;
  readonly limit: string;
  /** How much of the limit is used, where that can be said. */
  readonly used: string;
  /** What sets the limit. */
  readonly document: string;
}

export interface SheetColumn {
  readonly title: string;
  /** A clause that can follow the title and a colon. */
  readonly meaning?: string;
}

/** More reasons than this say no more. */
const mostReasons = 8;

export function busSheet(study: BusStudy): BusSheet {
  const { store, bus } = study;
  const facts: Fact[] = [
    ...incomplete(study),
    ['kind', kindText(study)],
    ['cable', bus.cable?.name ?? 'unknown'],
    ['length', study.lengthText(study.length)],
    ['shape', endsText(study)],
    ...viewOf(bus.kind).facts(study),
  ];
  const label = bus.label === undefined ? '' : `: ${bus.label}`;
  return {
    heading: plainLine(`${store.name}, bus ${bus.name}${label}`),
    facts: facts.map(([name, value]): Fact => [plainLine(name), plainLine(value)]),
    limits: summary(study).map(({ what, value, limit, share, document }) => ({
      what: plainLine(what),
      value: plainLine(value),
      limit: plainLine(limit),
      used: usedText(share),
      document: plainLine(document),
    })),
    ...landingTable(study),
  };
}

/** Said first, so that nobody takes the figures of what could be read for those of the bus. */
const incomplete = ({ bus }: BusStudy): Fact[] =>
  isIncomplete(bus)
    ? [['incomplete', 'part of its text was not understood; these are the figures of the rest, without that part']]
    : [];

/** A column that is unknown everywhere is left out; why is told in any case. */
function landingTable(study: BusStudy): Pick<BusSheet, 'columns' | 'rows' | 'unknown'> {
  const { bus, shape } = study;
  const { columns, start = 'the first landing' } = viewOf(bus.kind);
  const reasons = new Map<string, Set<string>>();
  const shown: { readonly column: SheetColumn; readonly cells: readonly string[] }[] = [];
  for (const { title, meaning, cell } of columns) {
    const cells = bus.landings.map((landing) => {
      const value = cell(study, landing);
      if (!isUnknown(value)) return value;
      reasons.set(value.unknown, (reasons.get(value.unknown) ?? new Set()).add(title));
      return undefined;
    });
    if (cells.every((text) => text === undefined)) continue;
    const column = { title, ...(meaning !== undefined && { meaning: plainLine(meaning) }) };
    shown.push({ column, cells: cells.map((text) => text ?? 'unknown') });
  }
  const unknown = [...reasons].map(([reason, titles]) => plainLine(`${[...titles].join(', ')} unknown: ${reason}`));
  const more = unknown.length - mostReasons;
  return {
    columns: [
      { title: 'landing' },
      { title: 'address' },
      { title: 'distance', meaning: `along the cable from ${start}` },
      ...shown.map(({ column }) => column),
    ],
    rows: bus.landings.map(({ index, name, address }) => {
      const distance = shape.distance[index];
      const along = distance === undefined ? 'not joined' : study.lengthText(distance);
      const cells = [name, address ? String(address.value) : '', along, ...shown.map((one) => one.cells[index] ?? '')];
      return { landing: index, cells: cells.map(plainLine) };
    }),
    unknown: [...unknown.slice(0, mostReasons), ...(0 < more ? [`and ${more} more reasons`] : [])],
  };
}

/** A level of the wrong sign uses more of its limit than any number says. */
const usedText = (share: number | undefined) =>
  share === undefined ? '' : Number.isFinite(share) ? `${formatNumber(share * 100)} %` : 'not met';
