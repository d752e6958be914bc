/** The figures of one bus as lines of text: the page in the editor and what `fieldpair figures` prints. */
import type { Landing } from '../../network.js';
import { plainLine, tableLines, wrapped } from '../../plain-text.js';
import { formatNumber } from '../../quantity.js';
import { type BusStudy, isUnknown } from '../study.js';
import { summary } from '../summary.js';
import type { FiguresView } from './figures-view.js';
import { viewOf } from './view.js';
import { endsText, kindText } from './words.js';

export interface BusPage {
  /** `northgate, bus cases: Medium-temperature cases`. */
  readonly heading: string;
  /** Each fit for a terminal; empty ones part the blocks. */
  readonly lines: readonly string[];
}

/** Paragraphs are wrapped to this many columns. */
const width = 100;
/** More reasons than this say no more. */
const mostReasons = 8;

export function busPage(study: BusStudy): BusPage {
  const { store, bus } = study;
  const view = viewOf(bus.kind);
  const facts = [
    ['kind', kindText(study)],
    ['cable', bus.cable?.name ?? 'unknown'],
    ['length', study.lengthText(study.length)],
    ['shape', endsText(study)],
    ...view.facts(study),
  ];
  const label = bus.label === undefined ? '' : `: ${bus.label}`;
  return {
    heading: plainLine(`${store.name}, bus ${bus.name}${label}`),
    lines: [...tableLines(clean(facts)), ...limitLines(study), ...landingLines(study, view)],
  };
}

/** Each value beside its limit; the documents follow as numbered notes, so that the columns stay narrow. */
function limitLines(study: BusStudy): string[] {
  const documents: string[] = [];
  const rows = summary(study).map(({ what, value, limit, share, document }) => {
    if (!documents.includes(document)) documents.push(document);
    return [what, value, limit, usedText(share), `[${documents.indexOf(document) + 1}]`];
  });
  if (rows.length === 0) return [];
  const notes = documents.flatMap((document, index) => paragraph(`[${index + 1}] `, document));
  return ['', ...tableLines(clean([['figure', 'value', 'limit', 'used', 'by'], ...rows])), ...notes];
}

/** A row for each landing. A column that is unknown everywhere is left out; why is told below in any case. */
function landingLines(study: BusStudy, { columns, start = 'the first landing' }: FiguresView): string[] {
  const { bus, shape } = study;
  const reasons = new Map<string, Set<string>>();
  const shown: { readonly title: string; readonly cells: readonly string[] }[] = [];
  for (const { title, cell } of columns) {
    const cells = bus.landings.map((landing) => {
      const value = cell(study, landing);
      if (!isUnknown(value)) return value;
      reasons.set(value.unknown, (reasons.get(value.unknown) ?? new Set()).add(title));
      return undefined;
    });
    if (cells.some((text) => text !== undefined)) shown.push({ title, cells: cells.map((text) => text ?? 'unknown') });
  }
  const rowOf = ({ index, name, address }: Landing) => {
    const distance = shape.distance[index];
    const along = distance === undefined ? 'not joined' : study.lengthText(distance);
    return [name, address ? String(address.value) : '', along, ...shown.map(({ cells }) => cells[index]!)];
  };
  const heads = ['landing', 'address', 'distance', ...shown.map(({ title }) => title)];
  const unknown = [...reasons].map(([reason, titles]) => `${[...titles].join(', ')} unknown: ${reason}`);
  const meanings = [
    `distance: along the cable from ${start}`,
    ...columns.flatMap(({ title, meaning }) =>
      meaning !== undefined && shown.some((column) => column.title === title) ? [`${title}: ${meaning}`] : [],
    ),
  ];
  return [
    '',
    ...tableLines(clean([heads, ...bus.landings.map(rowOf)])),
    '',
    ...[...unknown.slice(0, mostReasons), ...meanings].flatMap((text) => paragraph('', text)),
    ...(mostReasons < unknown.length ? [`and ${unknown.length - mostReasons} more reasons`] : []),
  ];
}

/** A level of the wrong sign uses more of its limit than any number says. */
const usedText = (share: number | undefined) =>
  share === undefined ? '' : Number.isFinite(share) ? `${formatNumber(share * 100)} %` : 'not met';

const clean = (rows: readonly (readonly string[])[]) => rows.map((row) => row.map(plainLine));

/** A paragraph whose later lines stand under the text of the first. */
const paragraph = (mark: string, text: string): string[] =>
  wrapped(plainLine(text), width - mark.length).map(
    (line, index) => (index === 0 ? mark : ' '.repeat(mark.length)) + line,
  );
