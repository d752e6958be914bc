import type { Rule } from '../rule.js';
import { biasDoubled } from './bias-doubled.js';
import { biasMissing } from './bias-missing.js';
import { biasWeak } from './bias-weak.js';
import { busTooLong } from './bus-too-long.js';
import { driverOverloaded } from './driver-overloaded.js';
import { loadOverBudget } from './load-over-budget.js';
import { rateTooFastForLength } from './rate-too-fast-for-length.js';
import { repeaterNeeded } from './repeater-needed.js';
import { toleranceClose } from './tolerance-close.js';

/** Length, rate, load and bias. */
export const loadRules: readonly Rule[] = [
  busTooLong,
  toleranceClose,
  rateTooFastForLength,
  loadOverBudget,
  repeaterNeeded,
  driverOverloaded,
  biasMissing,
  biasWeak,
  biasDoubled,
];
