/** Definition, references and highlights: all from the uses of names that building notes down. */
import { type DocumentHighlight, DocumentHighlightKind, type Location, type Position } from 'vscode-languageserver';
import { type NameUse, samePlace } from '../build/source.js';
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

/** The mention of a name under a position. */
export const useUnder = (desk: Desk, file: string, position: Position) =>
  desk.useAt(file, desk.offsetOf(file, position));

const meansTheSame = (one: NameUse, other: NameUse) =>
  one.kind === other.kind && one.name === other.name && samePlace(one.target, other.target);

/** Every mention of what a use means, in all files that can see its declaration. */
export function mentionsOf(desk: Desk, file: string, use: NameUse): NameUse[] {
  desk.project.digestAll();
  const files = new Set([use.target.file, ...desk.project.dependents(use.target.file), file]);
  return [...files].sort().flatMap((one) => desk.project.usesOf(one).filter((other) => meansTheSame(other, use)));
}
