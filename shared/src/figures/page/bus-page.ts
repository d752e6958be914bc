/** The figures of one bus as lines of text, for a fixed-width font: what `fieldpair figures` prints. */
import { tableLines, wrapped } from '../../plain-text.js';
import type { BusStudy } from '../study.js';
import { type BusSheet, busSheet } from './bus-sheet.js';

export interface BusPage {
  /** `northgate, bus cases: Medium-temperature cases`. */
  readonly heading: string;
  /** Each fit for a terminal; empty ones part the blocks. */
  readonly lines: readonly string[];
}

/** Paragraphs are wrapped to this many columns. */
const width = 100;

export function busPage(study: BusStudy): BusPage {
  const sheet = busSheet(study);
  return { heading: sheet.heading, lines: [...tableLines(sheet.facts), ...limitLines(sheet), ...landingLines(sheet)] };
}

/** The documents follow as numbered notes, so that the columns stay narrow. */
function limitLines({ limits }: BusSheet): string[] {
  if (limits.length === 0) return [];
  const documents = [...new Set(limits.map(({ document }) => document))];
  const rows = limits.map(({ what, value, limit, used, document }) => [
    ...[what, value, limit, used],
    `[${documents.indexOf(document) + 1}]`,
  ]);
  const notes = documents.flatMap((document, index) => paragraph(`[${index + 1}] `, document));
  return ['', ...tableLines([['figure', 'value', 'limit', 'used', 'by'], ...rows]), ...notes];
}

function landingLines({ columns, rows, unknown }: BusSheet): string[] {
  const meanings = columns.flatMap(({ title, meaning }) => (meaning === undefined ? [] : [`${title}: ${meaning}`]));
  return [
    '',
    ...tableLines([columns.map(({ title }) => title), ...rows.map(({ cells }) => cells)]),
    '',
    ...[...unknown, ...meanings].flatMap((text) => paragraph('', text)),
  ];
}

/** A paragraph whose later lines stand under the text of the first. */
const paragraph = (mark: string, text: string): string[] =>
  wrapped(text, width - mark.length).map((line, index) => (index === 0 ? mark : ' '.repeat(mark.length)) + line);
