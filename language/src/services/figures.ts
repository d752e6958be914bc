/** The page of a bus's figures: plain text for a fixed-width font. */
import { type BusStudy, formatNumber, isUnknown, summary } from '@fieldpair/shared';
import type { Position } from 'vscode-languageserver';
import type { Desk } from './desk.js';
import { endsText, kindText, ohmsText, secondsText, voltsText } from './words.js';

export interface FiguresPage {
  readonly title: string;
  readonly text: string;
}

export function figuresPage(desk: Desk, file: string, position: Position): FiguresPage | undefined {
  const found = desk.busAt(file, desk.offsetOf(file, position));
  if (!found) return undefined;
  return { title: `${found.store.name}, bus ${found.bus.name}`, text: figuresText(desk.studyOf(found)) };
}

function figuresText(study: BusStudy): string {
  const { store, bus, shape } = study;
  const facts = [
    ['kind', kindText(study)],
    ['cable', bus.cable?.name ?? 'unknown'],
    ['length', study.lengthText(study.length)],
    ['shape', endsText(study)],
    ['loop resistance', ohmsText(study.loopResistance)],
  ];
  const limits = summary(study).map(({ what, value, limit, document, share }) => [
    what,
    value,
    limit,
    share === undefined ? '' : `${formatNumber(share * 100)} %`,
    document,
  ]);
  const rows = bus.landings.map(({ index, name, address }) => {
    const distance = shape.distance[index];
    const { [index]: meter = { unknown: 'not computed' } } = study.meter;
    const { [index]: idle = { unknown: 'not computed' } } = study.idle;
    const { [index]: delay = { unknown: 'not computed' } } = study.delay;
    const short = (value: object, text: string) => (isUnknown(value) ? 'unknown' : text);
    return [
      name,
      address ? String(address.value) : '',
      distance === undefined ? 'not connected' : study.lengthText(distance),
      short(meter as object, ohmsText(meter)),
      short(idle as object, voltsText(idle)),
      short(delay as object, secondsText(delay)),
    ];
  });
  const reasons = new Set(
    [...study.meter, ...study.idle, ...study.delay].flatMap((one) => (isUnknown(one) ? [one.unknown] : [])),
  );
  const heading =
    bus.label === undefined ? `${store.name}, bus ${bus.name}` : `${store.name}, bus ${bus.name}: ${bus.label}`;
  return [
    heading,
    '',
    ...table(facts),
    '',
    ...(limits.length ? [...table([['figure', 'value', 'limit', 'used', 'document'], ...limits]), ''] : []),
    ...table([['landing', 'address', 'distance', 'meter reading', 'idle level', 'delay'], ...rows]),
    '',
    'distance: along the cable from the first landing; meter reading: across the pair, everything connected, nothing powered',
    ...[...reasons].map((reason) => `unknown: ${reason}`),
    '',
  ].join('\n');
}

/** Columns parted by two spaces. */
function table(rows: readonly (readonly string[])[]): string[] {
  const widths: number[] = [];
  for (const row of rows)
    for (const [column, cell] of row.entries()) widths[column] = Math.max(widths[column] ?? 0, cell.length);
  return rows.map((row) =>
    row
      .map((cell, column) => cell.padEnd(widths[column] ?? 0))
      .join('  ')
      .trimEnd(),
  );
}
