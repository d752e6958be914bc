import type { Rule } from '../rule.js';
import { contactUnplaced } from './contact-unplaced.js';
import { contactUnsuited } from './contact-unsuited.js';
import { contactsBypassed } from './contacts-bypassed.js';
import { contactsOverLimit } from './contacts-over-limit.js';
import { endResistorMisplaced } from './end-resistor-misplaced.js';
import { endResistorMissing } from './end-resistor-missing.js';
import { endResistorValue } from './end-resistor-value.js';
import { inputDoubled } from './input-doubled.js';
import { inputMissing } from './input-missing.js';
import { loopMisread } from './loop-misread.js';
import { loopResistanceOverLimit } from './loop-resistance-over-limit.js';
import { loopUnsupervised } from './loop-unsupervised.js';
import { statesAlike } from './states-alike.js';

/** Alarm contact loops. */
export const loopRules: readonly Rule[] = [
  inputMissing,
  inputDoubled,
  contactsBypassed,
  contactUnplaced,
  contactUnsuited,
  endResistorMissing,
  endResistorMisplaced,
  endResistorValue,
  contactsOverLimit,
  loopResistanceOverLimit,
  loopMisread,
  statesAlike,
  loopUnsupervised,
];
