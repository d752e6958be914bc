/** The section `fieldpair` of a client's settings, taken from whatever the client sends. */

import { defaultEditorSettings, type EditorSettings } from '@fieldpair/language/services';
import type { CheckSettings, Severity } from '@fieldpair/shared';

export interface ReadSettings {
  readonly check: CheckSettings;
  readonly editor: EditorSettings;
}

/** What may have been given, with nothing known of its types. */
interface Given {
  readonly severity?: unknown;
  readonly lengthUnit?: unknown;
  readonly hints?: unknown;
  readonly distance?: unknown;
  readonly addressGaps?: unknown;
  readonly ends?: unknown;
  readonly codeLens?: unknown;
}

/** Anything that is missing or of another type than expected counts as unset. */
export function readSettings(value: unknown): ReadSettings {
  const given = recordOf(value);
  const hints = recordOf(given.hints);
  const standard = defaultEditorSettings;
  const lengthUnit = given.lengthUnit === 'ft' || given.lengthUnit === 'm' ? given.lengthUnit : undefined;
  const severity = Object.entries(recordOf(given.severity)).filter((one): one is [string, Severity | 'off'] =>
    isSeverity(one[1]),
  );
  return {
    check: { severity: Object.fromEntries(severity), ...(lengthUnit ? { lengthUnit } : {}) },
    editor: {
      lengthUnit: lengthUnit ?? standard.lengthUnit,
      hints: {
        distance: flag(hints.distance, standard.hints.distance),
        addressGaps: flag(hints.addressGaps, standard.hints.addressGaps),
        ends: flag(hints.ends, standard.hints.ends),
      },
      codeLens: flag(given.codeLens, standard.codeLens),
    },
  };
}

const recordOf = (value: unknown): Given => (typeof value === 'object' && value !== null ? value : {});
const flag = (value: unknown, standard: boolean): boolean => (typeof value === 'boolean' ? value : standard);
const isSeverity = (value: unknown): value is Severity | 'off' =>
  value === 'error' || value === 'warning' || value === 'info' || value === 'off';
