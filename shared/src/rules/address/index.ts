/** Addresses, and the ports that a bus lands on. */
import type { Rule } from '../rule.js';
import { addressClash } from './address-clash.js';
import { addressMissing } from './address-missing.js';
import { addressNotSettable } from './address-not-settable.js';
import { addressOutOfRange } from './address-out-of-range.js';
import { addressReserved } from './address-reserved.js';
import { portKindMismatch } from './port-kind-mismatch.js';
import { portReserved } from './port-reserved.js';
import { portTaken } from './port-taken.js';
import { portUnstated } from './port-unstated.js';
import { portWrongTwin } from './port-wrong-twin.js';
import { rateMismatch } from './rate-mismatch.js';

export const addressRules: readonly Rule[] = [
  addressMissing,
  addressClash,
  addressOutOfRange,
  addressReserved,
  addressNotSettable,
  portKindMismatch,
  portReserved,
  portWrongTwin,
  portTaken,
  portUnstated,
  rateMismatch,
];
