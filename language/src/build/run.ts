/** One run: the cable that a statement pulls. */
import {
  type Amperes,
  amperes,
  type Cable,
  type LandingIndex,
  type Metres,
  metres,
  type Place,
  type Run,
  type RunIndex,
  type Sourced,
} from '@fieldpair/shared';
import type { RunOption, Run as RunTree } from '../generated/reader.js';
import type { Notes } from './notes.js';
import { quantityOf } from './quantities.js';
import type { CatalogueScope } from './scope.js';

/** Lengths as pull lists have them. */
const lengthUnits = ['ft', 'm', 'in'];

const none = metres(0);

/** Has all properties from the start, so that every run is laid out alike and the rules read them fast. */
export class RunDraft implements Run {
  to?: LandingIndex;
  lengthPlace: Place;
  length = none;
  planned = none;
  built?: Sourced<Metres>;
  cable?: Cable;
  cablePlace?: Place;
  cords?: NonNullable<Run['cords']>;
  spare = false;
  besideMains?: Place;
  fuse?: Sourced<Amperes>;

  constructor(
    readonly index: RunIndex,
    readonly from: LandingIndex,
    readonly place: Place,
    readonly tap: boolean,
  ) {
    this.lengthPlace = place;
  }
}

/** Reads what a statement says of its run; false where it gives no length. */
export function readRun(
  tree: RunTree,
  run: RunDraft,
  busCable: Cable | undefined,
  scope: CatalogueScope,
  notes: Notes,
): boolean {
  if (tree.length) run.lengthPlace = notes.between(tree.length.start, tree.length.end);
  const planned = quantityOf(tree.length, 'length', notes, positive, lengthUnits);
  if (planned !== undefined) {
    run.planned = metres(planned);
    run.length = run.planned;
  }
  // A run whose own cable is not known is not on the cable of the bus.
  if (busCable && (tree.options.length === 0 || !tree.options.some(isOnCable))) run.cable = busCable;
  for (const option of tree.options) {
    switch (option.type) {
      case 'OnCable': {
        if (!option.cable) break;
        run.cablePlace = notes.place(option.cable);
        const cable = scope.cable(option.cable, notes);
        if (cable) run.cable = cable;
        break;
      }
      case 'Built': {
        const built = quantityOf(option.length, 'length', notes, positive, lengthUnits);
        if (built === undefined) break;
        run.built = { value: metres(built), place: notes.place(option) };
        run.length = metres(built);
        break;
      }
      case 'Cords': {
        const length = quantityOf(option.length, 'length', notes, positive, lengthUnits);
        const cable = option.cable && scope.cable(option.cable, notes);
        if (length !== undefined)
          run.cords = { length: metres(length), place: notes.place(option), ...(cable && { cable }) };
        break;
      }
      case 'Spare':
        run.spare = true;
        break;
      case 'BesideMains':
        run.besideMains = notes.place(option);
        break;
      case 'Fuse': {
        const current = quantityOf(option.current, 'current', notes, { above: 0, to: 1000 }, ['A', 'mA']);
        if (current !== undefined) run.fuse = { value: amperes(current), place: notes.place(option) };
        break;
      }
    }
  }
  return planned !== undefined || run.built !== undefined;
}

const positive = { above: 0 };
const isOnCable = ({ type }: RunOption) => type === 'OnCable';
