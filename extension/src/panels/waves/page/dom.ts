/** Making controls in few words. */
import { make } from '../../page/make.js';

/** A control with its label in front, as one block. */
export function labelled(text: string, control: HTMLElement): HTMLElement {
  return make('label', { className: 'labelled' }, make('span', {}, text), control);
}

export interface Option {
  readonly value: string;
  readonly text: string;
}

/** Gives a list its options; leaves it alone, and so its open menu and its focus, when they are the same. */
export function setOptions(list: HTMLSelectElement, options: readonly Option[], chosen: string): void {
  const wanted = JSON.stringify(options);
  if (list.dataset.options !== wanted) {
    list.dataset.options = wanted;
    list.replaceChildren(...options.map(({ value, text }) => make('option', { value }, text)));
  }
  list.value = chosen;
  // A long one is cut off in the closed list.
  list.title = list.selectedOptions[0]?.text ?? '';
}

const svgSpace = 'http://www.w3.org/2000/svg';

/** A short piece of a landing's line, for beside its name. */
export function linePiece(className: string, dashes: string): SVGSVGElement {
  const piece = document.createElementNS(svgSpace, 'svg');
  piece.setAttribute('viewBox', '0 0 32 8');
  piece.setAttribute('class', 'piece');
  piece.setAttribute('aria-hidden', 'true');
  const line = document.createElementNS(svgSpace, 'path');
  line.setAttribute('d', 'M0 4H32');
  line.setAttribute('class', className);
  if (dashes) line.setAttribute('stroke-dasharray', dashes);
  piece.append(line);
  return piece;
}
