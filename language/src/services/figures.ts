/** The page of a bus's figures: plain text for a fixed-width font. */
import { busPage } from '@fieldpair/shared';
import type { Position } from 'vscode-languageserver';
import type { Desk } from './desk.js';

export interface FiguresPage {
  readonly title: string;
  readonly text: string;
}

export function figuresPage(desk: Desk, file: string, position: Position): FiguresPage | undefined {
  const found = desk.busAt(file, desk.offsetOf(file, position));
  if (!found) return undefined;
  const { heading, lines } = busPage(desk.studyOf(found));
  return { title: `${found.store.name}, bus ${found.bus.name}`, text: `${[heading, '', ...lines].join('\n')}\n` };
}
