/** The summary above each bus; a click opens its figures. */
import type { CodeLens } from 'vscode-languageserver';
import type { Desk } from './desk.js';
import { summaryText } from './words.js';

export const showFiguresCommand = 'fieldpair.showFigures';

export function codeLenses(desk: Desk, file: string): CodeLens[] {
  if (!desk.settings.codeLens) return [];
  return desk.busesIn(file).map((found) => {
    const range = desk.rangeOf(found.bus.place);
    const title = summaryText(desk.studyOf(found));
    return { range, command: { title, command: showFiguresCommand, arguments: [file, range.start] } };
  });
}
