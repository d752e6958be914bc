import type { Rule } from '../rule.js';
import { endUnterminated } from './end-unterminated.js';
import { segmentUnterminated } from './segment-unterminated.js';
import { terminatorExtra } from './terminator-extra.js';
import { terminatorMidline } from './terminator-midline.js';
import { terminatorSwitchConflict } from './terminator-switch-conflict.js';
import { terminatorSwitchMissing } from './terminator-switch-missing.js';
import { terminatorValue } from './terminator-value.js';

export const endsRules: readonly Rule[] = [
  endUnterminated,
  segmentUnterminated,
  terminatorMidline,
  terminatorExtra,
  terminatorValue,
  terminatorSwitchMissing,
  terminatorSwitchConflict,
];
