/** The page of the waveform view. It shows what the server made and computes nothing. */
import type { WaveChoices, WavesPage } from '../../../../../server/src/protocol.js';
import { connect } from '../../page/connect.js';
import '../../page/theme.css';
import { make } from '../../page/make.js';
import type { FromWavesPage, ToWavesPage } from '../messages.js';
import { controls } from './controls.js';
import { plotView } from './plot.js';
import { tableOf } from './table.js';
import './waves.css';

const title = make('h1', {}, 'Waveforms');
const summary = make('p', { className: 'summary' });
summary.setAttribute('role', 'status');
const problems = make('ul', { className: 'problems', hidden: true });
problems.setAttribute('role', 'alert');
const plot = plotView((span) => choice.look(span));
const table = make('div');
const advice = make('ul', { className: 'advice' });
const advised = make('section', { hidden: true }, make('h2', {}, 'What this bus allows'), advice);
const notes = make('ul', { className: 'notes quiet' });
const choice = controls((choices) => extension.post({ choices }));
const keep = (format: 'svg' | 'csv', text: string) =>
  make('button', { type: 'button', className: 'keep', onclick: () => extension.post({ keep: format }) }, text);
const keeping = make(
  'div',
  { className: 'keeping' },
  keep('svg', 'Save picture\u2026'),
  keep('csv', 'Save samples\u2026'),
);
const content = make(
  'div',
  {},
  choice.element,
  summary,
  problems,
  plot.element,
  choice.landings,
  table,
  advised,
  notes,
  keeping,
);
const main = make('main', {}, title, content);
document.body.append(main);

function show(page: WavesPage | null, choices: WaveChoices): void {
  main.removeAttribute('aria-busy');
  content.hidden = !page;
  if (!page) {
    title.textContent = 'This file has no bus to show waveforms of.';
    return;
  }
  title.textContent = page.title;
  choice.show(page, choices);
  const written = page.unknown ?? page.summary?.written ?? '';
  summary.replaceChildren(
    ...(page.summary?.changed === undefined
      ? [written]
      : [
          make('strong', {}, 'As written: '),
          written,
          make('br'),
          make('strong', {}, 'Changed: '),
          page.summary.changed,
        ]),
  );
  problems.hidden = page.problems.length === 0;
  problems.replaceChildren(...page.problems.map((problem) => make('li', {}, problem)));
  plot.show(page.plot, new Map(page.landings.map(({ name, className }) => [name, className])));
  plot.element.hidden = keeping.hidden = choice.landings.hidden = page.plot === undefined;
  showTable(page.table);
  notes.replaceChildren(...page.notes.map((note) => make('li', {}, note)));
}

/** It comes after the waveforms, from more simulations; until then that of the text before stands. */
function showAdvice(sentences: readonly string[]): void {
  advised.hidden = sentences.length === 0;
  advice.replaceChildren(...sentences.map((sentence) => make('li', {}, sentence)));
}

let tableShown = '';
/** A table that has not changed stays, and with it the focus in it. */
function showTable(shown: WavesPage['table']): void {
  const content = JSON.stringify(shown ?? null);
  if (content === tableShown) return;
  tableShown = content;
  table.replaceChildren(...(shown ? [tableOf(shown, (name) => extension.post({ goTo: name }))] : []));
}

const extension = connect<ToWavesPage, FromWavesPage, never>(
  (message) => {
    if ('busy' in message) main.setAttribute('aria-busy', 'true');
    else if ('failure' in message) {
      main.removeAttribute('aria-busy');
      problems.hidden = false;
      problems.replaceChildren(make('li', {}, message.failure));
    } else if ('advice' in message) showAdvice(message.advice);
    else show(message.page, message.choices);
  },
  () => main.setAttribute('aria-busy', 'true'),
);

/** Room around the plot, in pixels. */
const margin = 40;
let told = '';
/** Tells what room there is; a bit more or less of it changes nothing. */
function tellSize(): void {
  const width = Math.max(420, Math.floor((document.documentElement.clientWidth - margin) / 20) * 20);
  const height = Math.max(260, Math.floor(Math.min(620, window.innerHeight * 0.58, width * 0.72) / 20) * 20);
  if (told === `${width} ${height}`) return;
  told = `${width} ${height}`;
  extension.post({ size: { width, height } });
}
let resized: number | undefined;
window.addEventListener('resize', () => {
  clearTimeout(resized);
  resized = setTimeout(tellSize, 100) as unknown as number;
});
tellSize();
