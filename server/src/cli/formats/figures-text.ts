/** Figures for people, bus by bus: the pages that the editor shows. */
import { busPage } from '@fieldpair/shared';
import { painter } from '../terminal.js';
import type { FiguresFormat } from './format.js';

export const figuresText: FiguresFormat = (stores, { colour }) => {
  const paint = painter(colour);
  const pages = stores.flatMap(({ studies }) => studies.map(busPage));
  if (pages.length === 0) return 'There is no bus in these files.\n';
  return `${pages.map(({ heading, lines }) => [paint('bold', heading), '', ...lines, ''].join('\n')).join('\n')}`;
};
