/** The row of controls above the drawing. */
import { element } from './elements.js';

export interface BarActions {
  zoomBy(factor: number): void;
  fit(): void;
  scaled(): void;
  /** Goes to the next match, or with 0 stays at one; tells which of how many it is. */
  search(text: string, way: 1 | 0 | -1): { readonly at: number; readonly of: number };
  leaveSearch(): void;
  help(): void;
}

export class Bar {
  readonly element = element('div', { class: 'bar', role: 'group', 'aria-label': 'Drawing' });
  readonly #percent = element('span', { class: 'percent' }, ['100 %']);
  readonly #fit = button('Fit', 'All of the drawing, or its full size again');
  readonly #scale = button('To scale', 'Landings stand where the cable has run so far');
  readonly #search = element('input', {
    type: 'search',
    placeholder: 'Find',
    'aria-label': 'Find in the drawing',
    spellcheck: 'false',
  });
  readonly #count = element('span', { class: 'count', role: 'status' });

  constructor(actions: BarActions) {
    const smaller = button('\u2212', 'Smaller');
    const larger = button('+', 'Larger');
    const help = button('Keys', 'What keys do');
    smaller.addEventListener('click', () => actions.zoomBy(1 / 1.25));
    larger.addEventListener('click', () => actions.zoomBy(1.25));
    this.fitted = false;
    this.#fit.addEventListener('click', () => actions.fit());
    help.addEventListener('click', () => actions.help());
    this.scale = false;
    this.#scale.addEventListener('click', () => {
      this.scale = !this.scale;
      actions.scaled();
    });
    const search = (way: 1 | 0 | -1) => {
      const { at, of } = actions.search(this.#search.value, way);
      this.#count.textContent = this.#search.value.trim() === '' ? '' : of ? `${at} of ${of}` : 'nothing';
    };
    this.#search.addEventListener('input', () => search(0));
    this.#search.addEventListener('keydown', (event) => {
      if (event.key === 'Enter') search(event.shiftKey ? -1 : 1);
      else if (event.key === 'Escape') {
        this.#search.value = '';
        search(0);
        actions.leaveSearch();
      } else return;
      event.preventDefault();
    });
    this.element.append(smaller, this.#percent, larger, this.#fit, this.#scale, this.#search, this.#count, help);
  }

  get scale(): boolean {
    return this.#scale.getAttribute('aria-pressed') === 'true';
  }

  set scale(scale: boolean) {
    this.#scale.setAttribute('aria-pressed', String(scale));
  }

  set fitted(fitted: boolean) {
    this.#fit.setAttribute('aria-pressed', String(fitted));
  }

  set zoom(zoom: number) {
    this.#percent.textContent = `${Math.round(zoom * 100)} %`;
  }

  toSearch(): void {
    this.#search.focus();
    this.#search.select();
  }

  toggleScale(): void {
    this.#scale.click();
  }
}

function button(label: string, title: string): HTMLButtonElement {
  return element('button', { type: 'button', title, 'aria-label': label.length < 2 ? title : label }, [label]);
}
