/** Dragging: a landing to another place of its bus, or the paper under the view. */
import type { PagePart } from '../messages.js';
import { element } from './elements.js';
import type { Stage } from './stage.js';

/** Fewer pixels than these are a click with an unsteady hand. */
const least = 6;

/** Where a landing would go: behind one of the others, or before all. */
interface Target {
  readonly after: string | undefined;
  readonly x: number;
  readonly top: number;
  readonly height: number;
}

export class Dragging {
  readonly #stage: Stage;
  readonly #move: (key: string, after: string | undefined) => void;
  readonly #mark = element('div', { class: 'drop', hidden: '' });
  readonly #carried = element('div', { class: 'carried', hidden: '' });

  constructor(stage: Stage, move: (key: string, after: string | undefined) => void) {
    this.#stage = stage;
    this.#move = move;
    document.body.append(this.#mark, this.#carried);
    stage.element.addEventListener('pointerdown', (event) => {
      if (event.button !== 0) return;
      const part = stage.partOf(stage.keyOf(event.target));
      if (part?.kind === 'landing')
        this.#drag(
          event,
          (now) => this.#aim(part, now),
          () => this.#drop(part),
        );
      else if (!part) this.#pan(event);
    });
  }

  #target: Target | undefined;

  /** Follows the pointer until it is let go; a click that ends a drag means nothing. */
  #drag(start: PointerEvent, moved: (now: PointerEvent) => void, ended: () => void): void {
    const { element: view } = this.#stage;
    let hasMoved = false;
    const end = (done: boolean) => {
      view.removeEventListener('pointermove', move);
      view.removeEventListener('pointerup', up);
      view.removeEventListener('pointercancel', cancel);
      document.removeEventListener('keydown', key, true);
      if (!hasMoved) return;
      if (view.hasPointerCapture(start.pointerId)) view.releasePointerCapture(start.pointerId);
      document.body.classList.remove('dragging');
      if (done) ended();
      this.#clear();
      // The click comes right behind the pointer's end, or not at all.
      const swallow = (event: Event) => event.stopPropagation();
      view.addEventListener('click', swallow, { capture: true, once: true });
      window.setTimeout(() => view.removeEventListener('click', swallow, { capture: true }), 0);
    };
    const move = (now: PointerEvent) => {
      if (!hasMoved && Math.hypot(now.clientX - start.clientX, now.clientY - start.clientY) < least) return;
      if (!hasMoved) {
        hasMoved = true;
        view.setPointerCapture(start.pointerId);
        document.body.classList.add('dragging');
      }
      moved(now);
    };
    const up = () => end(true);
    const cancel = () => end(false);
    const key = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      event.stopPropagation();
      end(false);
    };
    view.addEventListener('pointermove', move);
    view.addEventListener('pointerup', up);
    view.addEventListener('pointercancel', cancel);
    document.addEventListener('keydown', key, true);
  }

  #pan(start: PointerEvent): void {
    const { element: view } = this.#stage;
    const { scrollLeft, scrollTop } = view;
    this.#drag(
      start,
      (now) => view.scrollTo(scrollLeft - now.clientX + start.clientX, scrollTop - now.clientY + start.clientY),
      () => undefined,
    );
  }

  #aim(part: PagePart, { clientX, clientY }: PointerEvent): void {
    this.#target = this.#targetAt(part, clientX, clientY);
    const { style } = this.#carried;
    this.#carried.textContent = part.landing ?? '';
    this.#carried.hidden = false;
    style.left = `${clientX + 12}px`;
    style.top = `${clientY + 12}px`;
    this.#mark.hidden = !this.#target;
    if (!this.#target) return;
    this.#mark.style.left = `${this.#target.x}px`;
    this.#mark.style.top = `${this.#target.top}px`;
    this.#mark.style.height = `${this.#target.height}px`;
  }

  /** At the side of the nearest other landing of the bus that the pointer is on. */
  #targetAt(part: PagePart, x: number, y: number): Target | undefined {
    const others = this.#stage.parts.filter(
      ({ kind, group, key }) => kind === 'landing' && group === part.group && key !== part.key,
    );
    let nearest: { index: number; box: DOMRect; distance: number } | undefined;
    for (const [index, { key }] of others.entries()) {
      const box = this.#stage.elementOf(key)?.getBoundingClientRect();
      if (!box) continue;
      // Rows are told apart before places in a row.
      const away = Math.max(0, box.top - y, y - box.bottom) * 4;
      const distance = Math.abs(x - (box.left + box.right) / 2) + away;
      if (!nearest || distance < nearest.distance) nearest = { index, box, distance };
    }
    if (!nearest) return undefined;
    const { index, box } = nearest;
    const isBehind = (box.left + box.right) / 2 < x;
    const after = isBehind ? others[index]?.key : others[index - 1]?.key;
    return { after, x: isBehind ? box.right + 3 : box.left - 6, top: box.top, height: box.height };
  }

  #drop(part: PagePart): void {
    if (this.#target) this.#move(part.key, this.#target.after);
  }

  #clear(): void {
    this.#target = undefined;
    this.#mark.hidden = true;
    this.#carried.hidden = true;
  }
}
