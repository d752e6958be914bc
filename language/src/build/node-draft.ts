/** A node while its store is built. */
import type { Device, Place, Sourced, StoreNode } from '@fieldpair/shared';
import { none } from '../short-list.js';
import type { LandingDraft } from './landing-draft.js';

/** Has all properties from the start, so that every node is laid out alike and the rules read them fast. */
export class NodeDraft implements StoreNode {
  label?: string;
  documentation?: string;
  device?: Device;
  devicePlace?: Place;
  revision?: Sourced<string>;
  revisionPlace?: Place;
  #bus = -1;
  #landings: readonly LandingDraft[] = none;

  constructor(
    readonly name: string,
    readonly place: Place,
  ) {}

  /** Its landings on a bus that is being built, by the bus's number: a map for each bus would be asked as often. */
  landingsOn(bus: number): readonly LandingDraft[] {
    return this.#bus === bus ? this.#landings : none;
  }

  setLandingsOn(bus: number, landings: readonly LandingDraft[]): void {
    this.#bus = bus;
    this.#landings = landings;
  }
}
