/** The pair and its shield: polarity, cable, conductors, earth. */
import type { Rule } from '../rule.js';
import { cableClassUnstated } from './cable-class-unstated.js';
import { cableUnstated } from './cable-unstated.js';
import { cableUnsuited } from './cable-unsuited.js';
import { conductorShortSupply } from './conductor-short-supply.js';
import { mixedCable } from './mixed-cable.js';
import { polarityCrossed } from './polarity-crossed.js';
import { polarityUnstated } from './polarity-unstated.js';
import { shieldEarthedDirectly } from './shield-earthed-directly.js';
import { shieldEarthedTwice } from './shield-earthed-twice.js';
import { shieldGap } from './shield-gap.js';
import { shieldNotReturned } from './shield-not-returned.js';
import { shieldUnearthed } from './shield-unearthed.js';

export const pairRules: readonly Rule[] = [
  polarityCrossed,
  polarityUnstated,
  mixedCable,
  cableUnsuited,
  cableUnstated,
  cableClassUnstated,
  conductorShortSupply,
  shieldGap,
  shieldNotReturned,
  shieldEarthedTwice,
  shieldEarthedDirectly,
  shieldUnearthed,
];
