/** The landings as a table: the same in words as the plot shows in lines. */
import type { WavesTable } from '../../../../../server/src/protocol.js';
import { cellClass, figureNodes } from '../../page/figure.js';
import { make } from '../../page/make.js';

/** How surely a landing is read, as a shape, for those who see no colours. */
const marks = { sure: '\u2713', doubtful: '\u25b3', lost: '\u2715' } as const;

/** @param goTo is told of a landing that somebody wants to see in the text */
export function tableOf({ columns, rows, explained }: WavesTable, goTo: (name: string) => void): HTMLElement {
  const head = make('tr', {}, ...columns.map((name) => make('th', { scope: 'col' }, name)));
  const body = rows.map(({ cells, read }) => {
    const [name = '', verdict = '', ...rest] = cells;
    const mark = make('span', { className: 'mark' }, marks[read]);
    mark.setAttribute('aria-hidden', 'true');
    return make(
      'tr',
      { className: read },
      make(
        'th',
        { scope: 'row', className: cellClass(name) },
        make(
          'button',
          { type: 'button', className: 'link', title: 'Show it in the text', onclick: () => goTo(name) },
          name,
        ),
      ),
      make('td', { className: cellClass(verdict) }, mark, ` ${verdict}`),
      ...rest.map((cell) => make('td', { className: cellClass(cell) }, ...figureNodes(cell))),
    );
  });
  const table = make(
    'table',
    {},
    make('caption', { className: 'unseen' }, 'How each landing reads the signal'),
    make('thead', {}, head),
    make('tbody', {}, ...body),
  );
  // A table that does not fit is scrolled, with the keyboard too.
  const scrolled = make(
    'div',
    { className: 'figures', tabIndex: 0, role: 'region', ariaLabel: 'Figures of the landings' },
    table,
  );
  return make('div', {}, scrolled, make('p', { className: 'quiet' }, explained));
}
