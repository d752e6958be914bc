/** Waveforms for spreadsheets: a row for each moment, a column for each landing. */
import type { Waves } from '@fieldpair/shared';
import { type CsvCell, csvText } from '../csv.js';

/** A set of waves with what tells its columns from those of another set: empty, or a word or two. */
export interface NamedWaves {
  readonly name: string;
  readonly waves: Waves;
}

/** The step, or the pattern. Sets that were sampled at other moments follow below, under a heading of their own. */
export function waveCsv(sets: readonly NamedWaves[], kind: 'step' | 'pattern'): string {
  const rows: CsvCell[][] = [];
  for (const { name, waves } of sets) {
    const { time, volts } = waves[kind];
    const heading = waves.landings.map((one) => `${one.name}${name === '' ? '' : `, ${name}`} (V)`);
    rows.push(['time (s)', ...heading]);
    for (let index = 0; index < time.length; index++) {
      rows.push([rounded(time[index]!), ...waves.landings.map(({ landing }) => rounded(volts[landing]?.[index]))]);
    }
  }
  return csvText(rows);
}

/** Six figures; empty where there is no number. */
const rounded = (value: number | undefined): number | null =>
  value !== undefined && Number.isFinite(value) ? Number(value.toPrecision(6)) : null;
