import type { Rule } from '../rule.js';
import { cordsTooLong } from './cords-too-long.js';
import { jackShared } from './jack-shared.js';
import { linkWithoutDevice } from './link-without-device.js';
import { runTooLong } from './run-too-long.js';

/** Ethernet: every run is a link of its own. */
export const linkRules: readonly Rule[] = [runTooLong, cordsTooLong, jackShared, linkWithoutDevice];
