/** The plot that the server drew, a cursor over it that reads the lines out, and a way nearer; for mouse and keyboard. */
import type { WavesCursor, WavesPlot } from '../../../../../server/src/protocol.js';
import { make } from '../../page/make.js';
import { momentAt, type Span, scaledAround, shareOf, shifted } from '../span.js';
import { readoutRows, readoutText } from './readout.js';

export interface PlotView {
  readonly element: HTMLElement;
  show(plot: WavesPlot | undefined, classNames: ReadonlyMap<string, string>): void;
}

/** Steps of the cursor with a large step key, as a share of the plot. */
const largeStep = 1 / 20;
/** How much nearer one step leads, and how far the plot moves when the cursor leaves it. */
const nearer = 1 / 2;
const move = 1 / 4;
/** A stretch that is drawn over with the mouse is wider than this, in pixels. */
const leastStretch = 6;

/** @param look is told which span to draw, or undefined for all */
export function plotView(look: (span: Span | undefined) => void): PlotView {
  const picture = make('div', { className: 'picture' });
  const line = make('div', { className: 'cursor', hidden: true });
  const stretch = make('div', { className: 'stretch', hidden: true });
  const readout = make('div', { className: 'readout', hidden: true });
  const area = make('div', { className: 'area' }, picture, stretch, line, readout);
  const button = (text: string, title: string, onclick: () => void) =>
    make('button', { type: 'button', title, onclick }, text);
  const all = button('All', 'Show all of the time (0)', () => look(undefined));
  const zoom = make(
    'div',
    { className: 'zoom', role: 'group', ariaLabel: 'Part of the time' },
    button('Nearer', 'Show less of the time, larger (+), or draw over a stretch', () => scale(nearer)),
    button('Farther', 'Show more of the time (\u2212)', () => scale(1 / nearer)),
    all,
  );
  const element = make('div', { className: 'plot' }, area, zoom);
  let cursor: WavesCursor | undefined;
  let classes: ReadonlyMap<string, string> = new Map();
  /** The moment that the cursor stands at, in seconds; undefined while there is none. */
  let at: number | undefined;
  /** Where the mouse was pressed, in pixels. */
  let pressed: number | undefined;

  const spanOf = ({ from, to }: WavesCursor): Span => [from, to];
  const scale = (factor: number) => {
    if (!cursor) return;
    const span = spanOf(cursor);
    look(scaledAround(span, at ?? momentAt(span, 0.5), factor));
  };
  const place = () => {
    zoom.hidden = !cursor;
    all.disabled = cursor?.whole ?? true;
    line.hidden = readout.hidden = !cursor || at === undefined;
    area.tabIndex = cursor ? 0 : -1;
    if (!cursor) {
      for (const name of ['role', 'aria-label', 'aria-valuemin', 'aria-valuemax', 'aria-valuenow', 'aria-valuetext'])
        area.removeAttribute(name);
      return;
    }
    const last = cursor.times.length - 1;
    const share = at === undefined ? 0 : Math.min(1, Math.max(0, shareOf(spanOf(cursor), at)));
    const index = Math.round(share * last);
    area.setAttribute('role', 'slider');
    area.setAttribute('aria-label', 'Cursor over time');
    area.setAttribute('aria-valuemin', '0');
    area.setAttribute('aria-valuemax', String(last));
    area.setAttribute('aria-valuenow', String(index));
    if (at === undefined) {
      area.setAttribute('aria-valuetext', 'no reading; arrow keys move the cursor, plus and minus show less or more');
      return;
    }
    area.setAttribute('aria-valuetext', readoutText(cursor, index));
    readout.replaceChildren(...readoutRows(cursor, index, classes));
    const x = cursor.left + (cursor.right - cursor.left) * share;
    Object.assign(line.style, { left: `${x}px`, top: `${cursor.top}px`, height: `${cursor.bottom - cursor.top}px` });
    // On the side of the cursor that has more room.
    const isLeft = share < 0.5;
    readout.style.top = `${cursor.top + 8}px`;
    readout.style.left = isLeft ? `${x + 10}px` : 'auto';
    readout.style.right = isLeft ? 'auto' : `calc(100% - ${x - 10}px)`;
  };
  const moveTo = (moment: number | undefined) => {
    at = moment;
    place();
  };
  /** Moves the cursor by columns of the plot; past its ends, the plot follows. */
  const step = (columns: number) => {
    if (!cursor) return;
    const span = spanOf(cursor);
    const share = (at === undefined ? 0 : shareOf(span, at)) + columns / (cursor.times.length - 1);
    if (!cursor.whole && (share < -1e-9 || 1 + 1e-9 < share)) look(shifted(span, Math.sign(columns) * move));
    moveTo(momentAt(span, Math.min(1, Math.max(0, share))));
  };
  /** The moment under the mouse; undefined beside the frame. */
  const momentOf = ({ clientX }: MouseEvent, within = 4): number | undefined => {
    if (!cursor) return undefined;
    const x = clientX - area.getBoundingClientRect().left;
    if (x < cursor.left - within || cursor.right + within < x) return undefined;
    return momentAt(spanOf(cursor), Math.min(1, Math.max(0, (x - cursor.left) / (cursor.right - cursor.left))));
  };
  const showStretch = (from: number, to: number) => {
    if (!cursor) return;
    const left = area.getBoundingClientRect().left;
    stretch.hidden = Math.abs(to - from) < leastStretch;
    Object.assign(stretch.style, {
      left: `${Math.max(cursor.left, Math.min(from, to) - left)}px`,
      width: `${Math.abs(to - from)}px`,
      top: `${cursor.top}px`,
      height: `${cursor.bottom - cursor.top}px`,
    });
  };

  area.addEventListener('pointermove', (event) => {
    const moment = momentOf(event);
    if (moment !== undefined) moveTo(moment);
    if (pressed !== undefined) showStretch(pressed, event.clientX);
  });
  area.addEventListener('pointerdown', (event) => {
    if (event.button === 0 && momentOf(event) !== undefined) pressed = event.clientX;
  });
  area.addEventListener('pointerup', (event) => {
    const [from, to] = [pressed, event.clientX];
    pressed = undefined;
    stretch.hidden = true;
    if (from === undefined || Math.abs(to - from) < leastStretch) return;
    const ends = [Math.min(from, to), Math.max(from, to)].map((clientX) =>
      momentOf({ clientX } as MouseEvent, Number.POSITIVE_INFINITY),
    );
    if (ends[0] !== undefined && ends[1] !== undefined) look([ends[0], ends[1]]);
  });
  area.addEventListener('dblclick', () => look(undefined));
  area.addEventListener('pointerleave', () => {
    pressed = undefined;
    stretch.hidden = true;
    if (document.activeElement !== area) moveTo(undefined);
  });
  area.addEventListener('keydown', (event) => {
    if (!cursor || event.ctrlKey || event.metaKey || event.altKey) return;
    const large = Math.max(1, Math.round(cursor.times.length * largeStep));
    const small = event.shiftKey ? large : 1;
    const span = spanOf(cursor);
    const keys: Readonly<Record<string, () => void>> = {
      ArrowRight: () => step(small),
      ArrowUp: () => step(small),
      ArrowLeft: () => step(-small),
      ArrowDown: () => step(-small),
      PageUp: () => step(large),
      PageDown: () => step(-large),
      Home: () => moveTo(span[0]),
      End: () => moveTo(span[1]),
      Escape: () => moveTo(undefined),
      '+': () => scale(nearer),
      '=': () => scale(nearer),
      '-': () => scale(1 / nearer),
      '0': () => look(undefined),
    };
    const run = keys[event.key];
    if (!run) return;
    event.preventDefault();
    run();
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
