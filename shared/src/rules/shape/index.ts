import type { Rule } from '../rule.js';
import { branching } from './branching.js';
import { closedLoop } from './closed-loop.js';
import { danglingRun } from './dangling-run.js';
import { island } from './island.js';
import { landedTwice } from './landed-twice.js';
import { noHead } from './no-head.js';
import { tapTooLong } from './tap-too-long.js';
import { tapsAddUp } from './taps-add-up.js';

export const shapeRules: readonly Rule[] = [
  branching,
  closedLoop,
  island,
  danglingRun,
  landedTwice,
  tapTooLong,
  tapsAddUp,
  noHead,
];
