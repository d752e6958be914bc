import type { Rule } from '../rule.js';
import { biasDoubled } from './bias-doubled.js';
import { biasForeign } from './bias-foreign.js';
import { biasMissing } from './bias-missing.js';
import { biasWeak } from './bias-weak.js';
import { busTooLong } from './bus-too-long.js';
import { cableTooWarm } from './cable-too-warm.js';
import { devicesTooFarApart } from './devices-too-far-apart.js';
import { driverOverloaded } from './driver-overloaded.js';
import { formatUnsuited } from './format-unsuited.js';
import { loadOverBudget } from './load-over-budget.js';
import { marginLow } from './margin-low.js';
import { nodesOverBudget } from './nodes-over-budget.js';
import { propagationOverBudget } from './propagation-over-budget.js';
import { rateTooFastForLength } from './rate-too-fast-for-length.js';
import { rateUnstated } from './rate-unstated.js';
import { rateUnsuited } from './rate-unsuited.js';
import { repeaterNeeded } from './repeater-needed.js';
import { toleranceClose } from './tolerance-close.js';
import { wireTooThinForLength } from './wire-too-thin-for-length.js';

/** Length, rate, load and bias. */
export const loadRules: readonly Rule[] = [
  busTooLong,
  devicesTooFarApart,
  toleranceClose,
  rateTooFastForLength,
  rateUnstated,
  rateUnsuited,
  formatUnsuited,
  propagationOverBudget,
  wireTooThinForLength,
  cableTooWarm,
  loadOverBudget,
  repeaterNeeded,
  driverOverloaded,
  nodesOverBudget,
  marginLow,
  biasMissing,
  biasWeak,
  biasDoubled,
  biasForeign,
];
