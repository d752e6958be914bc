/** A landing while it is built. */
import type {
  ContactWiring,
  Landing,
  LandingIndex,
  LandingTermination,
  Place,
  Port,
  RunIndex,
  ShieldTreatment,
  Sourced,
  StoreNode,
  Visit,
} from '@fieldpair/shared';
import { none } from '../short-list.js';

type Writable<T> = { -readonly [Key in keyof T]: T[Key] };

/** Has all properties from the start, so that every landing is laid out alike and the rules read them fast. */
export class LandingDraft implements Writable<Landing> {
  node?: StoreNode;
  port?: Port;
  portPlace?: Place;
  splice?: string;
  visits: readonly Visit[] = none;
  address?: Sourced<number>;
  otherAddresses: readonly Sourced<number>[] = none;
  terminations: readonly LandingTermination[] = none;
  terminatorUnclear = false;
  switchRequested?: Place;
  missingSwitch?: Place;
  switchedOff?: Place;
  crossed?: Place;
  shield: ShieldTreatment = 'through';
  shieldPlace?: Place;
  area?: Sourced<string>;
  wiring?: ContactWiring;
  runs: readonly RunIndex[] = none;

  constructor(
    readonly index: LandingIndex,
    readonly name: string,
    readonly place: Place,
  ) {}
}
