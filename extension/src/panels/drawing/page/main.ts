/** The drawing's page: puts its pieces together and passes on what the panel says. */
import { connect } from '../../page/connect.js';
import type { FromDrawingPage, KeptDrawing, ToDrawingPage } from '../messages.js';
import { Bar } from './bar.js';
import { Dragging } from './dragging.js';
import { element } from './elements.js';
import { Facts } from './facts.js';
import { Fit } from './fit.js';
import { Help } from './help.js';
import { listenToKeys } from './keys.js';
import { Menu } from './menu.js';
import { Stage } from './stage.js';
import { Walk } from './walk.js';
import '../../page/theme.css';
import './drawing.css';

/** The page's policy lets styles in that carry the nonce of its script. */
const nonce = document.currentScript?.nonce ?? '';

const voice = element('div', { class: 'voice', role: 'status', 'aria-live': 'polite' });
const description = element('div', { class: 'unseen', id: 'description' });
const nothing = element('p', { class: 'nothing', hidden: '' });
const stage = new Stage(nonce);
const say = (text: string) => {
  voice.textContent = text;
};
const extension = connect<ToDrawingPage, FromDrawingPage, KeptDrawing>(take, followed);
const walk = new Walk(stage, keep);
const facts = new Facts(stage, (key) => extension.post({ kind: 'facts', key }));
const menu = new Menu(stage, walk, extension.post);
const help = new Help();
const fit = new Fit(stage);
const bar = new Bar({
  zoomBy: (factor) => zoomed(() => stage.zoomBy(factor)),
  fit: toggleFit,
  scaled: askForLayout,
  search: (text, way) => {
    const found = stage.find(text);
    const key = walk.step(found, way);
    return key === undefined
      ? { at: 0, of: 0 }
      : { at: found.findIndex((part) => part.key === key) + 1, of: found.length };
  },
  leaveSearch: () => walk.focus(),
  help: () => help.toggle(),
});
new Dragging(stage, (key, after) => extension.post({ kind: 'move', key, ...(after !== undefined && { after }) }));

document.body.append(
  element('header', {}, [bar.element]),
  element('main', {}, [stage.element, nothing, description, voice]),
);
document.body.append(facts.element, facts.spoken, menu.element, help.element);
listenToKeys({ stage, walk, facts, menu, help, bar, post: extension.post, say, zoomed, toggleFit });
stage.element.addEventListener('click', ({ target, detail }) => {
  const key = stage.keyOf(target);
  if (key === undefined) return;
  walk.focus(key);
  extension.post({ kind: 'open', key, focus: 1 < detail });
});
stage.element.addEventListener('contextmenu', (event) => {
  const key = stage.keyOf(event.target);
  if (key === undefined) return;
  event.preventDefault();
  walk.focus(key);
  menu.open(key, event.button === 2 ? { x: event.clientX, y: event.clientY } : undefined);
});
stage.element.addEventListener('scroll', () => keep(), { passive: true });

// What was said stays until the reader goes on.
for (const event of ['pointerdown', 'keydown'] as const) {
  document.addEventListener(event, () => voice.replaceChildren(), { capture: true });
}

const kept = extension.kept();
if (kept) bar.scale = kept.scale;
let restoring = kept;
new ResizeObserver(() => {
  fit.renew();
  askForLayout();
}).observe(stage.element);

let width = 0;
let scale = false;

/** The drawing is laid out for the page's width at full size, or to be seen whole; zooming only enlarges it. */
function askForLayout(): void {
  const wanted = Math.max(360, Math.floor(fit.width));
  if (wanted === width && scale === bar.scale) return;
  width = wanted;
  scale = bar.scale;
  extension.post({ kind: 'layout', width, scale });
  keep();
}

function take(message: ToDrawingPage): void {
  switch (message.kind) {
    case 'drawing': {
      const { drawing } = message;
      nothing.hidden = true;
      stage.show(drawing);
      fit.apply();
      bar.zoom = stage.zoom;
      walk.renew();
      description.replaceChildren(...drawing.description.map((text) => element('p', {}, [text])));
      if (restoring) {
        stage.restore(restoring);
        walk.select(restoring.key);
        restoring = undefined;
        bar.zoom = stage.zoom;
      }
      return;
    }
    case 'nothing':
      stage.clear();
      nothing.textContent = message.reason;
      nothing.hidden = false;
      return;
    case 'here':
      stage.markHere(message.key);
      return;
    case 'facts':
      facts.tell(message.key, message.markdown);
      return;
    case 'fixes':
      menu.offer(message.key, message.titles);
      return;
    case 'say':
      say(message.text);
      return;
  }
}

/** Another text is another drawing: what was seen of the last one does not matter to it. */
function followed(): void {
  restoring = undefined;
  stage.restore({ zoom: stage.zoom, left: 0, top: 0 });
}

function toggleFit(): void {
  fit.toggle();
  bar.fitted = fit.isOn;
  bar.zoom = stage.zoom;
  askForLayout();
  keep();
}

function zoomed(change: () => void): void {
  fit.leave();
  change();
  bar.zoom = stage.zoom;
  keep();
}

function keep(): void {
  if (restoring) return;
  extension.keep({
    zoom: stage.zoom,
    scale: bar.scale,
    left: stage.element.scrollLeft,
    top: stage.element.scrollTop,
    key: walk.key,
  });
}
