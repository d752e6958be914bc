/** What a kind of bus shows on the page of figures. */
import type { Landing } from '../../network.js';
import { type BusStudy, isUnknown, type Known } from '../study.js';
import { secondsText } from './words.js';

/** A figure of the whole bus: its name and its value as a person reads it. */
export type Fact = readonly [name: string, value: string];

/** A figure of each landing. */
export interface LandingColumn {
  readonly title: string;
  /** A clause that can follow the title and a colon: `across the pair, everything connected, nothing powered`. */
  readonly meaning?: string;
  cell(study: BusStudy, landing: Landing): Known<string>;
}

export interface FiguresView {
  /** Facts beyond kind, cable, length and shape, which every bus has. */
  facts(study: BusStudy): readonly Fact[];
  /** Columns beyond landing, address and distance, which every bus has. */
  readonly columns: readonly LandingColumn[];
  /** From where distances count; the first landing when left out. */
  readonly start?: string;
}

/** A figure shown by `text` where it is known. */
export const shown = <T extends object | number>(figure: Known<T>, text: (known: T) => string): Known<string> =>
  isUnknown(figure) ? figure : text(figure as T);

export const delayColumn: LandingColumn = {
  title: 'delay',
  meaning: 'what the wave takes along that distance',
  cell: (study, { index }) => shown(study.delay[index]!, secondsText),
};
