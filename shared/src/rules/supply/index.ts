import type { Rule } from '../rule.js';
import { classTwoExceeded } from './class-two-exceeded.js';
import { drawUnstated } from './draw-unstated.js';
import { dropOverAdvice } from './drop-over-advice.js';
import { fuseOverWire } from './fuse-over-wire.js';
import { fuseUnderLoad } from './fuse-under-load.js';
import { mainsBeside } from './mains-beside.js';
import { runOverCurrent } from './run-over-current.js';
import { sourceDoubled } from './source-doubled.js';
import { sourceMissing } from './source-missing.js';
import { sourceOverload } from './source-overload.js';
import { supplyCollapse } from './supply-collapse.js';
import { supplyDrop } from './supply-drop.js';
import { supplyFormMismatch } from './supply-form-mismatch.js';
import { supplyReversed } from './supply-reversed.js';
import { supplyTooHigh } from './supply-too-high.js';
import { wireUnfused } from './wire-unfused.js';

/** Low-voltage supplies, and what they share with alarm loops. */
export const supplyRules: readonly Rule[] = [
  sourceMissing,
  sourceDoubled,
  drawUnstated,
  supplyFormMismatch,
  supplyReversed,
  supplyDrop,
  supplyTooHigh,
  supplyCollapse,
  dropOverAdvice,
  sourceOverload,
  classTwoExceeded,
  fuseOverWire,
  fuseUnderLoad,
  wireUnfused,
  runOverCurrent,
  mainsBeside,
];
