/** What every way of printing a check, and of printing figures, is. */
import type { BusStudy, Severity, Store } from '@fieldpair/shared';
import type { CheckReport } from '../report/check-report.js';

export interface FormatOptions {
  readonly colour: boolean;
  readonly failOn: Severity;
  readonly version: string;
}

/** The whole output, its last line ended. */
export type CheckFormat = (report: CheckReport, options: FormatOptions) => string;

/** A store with the studies of its buses, in the order of the text. */
export interface StudiedStore {
  readonly store: Store;
  readonly studies: readonly BusStudy[];
}

export type FiguresFormat = (stores: readonly StudiedStore[], options: Pick<FormatOptions, 'colour'>) => string;
