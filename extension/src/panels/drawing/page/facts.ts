/** What is known and computed about a part: the text's own hover, shown beside it. */
import { element } from './elements.js';
import { findingText, findingTitle, isOpen } from './findings.js';
import { type Block, blocksOf, type Piece } from './markdown.js';
import type { Stage } from './stage.js';

/** How long a pointer rests before it asks, in milliseconds. */
const patience = 350;

export class Facts {
  readonly element = element('div', { class: 'facts', role: 'tooltip', id: 'facts', hidden: '' });
  /** For those who hear it: what was asked for by the keyboard. */
  readonly spoken = element('div', { class: 'unseen', role: 'status' });
  readonly #stage: Stage;
  readonly #ask: (key: string) => void;
  #key: string | undefined;
  #timer: number | undefined;
  #byKeyboard = false;

  constructor(stage: Stage, ask: (key: string) => void) {
    this.#stage = stage;
    this.#ask = ask;
    stage.element.addEventListener('pointermove', (event) => {
      const key = event.buttons ? undefined : stage.keyOf(event.target);
      if (key === this.#key) return;
      this.hide();
      if (key === undefined) return;
      this.#key = key;
      this.#timer = window.setTimeout(() => ask(key), patience);
    });
    for (const event of ['pointerleave', 'pointerdown', 'scroll'] as const) {
      stage.element.addEventListener(event, () => this.hide(), { passive: true });
    }
  }

  /** Asked for by the keyboard; asked again, it goes. */
  ask(key: string | undefined): void {
    const isShown = !this.element.hidden && key === this.#key;
    this.hide();
    if (isShown || key === undefined) return;
    this.#key = key;
    this.#byKeyboard = true;
    this.#ask(key);
  }

  /** The answer has come; it is of use only where it was asked for. */
  tell(key: string, markdown: readonly string[]): void {
    const part = this.#stage.partOf(key);
    const group = this.#stage.elementOf(key);
    if (key !== this.#key || !part || !group) return;
    const told = markdown.length ? markdown.flatMap(blocksOf) : [{ kind: 'text', pieces: [plain(part.name)] } as const];
    const findings = part.findings.map((finding) =>
      element('p', { class: isOpen(finding) ? finding.severity : 'waived' }, [
        element('strong', {}, [findingTitle(finding)]),
        ` ${findingText(finding)}`,
      ]),
    );
    const hint = part.findings.some(isOpen)
      ? [element('p', { class: 'hint' }, ['Right click, or the full stop key: what mends it'])]
      : [];
    this.element.replaceChildren(...elementsOf(told), ...findings, ...hint);
    if (this.#byKeyboard) this.spoken.textContent = [...this.element.children].map((one) => one.textContent).join('. ');
    this.element.hidden = false;
    group.setAttribute('aria-describedby', this.element.id);
    const box = group.getBoundingClientRect();
    const { offsetWidth, offsetHeight, style } = this.element;
    const below = box.bottom + 8;
    style.left = `${Math.max(4, Math.min(box.left, innerWidth - offsetWidth - 12))}px`;
    style.top = `${below + offsetHeight < innerHeight ? below : Math.max(4, box.top - offsetHeight - 8)}px`;
  }

  hide(): void {
    window.clearTimeout(this.#timer);
    this.#stage.elementOf(this.#key)?.removeAttribute('aria-describedby');
    this.#key = undefined;
    this.#byKeyboard = false;
    this.spoken.textContent = '';
    this.element.hidden = true;
  }
}

const plain = (text: string): Piece => ({ text, strong: false });

function elementsOf(blocks: readonly Block[]): HTMLElement[] {
  const elements: HTMLElement[] = [];
  for (const block of blocks) {
    const content = block.pieces.map(({ text, strong }) => (strong ? element('strong', {}, [text]) : text));
    if (block.kind === 'text') {
      elements.push(element('p', {}, content));
      continue;
    }
    const last = elements.at(-1);
    const list = last instanceof HTMLUListElement ? last : element('ul');
    if (list !== last) elements.push(list);
    list.append(element('li', {}, content));
  }
  return elements;
}
