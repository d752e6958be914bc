/** The list of keys. */
import { element } from './elements.js';

const keys: readonly (readonly [string, string])[] = [
  ['\u2190 \u2192', 'to the landing before, to the next landing'],
  ['\u21e7 \u2190 \u2192', 'the same with runs, earths and all else'],
  ['\u2191 \u2193', 'to the bus before, to the next bus'],
  ['Home, End', 'to the first and the last landing of the bus'],
  ['n, \u21e7 n', 'to the next finding, to the one before'],
  ['Enter', 'to the text'],
  ['Space', 'what is known and computed'],
  ['. or menu key', 'what mends it, and what else can be done'],
  ['Alt \u2190 \u2192', 'moves the landing along its bus'],
  ['+ \u2212 0', 'larger, smaller, all of it'],
  ['s', 'to scale, or evenly'],
  ['/', 'find'],
  ['Escape', 'closes what is open'],
];

export class Help {
  readonly element = element('div', {
    class: 'help',
    role: 'dialog',
    'aria-label': 'Keys',
    tabindex: '-1',
    hidden: '',
  });
  #before: Element | null = null;

  constructor() {
    const rows = keys.map(([key, does]) =>
      element('tr', {}, [element('th', { scope: 'row' }, [key]), element('td', {}, [does])]),
    );
    this.element.append(element('h2', {}, ['Keys']), element('table', {}, rows));
  }

  get isOpen(): boolean {
    return !this.element.hidden;
  }

  toggle(): void {
    this.element.hidden = !this.element.hidden;
    if (this.isOpen) {
      this.#before = document.activeElement;
      this.element.focus();
    } else if (this.#before instanceof HTMLElement || this.#before instanceof SVGElement) {
      this.#before.focus();
    }
  }
}
