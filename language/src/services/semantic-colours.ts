/** What each name stands for, as colours: only names, since everything else is coloured by the grammar of words. */
import type { SemanticTokens } from 'vscode-languageserver';
import { SemanticTokensBuilder } from 'vscode-languageserver';
import { type NameKind, type NameUse, samePlace } from '../build/source.js';
import type { Desk } from './desk.js';

/** Standard token types of the protocol, which every theme knows. */
const typeOf: Readonly<Record<NameKind, string>> = {
  store: 'namespace',
  network: 'namespace',
  area: 'enumMember',
  bus: 'function',
  device: 'class',
  cable: 'struct',
  node: 'variable',
  splice: 'variable',
  port: 'property',
  indicator: 'property',
  revision: 'enumMember',
};

export const colourTypes: Readonly<Record<string, number>> = Object.fromEntries(
  [...new Set(Object.values(typeOf))].map((type, index) => [type, index]),
);
export const colourModifiers: Readonly<Record<string, number>> = { declaration: 1 };

/** The colours of all names of a file that resolve, in the order of the text. */
export function semanticColours(desk: Desk, file: string): SemanticTokens {
  const builder = new SemanticTokensBuilder();
  let last = -1;
  for (const { kind, place, target } of inOrder(desk.project.usesOf(file))) {
    // A name can be noted twice: where its node is declared and where it is landed.
    if (place.start < last) continue;
    last = place.end;
    const { start, end } = desk.rangeOf(place);
    const modifiers = samePlace(place, target) ? (colourModifiers['declaration'] ?? 0) : 0;
    builder.push(
      start.line,
      start.character,
      end.character - start.character,
      colourTypes[typeOf[kind]] ?? 0,
      modifiers,
    );
  }
  return builder.build();
}

const inOrder = (uses: readonly NameUse[]) => uses.toSorted((left, right) => left.place.start - right.place.start);
