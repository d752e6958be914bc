/** The figures of the bus at a place, for an editor that shows them beside the text. */
import { type BusSheet, busSheet } from '@fieldpair/shared';
import type { Location, Position } from 'vscode-languageserver';
import type { Desk } from './desk.js';

export interface FiguresPage extends Omit<BusSheet, 'rows'> {
  /** `northgate, bus cases`. */
  readonly title: string;
  /** A row for each landing, and where it is written. */
  readonly rows: readonly { readonly cells: readonly string[]; readonly at: Location }[];
}

export function figuresPage(desk: Desk, file: string, position: Position): FiguresPage | undefined {
  const found = desk.busAt(file, desk.offsetOf(file, position));
  if (!found) return undefined;
  const { store, bus } = found;
  const { rows, ...sheet } = busSheet(desk.studyOf(found));
  return {
    ...sheet,
    title: `${store.name}, bus ${bus.name}`,
    rows: rows.map(({ landing, cells }) => {
      const { visits, place } = bus.landings[landing]!;
      return { cells, at: desk.locationOf(visits[0]?.referencePlace ?? place) };
    }),
  };
}
