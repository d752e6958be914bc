/** Imports as links to the files that they name. */
import type { DocumentLink } from 'vscode-languageserver';
import type { Desk } from './desk.js';

export function links(desk: Desk, file: string): DocumentLink[] {
  return desk.project
    .importsOf(file)
    .flatMap(({ target, place }) => (target === undefined ? [] : [{ range: desk.rangeOf(place), target }]));
}
