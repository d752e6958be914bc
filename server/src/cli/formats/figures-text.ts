/** Figures for people: bus by bus and landing by landing, lengths in the unit of the text. */
import {
  type BusStudy,
  formatOhms,
  formatSeconds,
  formatSignificant,
  formatVolts,
  isUnknown,
  type Known,
  type Range,
} from '@fieldpair/shared';
import { plainLine, shownWidth } from '../plain-text.js';
import { type Paint, painter } from '../terminal.js';
import type { FiguresFormat } from './format.js';

export const figuresText: FiguresFormat = (stores, { colour }) => {
  const paint = painter(colour);
  const lines: string[] = [];
  for (const { store, studies } of stores) {
    lines.push(paint('underline', plainLine(`store ${store.name}`)));
    for (const study of studies) lines.push(...busLines(study, paint), '');
  }
  if (lines.length === 0) return 'There is no store in these files.\n';
  lines.push('Distance is along the cable from the first landing. An ohmmeter across the pair reads the meter figure');
  lines.push('with everything connected and nothing powered. Driven is what the head drives against the bias.');
  return `${lines.join('\n')}\n`;
};

function busLines(study: BusStudy, paint: Paint): string[] {
  const { bus, shape } = study;
  const reasons = new Set<string>();
  const known = <T>(value: Known<T>, text: (known: T) => string) => {
    if (!isUnknown(value)) return text(value);
    reasons.add(value.unknown);
    return 'unknown';
  };
  const range =
    <T extends number>(format: (value: T) => string) =>
    ({ nominal, low, high }: Range<T>) => {
      const bounds = [format(low), format(high)];
      return bounds[0] === bounds[1] ? format(nominal) : `${format(nominal)} (${bounds.join(' to ')})`;
    };
  const ends = shape.ends?.map((end) => bus.landings[end]!.name).join(' and ') ?? 'no two: the bus is no single chain';
  const lines = [
    `  ${paint('bold', plainLine(`bus ${bus.name}`))}  ${bus.kind ?? 'of unknown kind'}`,
    `    length ${study.lengthText(study.length)}; ends: ${plainLine(ends)}`,
    `    loop resistance ${known(study.loopResistance, range(formatOhms))}; unit loads ${known(study.unitLoads, formatSignificant)}`,
  ];
  const rows = bus.landings.map(({ index, name, address }) => {
    const distance = shape.distance[index];
    return [
      plainLine(name),
      address ? String(address.value) : '',
      distance === undefined ? 'not joined' : study.lengthText(distance),
      known(study.meter[index]!, range(formatOhms)),
      known(study.idle[index]!, range(formatVolts)),
      known(study.driven[index]!, range(formatVolts)),
      known(study.delay[index]!, formatSeconds),
    ];
  });
  lines.push(...table([['landing', 'address', 'distance', 'meter', 'idle', 'driven', 'delay'], ...rows]));
  for (const reason of reasons) lines.push(`    unknown: ${plainLine(reason)}`);
  return lines;
}

/** Columns two spaces apart. */
function table(rows: readonly (readonly string[])[]): string[] {
  const widths: number[] = [];
  for (const row of rows) {
    for (const [column, text] of row.entries()) widths[column] = Math.max(widths[column] ?? 0, shownWidth(text));
  }
  const padded = (text: string, column: number) => text + ' '.repeat(widths[column]! - shownWidth(text));
  return rows.map((row) => `    ${row.map(padded).join('  ').trimEnd()}`);
}
