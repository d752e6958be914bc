/** The keyboard. What it does is listed in `help.ts`. */
import type { FromDrawingPage, PagePart } from '../messages.js';
import type { Bar } from './bar.js';
import type { Facts } from './facts.js';
import { isOpen } from './findings.js';
import type { Help } from './help.js';
import type { Menu } from './menu.js';
import type { Stage } from './stage.js';
import type { Walk } from './walk.js';

export interface Listeners {
  readonly stage: Stage;
  readonly walk: Walk;
  readonly facts: Facts;
  readonly menu: Menu;
  readonly help: Help;
  readonly bar: Bar;
  readonly post: (message: FromDrawingPage) => void;
  readonly say: (text: string) => void;
  readonly zoomed: (change: () => void) => void;
  readonly toggleFit: () => void;
}

export function listenToKeys(listeners: Listeners): void {
  const { stage, menu, help } = listeners;
  document.addEventListener('keydown', (event) => {
    if (event.target instanceof HTMLInputElement || menu.isOpen || event.ctrlKey || event.metaKey) return;
    if (event.target instanceof HTMLButtonElement && (event.key === 'Enter' || event.key === ' ')) return;
    if (help.isOpen && event.key !== '?') {
      if (event.key === 'Escape') help.toggle();
      return;
    }
    if (press(event, listeners)) event.preventDefault();
  });
  stage.element.addEventListener(
    'wheel',
    (event) => {
      if (!event.ctrlKey && !event.metaKey) return;
      event.preventDefault();
      const factor = Math.exp(-event.deltaY / 300);
      listeners.zoomed(() => stage.zoomBy(factor, { x: event.clientX, y: event.clientY }));
    },
    { passive: false },
  );
}

/** Whether the key meant something here. */
function press(event: KeyboardEvent, listeners: Listeners): boolean {
  const { stage, walk, facts, menu, help, bar, post, zoomed, toggleFit } = listeners;
  const { key } = event;
  if (event.altKey) return moveByKey(key, listeners);
  const stands = (kind: PagePart['kind']) => stage.parts.filter((part) => part.kind === kind);
  switch (key) {
    case 'ArrowRight':
    case 'ArrowLeft':
      walk.step(event.shiftKey ? stage.parts : stands('landing'), key === 'ArrowRight' ? 1 : -1);
      return true;
    case 'ArrowDown':
    case 'ArrowUp':
      walk.step(
        stage.parts.filter((part) => part.key === part.group),
        key === 'ArrowDown' ? 1 : -1,
      );
      return true;
    case 'Home':
    case 'End':
      walk.focus(walk.landings().at(key === 'Home' ? 0 : -1)?.key);
      return true;
    case 'n':
    case 'N':
      walk.step(
        stage.parts.filter(({ findings }) => findings.some(isOpen)),
        key === 'n' ? 1 : -1,
      );
      return true;
    case 'Enter':
      if (walk.key !== undefined) post({ kind: 'open', key: walk.key, focus: true });
      return true;
    case ' ':
      facts.ask(walk.key);
      return true;
    case '.':
    case 'ContextMenu':
      if (walk.key !== undefined) menu.open(walk.key);
      return true;
    case 'F10':
      if (event.shiftKey && walk.key !== undefined) menu.open(walk.key);
      return event.shiftKey;
    case '+':
    case '=':
      zoomed(() => stage.zoomBy(1.25));
      return true;
    case '-':
      zoomed(() => stage.zoomBy(1 / 1.25));
      return true;
    case '0':
      toggleFit();
      return true;
    case 's':
      bar.toggleScale();
      return true;
    case '/':
      bar.toSearch();
      return true;
    case '?':
      help.toggle();
      return true;
    case 'Escape':
      facts.hide();
      return true;
    default:
      return false;
  }
}

/** Alt and an arrow carry a landing along its bus. */
function moveByKey(key: string, { walk, post, say }: Listeners): boolean {
  const way = key === 'ArrowRight' || key === 'ArrowDown' ? 1 : key === 'ArrowLeft' || key === 'ArrowUp' ? -1 : 0;
  const { part } = walk;
  if (!way) return false;
  if (part?.kind !== 'landing') {
    say('Go to a landing first; Alt and an arrow key move it along its bus.');
    return true;
  }
  const landings = walk.landings();
  const now = landings.indexOf(part);
  const others = landings.filter((one) => one !== part);
  const place = now + way;
  if (place < 0 || others.length < place) {
    say(`${part.landing} is ${way < 0 ? 'the first' : 'the last'} of its bus.`);
    return true;
  }
  const after = others[place - 1]?.key;
  post({ kind: 'move', key: part.key, ...(after !== undefined && { after }) });
  return true;
}
