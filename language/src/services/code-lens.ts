/**
 * Above each store the way to its drawing; above each bus its summary, which opens its figures, and its waveforms where
 * its kind has any.
 */
import { hasWaves } from '@fieldpair/shared';
import type { CodeLens } from 'vscode-languageserver';
import type { Desk } from './desk.js';
import { summaryText } from './words.js';

export const showFiguresCommand = 'fieldpair.showFigures';
export const showWavesCommand = 'fieldpair.showWaves';
export const drawStoreCommand = 'fieldpair.drawStore';

export function codeLenses(desk: Desk, file: string): CodeLens[] {
  if (!desk.settings.codeLens) return [];
  const stores = desk.project.storesOf(file).flatMap(({ place }) => {
    if (place.file !== file) return [];
    const range = desk.rangeOf(place);
    return [
      { range, command: { title: 'Draw this store', command: drawStoreCommand, arguments: [file, range.start] } },
    ];
  });
  const buses = desk.busesIn(file).flatMap((found) => {
    const range = desk.rangeOf(found.bus.place);
    const lens = (title: string, command: string) => ({
      range,
      command: { title, command, arguments: [file, range.start] },
    });
    const summary = lens(summaryText(desk.studyOf(found)), showFiguresCommand);
    return hasWaves(found.bus) ? [summary, lens('Waveforms', showWavesCommand)] : [summary];
  });
  return [...stores, ...buses];
}
