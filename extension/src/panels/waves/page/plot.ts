/** The plot that the server drew, and a cursor over it that reads the lines out, for mouse and keyboard. */
import type { WavesCursor, WavesPlot } from '../../../../../server/src/protocol.js';
import { make } from './dom.js';

export interface PlotView {
  readonly element: HTMLElement;
  show(plot: WavesPlot | undefined, classNames: ReadonlyMap<string, string>): void;
}

/** Steps of the cursor with a large step key, as a share of the plot. */
const largeStep = 1 / 20;

export function plotView(): PlotView {
  const picture = make('div', { className: 'picture' });
  const line = make('div', { className: 'cursor', hidden: true });
  const readout = make('div', { className: 'readout', hidden: true });
  const element = make('div', { className: 'plot' }, picture, line, readout);
  let cursor: WavesCursor | undefined;
  let classes: ReadonlyMap<string, string> = new Map();
  /** Which of the cursor's times it stands at; undefined while there is none. */
  let at: number | undefined;

  const volts = (value: number | null | undefined) =>
    value === null || value === undefined ? '\u2013' : `${value.toFixed(3)} V`.replace('-', '\u2212');
  const place = () => {
    line.hidden = readout.hidden = !cursor || at === undefined;
    element.tabIndex = cursor ? 0 : -1;
    if (!cursor) {
      for (const name of ['role', 'aria-label', 'aria-valuemin', 'aria-valuemax', 'aria-valuenow', 'aria-valuetext'])
        element.removeAttribute(name);
      return;
    }
    const last = cursor.times.length - 1;
    element.setAttribute('role', 'slider');
    element.setAttribute('aria-label', 'Cursor over time');
    element.setAttribute('aria-valuemin', '0');
    element.setAttribute('aria-valuemax', String(last));
    element.setAttribute('aria-valuenow', String(at ?? 0));
    if (at === undefined) {
      element.setAttribute('aria-valuetext', 'no reading; arrow keys move the cursor');
      return;
    }
    const now = Math.min(at, last);
    const x = cursor.left + ((cursor.right - cursor.left) * now) / last;
    line.style.left = `${x}px`;
    line.style.top = `${cursor.top}px`;
    line.style.height = `${cursor.bottom - cursor.top}px`;
    const rows = cursor.lines.map(({ name, volts: levels, changed }) => ({
      name,
      level: volts(levels[now]),
      changed: changed && volts(changed[now]),
    }));
    element.setAttribute(
      'aria-valuetext',
      [
        cursor.times[now],
        ...rows.map(
          ({ name, level, changed }) => `${name} ${level}${changed === undefined ? '' : `, changed ${changed}`}`,
        ),
      ].join('; '),
    );
    readout.replaceChildren(
      make('div', { className: 'time' }, cursor.times[now] ?? ''),
      ...rows.map(({ name, level, changed }) =>
        make(
          'div',
          { className: 'row' },
          make('span', { className: `swatch ${classes.get(name) ?? ''}` }),
          make('span', { className: 'name' }, name),
          make('span', { className: 'level' }, level),
          ...(changed === undefined ? [] : [make('span', { className: 'level changed' }, changed)]),
        ),
      ),
    );
    // On the side of the cursor that has more room.
    const middle = (cursor.left + cursor.right) / 2;
    readout.style.top = `${cursor.top + 8}px`;
    readout.style.left = x < middle ? `${x + 10}px` : 'auto';
    readout.style.right = x < middle ? 'auto' : `calc(100% - ${x - 10}px)`;
  };
  const move = (to: number) => {
    if (!cursor) return;
    at = Math.min(cursor.times.length - 1, Math.max(0, Math.round(to)));
    place();
  };

  element.addEventListener('mousemove', (event) => {
    if (!cursor) return;
    const x = event.clientX - element.getBoundingClientRect().left;
    if (x < cursor.left - 4 || cursor.right + 4 < x) return;
    move(((x - cursor.left) / (cursor.right - cursor.left)) * (cursor.times.length - 1));
  });
  element.addEventListener('mouseleave', () => {
    if (document.activeElement === element) return;
    at = undefined;
    place();
  });
  element.addEventListener('keydown', (event) => {
    if (!cursor) return;
    const last = cursor.times.length - 1;
    const large = Math.max(1, Math.round(last * largeStep));
    const from = at ?? 0;
    const step = event.shiftKey ? large : 1;
    const moves: Readonly<Record<string, number>> = {
      ArrowRight: from + step,
      ArrowUp: from + step,
      ArrowLeft: from - step,
      ArrowDown: from - step,
      PageUp: from + large,
      PageDown: from - large,
      Home: 0,
      End: last,
    };
    const to = moves[event.key];
    if (to === undefined && event.key !== 'Escape') return;
    event.preventDefault();
    if (to === undefined) {
      at = undefined;
      place();
    } else move(to);
  });

  return {
    element,
    show(plot, classNames) {
      classes = classNames;
      cursor = plot?.cursor;
      const drawn = plot && new DOMParser().parseFromString(plot.svg, 'image/svg+xml').documentElement;
      picture.replaceChildren(...(drawn ? [document.importNode(drawn, true)] : []));
      place();
    },
  };
}
