/** What every way of printing a check is. */
import type { Severity } from '@fieldpair/shared';
import type { CheckReport } from '../report/check-report.js';

export interface FormatOptions {
  readonly colour: boolean;
  readonly failOn: Severity;
  readonly version: string;
}

/** The whole output, its last line ended. */
export type CheckFormat = (report: CheckReport, options: FormatOptions) => string;
