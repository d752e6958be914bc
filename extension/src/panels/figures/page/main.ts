/** The page of figures. It shows what the server made and computes nothing. */
import { connect } from '../../page/connect.js';
import { make } from '../../page/make.js';
import '../../page/theme.css';
import type { FromFiguresPage, PageFigures, ToFiguresPage } from '../messages.js';
import './figures.css';
import { figureCell, plainCell } from './cells.js';
import { Grid } from './grid.js';

const title = make('h1', {}, 'Figures');
const facts = new Grid('Figures of the bus');
const limits = new Grid('Figures beside their limits');
const landings = new Grid('Figures of the landings');
landings.element.classList.add('landings');
const limitsTitle = make('h2', {}, 'Against its limits');
const landingsTitle = make('h2', {}, 'At each landing');
const unknown = make('ul', { className: 'unknown' });
const meanings = make('ul', { className: 'quiet' });
const content = make(
  'div',
  { hidden: true },
  facts.element,
  limitsTitle,
  limits.element,
  landingsTitle,
  landings.element,
  unknown,
  meanings,
);
document.body.append(make('main', {}, title, content));

function show(figures: PageFigures): void {
  content.hidden = false;
  title.textContent = figures.heading;
  facts.show(
    undefined,
    figures.facts.map(([name, value]) => [plainCell(name), figureCell(value)]),
  );
  limitsTitle.hidden = limits.element.hidden = figures.limits.length === 0;
  limits.show(
    ['figure', 'value', 'limit', 'used', 'set by'].map((head) => ({ title: head })),
    figures.limits.map(({ what, value, limit, used, document }) => [what, value, limit, used, document].map(plainCell)),
  );
  landings.show(
    figures.columns,
    figures.rows.map(({ cells: [name = '', ...others] }, row) => [
      { key: name, content: () => [landingButton(name, row)] },
      ...others.map(figureCell),
    ]),
  );
  setList(unknown, figures.unknown);
  setList(
    meanings,
    figures.columns.flatMap((one) => (one.meaning === undefined ? [] : [`${one.title}: ${one.meaning}`])),
  );
}

const landingButton = (name: string, row: number) =>
  make('button', { type: 'button', title: 'Show it in the text', onclick: () => extension.post({ goTo: row }) }, name);

function setList(list: HTMLUListElement, texts: readonly string[]): void {
  list.hidden = texts.length === 0;
  if ([...list.children].map(({ textContent }) => textContent).join('\n') === texts.join('\n')) return;
  list.replaceChildren(...texts.map((text) => make('li', {}, text)));
}

const extension = connect<ToFiguresPage, FromFiguresPage, never>(
  (message) => {
    if ('figures' in message) return show(message.figures);
    content.hidden = true;
    title.textContent = message.nothing;
  },
  () => undefined,
);
