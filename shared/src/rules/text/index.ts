/** What is wrong with a text itself: its syntax, names, units, numbers, imports and waivers. */
import type { Rule } from '../rule.js';
import { areaContradicted } from './area-contradicted.js';
import { biasSwitchMissing } from './bias-switch-missing.js';
import { duplicateName } from './duplicate-name.js';
import { importCycle } from './import-cycle.js';
import { importMissing } from './import-missing.js';
import { importUnreadable } from './import-unreadable.js';
import { internalError } from './internal-error.js';
import { notOnBus } from './not-on-bus.js';
import { penMissing } from './pen-missing.js';
import { revisionUnknown } from './revision-unknown.js';
import { statementForeign } from './statement-foreign.js';
import { statementRepeated } from './statement-repeated.js';
import { syntax } from './syntax.js';
import { unitMissing } from './unit-missing.js';
import { unitUnsuited } from './unit-unsuited.js';
import { unknownName } from './unknown-name.js';
import { unknownWord } from './unknown-word.js';
import { unusedEntry } from './unused-entry.js';
import { valueImpossible } from './value-impossible.js';
import { waiverStale } from './waiver-stale.js';
import { waiverUnreasoned } from './waiver-unreasoned.js';

export const textRules: readonly Rule[] = [
  syntax,
  unknownName,
  unknownWord,
  duplicateName,
  unitMissing,
  unitUnsuited,
  valueImpossible,
  statementRepeated,
  statementForeign,
  areaContradicted,
  revisionUnknown,
  notOnBus,
  penMissing,
  biasSwitchMissing,
  waiverUnreasoned,
  waiverStale,
  importMissing,
  importUnreadable,
  importCycle,
  unusedEntry,
  internalError,
];
