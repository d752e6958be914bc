/** A table that is patched in place: cells that say the same as before stay, and with them the focus and the scrolling. */
import { cellClass } from '../../page/figure.js';
import { make } from '../../page/make.js';
import type { GridCell } from './cells.js';

export interface GridColumn {
  readonly title: string;
  readonly meaning?: string;
}

export class Grid {
  readonly element: HTMLTableElement;
  readonly #head = make('thead');
  readonly #body = make('tbody');
  /** The keys of the cells, row by row. */
  #shown: string[][] = [];
  #columns = '';

  /** @param caption for those who hear the table */
  constructor(caption: string) {
    this.element = make('table', {}, make('caption', { className: 'unseen' }, caption), this.#head, this.#body);
  }

  /** The first cell of each row names it. Without columns there is no head. */
  show(columns: readonly GridColumn[] | undefined, rows: readonly (readonly GridCell[])[]): void {
    const titles = JSON.stringify(columns ?? null);
    if (titles !== this.#columns) {
      this.#columns = titles;
      this.#shown = [];
      this.#body.replaceChildren();
      const heads = columns?.map(({ title, meaning = '' }) => make('th', { scope: 'col', title: meaning }, title));
      this.#head.replaceChildren(...(heads ? [make('tr', {}, ...heads)] : []));
    }
    while (rows.length < this.#body.rows.length) this.#body.deleteRow(-1);
    for (const [index, cells] of rows.entries()) {
      const row = this.#body.rows[index] ?? this.#body.insertRow();
      const before = this.#shown[index] ?? [];
      for (const [column, { key, content }] of cells.entries()) {
        let cell = row.cells[column];
        if (!cell) {
          cell = column === 0 ? make('th', { scope: 'row' }) : make('td');
          row.append(cell);
        } else if (before[column] === key) continue;
        cell.className = cellClass(key);
        cell.replaceChildren(...content());
      }
    }
    this.#shown = rows.map((cells) => cells.map(({ key }) => key));
  }
}
