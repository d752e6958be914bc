/** The menu of a part: the fixes of its findings, and what else can be done with it. */
import type { FromDrawingPage } from '../messages.js';
import { element } from './elements.js';
import { isOpen } from './findings.js';
import type { Stage } from './stage.js';
import type { Walk } from './walk.js';

interface Item {
  readonly title: string;
  readonly run: () => void;
}

export class Menu {
  readonly element = element('div', { class: 'menu', role: 'menu', 'aria-label': 'What to do with it', hidden: '' });
  readonly #stage: Stage;
  readonly #walk: Walk;
  readonly #post: (message: FromDrawingPage) => void;
  #key: string | undefined;
  #at = { x: 0, y: 0 };
  #items: readonly Item[] = [];

  constructor(stage: Stage, walk: Walk, post: (message: FromDrawingPage) => void) {
    this.#stage = stage;
    this.#walk = walk;
    this.#post = post;
    this.element.addEventListener('keydown', (event) => {
      this.#press(event.key);
      event.preventDefault();
      event.stopPropagation();
    });
    this.element.addEventListener('focusout', ({ relatedTarget }) => {
      if (!(relatedTarget instanceof Node && this.element.contains(relatedTarget))) this.element.hidden = true;
    });
    stage.element.addEventListener('scroll', () => this.close(), { passive: true });
  }

  get isOpen(): boolean {
    return !this.element.hidden;
  }

  /** Opens the menu of a part, where the pointer is or at the part. */
  open(key: string, at?: { readonly x: number; readonly y: number }): void {
    const box = this.#stage.elementOf(key)?.getBoundingClientRect();
    if (!box) return;
    this.#key = key;
    const hasFindings = this.#stage.partOf(key)?.findings.some(isOpen) ?? false;
    this.#show(hasFindings ? [{ title: 'Looking for what mends it\u2026', run: () => undefined }] : this.#always(key));
    this.#at = at ?? { x: box.left + 12, y: box.bottom };
    this.#place();
    if (hasFindings) this.#post({ kind: 'fixes', key });
  }

  /** The titles of the fixes have come. */
  offer(key: string, titles: readonly string[]): void {
    if (!this.isOpen || key !== this.#key) return;
    const fixes = titles.map((title) => ({ title, run: () => this.#post({ kind: 'fix', key, title }) }));
    this.#show([...fixes, ...this.#always(key)]);
    this.#place();
  }

  /** As near to where it belongs as the page has room for all of it. */
  #place(): void {
    const { style } = this.element;
    // At the left side it is as wide as it wants to be.
    style.left = '0';
    style.left = `${Math.max(0, Math.min(this.#at.x, innerWidth - this.element.offsetWidth - 8))}px`;
    style.top = `${Math.max(0, Math.min(this.#at.y, innerHeight - this.element.offsetHeight - 8))}px`;
  }

  close(): void {
    if (!this.isOpen) return;
    const hadFocus = this.element.contains(document.activeElement);
    this.element.hidden = true;
    if (hadFocus) this.#walk.focus();
  }

  #always(key: string): Item[] {
    const items: Item[] = [{ title: 'Go to the text', run: () => this.#post({ kind: 'open', key, focus: true }) }];
    const part = this.#stage.partOf(key);
    if (part?.kind !== 'landing') return items;
    const landings = this.#walk.landings(part.group);
    const now = landings.indexOf(part);
    const others = landings.filter((one) => one !== part);
    const move = (place: number) => {
      const after = others[place - 1]?.key;
      this.#post({ kind: 'move', key, ...(after !== undefined && { after }) });
    };
    if (0 < now) items.push({ title: 'Move towards the first landing', run: () => move(now - 1) });
    if (now < others.length) items.push({ title: 'Move towards the last landing', run: () => move(now + 1) });
    return items;
  }

  #show(items: readonly Item[]): void {
    this.#items = items;
    const entries = items.map(({ title }, index) => {
      const entry = element('div', { role: 'menuitem', tabindex: '-1' }, [title]);
      entry.addEventListener('click', () => this.#choose(index));
      return entry;
    });
    this.element.replaceChildren(...entries);
    this.element.hidden = false;
    entries[0]?.focus();
  }

  #choose(index: number): void {
    const item = this.#items[index];
    this.close();
    item?.run();
  }

  #press(key: string): void {
    const entries = [...this.element.children] as HTMLElement[];
    const now = entries.indexOf(document.activeElement as HTMLElement);
    if (key === 'ArrowDown') entries[(now + 1) % entries.length]?.focus();
    else if (key === 'ArrowUp') entries.at((now - 1) % entries.length)?.focus();
    else if (key === 'Home') entries[0]?.focus();
    else if (key === 'End') entries.at(-1)?.focus();
    else if (key === 'Enter' || key === ' ') this.#choose(now);
    else if (key === 'Escape' || key === 'Tab') this.close();
  }
}
