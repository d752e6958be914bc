/** Definition, references, highlights and renaming: all from the uses of names that building notes down. */
import {
  type DocumentHighlight,
  DocumentHighlightKind,
  type Location,
  type Position,
  type Range,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import { type NameUse, samePlace } from '../build/source.js';
import { nameText } from '../build/suggest.js';
import type { Desk } from './desk.js';

export function definition(desk: Desk, file: string, position: Position): Location | undefined {
  const use = useUnder(desk, file, position);
  return use && desk.locationOf(use.target);
}

export function references(desk: Desk, file: string, position: Position, withDeclaration: boolean): Location[] {
  const use = useUnder(desk, file, position);
  if (!use) return [];
  const mentions = mentionsOf(desk, file, use);
  const shown = withDeclaration ? mentions : mentions.filter(({ place, target }) => !samePlace(place, target));
  return shown.map(({ place }) => desk.locationOf(place));
}

export function highlights(desk: Desk, file: string, position: Position): DocumentHighlight[] {
  const use = useUnder(desk, file, position);
  if (!use) return [];
  const here = desk.project.usesOf(file).filter((one) => meansTheSame(one, use));
  return here.map(({ place, target }) => ({
    range: desk.rangeOf(place),
    kind: samePlace(place, target) ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
  }));
}

/** The stretch that a rename would replace; undefined where nothing can be renamed. */
export function prepareRename(desk: Desk, file: string, position: Position): Range | undefined {
  const use = useUnder(desk, file, position);
  return use && renameable(use) ? desk.rangeOf(use.place) : undefined;
}

/** Renames in every file that mentions the name. A new name that needs quotes gets them. */
export function rename(desk: Desk, file: string, position: Position, newName: string): WorkspaceEdit | undefined {
  const use = useUnder(desk, file, position);
  const name = newName.trim();
  if (!use || !renameable(use) || name === '') return undefined;
  const newText = nameText(/^".*"$/.test(name) ? name.slice(1, -1) : name);
  const changes: NonNullable<WorkspaceEdit['changes']> = {};
  for (const { place } of mentionsOf(desk, file, use)) {
    changes[place.file] ??= [];
    changes[place.file]?.push({ range: desk.rangeOf(place), newText });
  }
  return { changes };
}

/** The revision of hardware is a fact printed on it, whose mentions point at the device as a whole. */
const renameable = ({ kind }: NameUse): boolean => kind !== 'revision';

const useUnder = (desk: Desk, file: string, position: Position) => desk.useAt(file, desk.offsetOf(file, position));

const meansTheSame = (one: NameUse, other: NameUse) =>
  one.kind === other.kind && one.name === other.name && samePlace(one.target, other.target);

/** Every mention of what a use means, in all files that can see its declaration. */
function mentionsOf(desk: Desk, file: string, use: NameUse): NameUse[] {
  const files = new Set([use.target.file, ...desk.project.dependents(use.target.file), file]);
  return [...files].sort().flatMap((one) => desk.project.usesOf(one).filter((other) => meansTheSame(other, use)));
}
