/** What can be folded: blocks and comments, as Langium finds them, and what is written under the heading of an area. */
import type { LangiumDocument } from 'langium';
import { DefaultFoldingRangeProvider, type FoldingRangeAcceptor, type LangiumServices } from 'langium/lsp';
import type { FoldingRange } from 'vscode-languageserver';
import { byAreas } from './areas.js';
import type { Desk } from './desk.js';

export class Folding extends DefaultFoldingRangeProvider {
  readonly #desk: Desk;

  constructor(services: LangiumServices, desk: Desk) {
    super(services);
    this.#desk = desk;
  }

  protected override collectFolding(document: LangiumDocument, acceptor: FoldingRangeAcceptor): void {
    super.collectFolding(document, acceptor);
    for (const fold of areaFolds(this.#desk, document.uri.toString())) acceptor(fold);
  }
}

/** From each heading of an area to the last run below it. */
export function areaFolds(desk: Desk, file: string): FoldingRange[] {
  const folds: FoldingRange[] = [];
  for (const declaration of desk.project.sourceOf(file)?.sheet.declarations ?? []) {
    for (const member of declaration.type === 'StoreDeclaration' ? declaration.members : []) {
      for (const group of member.type === 'BusDeclaration' ? byAreas(member.statements) : []) {
        if (!('area' in group)) continue;
        const { start, end } = desk.rangeOf({
          file,
          start: group.area.start,
          end: group.steps.at(-1)?.end ?? group.area.end,
        });
        if (start.line < end.line) folds.push({ startLine: start.line, endLine: end.line });
      }
    }
  }
  return folds;
}
