/** What is seen: the parts of the drawing as SVG, patched by their keys, with the frames that point at some of them. */

import { matching } from '../matching.js';
import type { PageDrawing, PagePart } from '../messages.js';
import { element, parsedGroups, svgElement } from './elements.js';
import { findingText, findingTitle } from './findings.js';

interface ShownPart {
  part: PagePart;
  readonly group: SVGGElement;
}

/** How far frames stand off what they frame. */
const margin = 4;
const zooms = { least: 0.1, most: 4 } as const;

const spoken: Readonly<Record<PagePart['kind'], string>> = {
  store: 'store',
  network: 'host network',
  bus: 'bus',
  area: 'area',
  landing: 'landing',
  again: 'landing drawn elsewhere',
  joint: 'joint',
  run: 'run',
  spare: 'spare run',
  earth: 'earth',
  bias: 'bias',
};

export class Stage {
  /** The arrow keys are the drawing's own, which `application` tells screen readers. */
  readonly element = element('div', { class: 'stage', role: 'application', 'aria-label': 'Wiring' });
  readonly #style: HTMLStyleElement;
  readonly #svg = svgElement('svg', { role: 'graphics-document', 'aria-describedby': 'description' });
  readonly #buses = svgElement('g');
  readonly #frames = svgElement('g', { class: 'frames', 'aria-hidden': 'true' });
  readonly #groups = new Map<string, SVGGElement>();
  readonly #shown = new Map<string, ShownPart>();
  readonly #keys = new WeakMap<Element, string>();
  #parts: readonly PagePart[] = [];
  #size = { width: 0, height: 0 };
  #zoom = 1;
  #here: string | undefined;
  #focused: string | undefined;
  #found: readonly string[] = [];

  constructor(nonce: string) {
    this.#style = element('style', { nonce });
    document.head.append(this.#style);
    this.#svg.append(this.#buses, this.#frames);
    this.element.append(this.#svg);
    for (const event of ['focusin', 'focusout'] as const) {
      this.element.addEventListener(event, ({ target }) => {
        this.#focused = event === 'focusin' ? this.keyOf(target) : undefined;
        this.#frame();
      });
    }
  }

  get parts(): readonly PagePart[] {
    return this.#parts;
  }

  /** Of the drawing at full size, in pixels. */
  get size(): { readonly width: number; readonly height: number } {
    return this.#size;
  }

  get zoom(): number {
    return this.#zoom;
  }

  /** Shows a drawing; what is as it was stays untouched, so that nothing flickers and the focus is kept. */
  show({ title, style, width, height, parts }: PageDrawing): void {
    if (this.#style.textContent !== style) this.#style.textContent = style;
    this.#svg.setAttribute('aria-label', `Drawing of ${title}`);
    this.#size = { width, height };
    this.#parts = parts;
    const changed = parts.filter(({ key, markup }) => this.#shown.get(key)?.part.markup !== markup);
    const contents = parsedGroups(changed.map(({ markup }) => markup));
    const fresh = new Map(changed.map(({ key }, index) => [key, contents[index] ?? []]));
    for (const part of parts) this.#put(part, fresh.get(part.key));
    this.#drop(new Set(parts.map(({ key }) => key)), new Set(parts.map(({ group }) => group)));
    this.#order();
    this.#resize();
    this.#frame();
  }

  clear(): void {
    this.#parts = [];
    this.#size = { width: 0, height: 0 };
    this.#drop(new Set(), new Set());
    this.#resize();
    this.#frame();
  }

  #put(part: PagePart, contents: readonly Element[] | undefined): void {
    let shown = this.#shown.get(part.key);
    if (!shown) {
      shown = { part, group: svgElement('g', { class: part.kind, role: 'graphics-symbol', tabindex: '-1' }) };
      shown.group.setAttribute('aria-roledescription', spoken[part.kind]);
      this.#shown.set(part.key, shown);
      this.#keys.set(shown.group, part.key);
    }
    shown.part = part;
    if (contents) shown.group.replaceChildren(...contents);
    const told = [
      part.name,
      ...part.findings.map((finding) => `${findingTitle(finding)}: ${findingText(finding)}`),
    ].join('. ');
    if (shown.group.getAttribute('aria-label') !== told) shown.group.setAttribute('aria-label', told);
  }

  #drop(keys: ReadonlySet<string>, groups: ReadonlySet<string>): void {
    for (const [key, { group }] of this.#shown) {
      if (keys.has(key)) continue;
      group.remove();
      this.#shown.delete(key);
    }
    for (const [key, group] of this.#groups) {
      if (groups.has(key)) continue;
      group.remove();
      this.#groups.delete(key);
    }
  }

  /** Brings elements into walking order, moving only those that are not. */
  #order(): void {
    const last = new Map<SVGGElement, Element | null>();
    let lastBus: Element | null = null;
    for (const part of this.#parts) {
      const shown = this.#shown.get(part.key);
      let bus = this.#groups.get(part.group);
      if (!bus) {
        bus = svgElement('g', { role: 'graphics-object' });
        this.#groups.set(part.group, bus);
      }
      if (part.key === part.group) bus.setAttribute('aria-label', part.name);
      if (!last.has(bus)) {
        const place: Element | null = lastBus ? lastBus.nextElementSibling : this.#buses.firstElementChild;
        if (place !== bus) this.#buses.insertBefore(bus, place);
        lastBus = bus;
        last.set(bus, null);
      }
      if (!shown) continue;
      const before = last.get(bus) ?? null;
      const place = before ? before.nextElementSibling : bus.firstElementChild;
      if (place !== shown.group) bus.insertBefore(shown.group, place);
      last.set(bus, shown.group);
    }
  }

  elementOf(key: string | undefined): SVGGElement | undefined {
    return key === undefined ? undefined : this.#shown.get(key)?.group;
  }

  partOf(key: string | undefined): PagePart | undefined {
    return key === undefined ? undefined : this.#shown.get(key)?.part;
  }

  /** The part that an event happened at. */
  keyOf(target: EventTarget | null): string | undefined {
    const group = target instanceof Element ? target.closest('[role=graphics-symbol]') : null;
    return group ? this.#keys.get(group) : undefined;
  }

  /** The parts that are called so; where there are none, those of which a text is said. */
  find(text: string): PagePart[] {
    const found = matching(this.#parts, text);
    this.#found = found.map(({ key }) => key);
    this.#frame();
    return found;
  }

  /** Frames the part that the text's cursor is in, and brings it into sight when it is another one than before. */
  markHere(key: string | undefined): void {
    const isOther = key !== this.#here;
    this.#here = key;
    this.#frame();
    if (isOther) this.reveal(key);
  }

  /** Brings a part into sight; of one that goes over several rows, its beginning. */
  reveal(key: string | undefined): void {
    const group = this.elementOf(key);
    const shown = group?.matches('.area') ? group.firstElementChild : group;
    if (!shown) return;
    const [part, view] = [shown.getBoundingClientRect(), this.element.getBoundingClientRect()];
    const isSeen = view.top <= part.top && part.bottom <= view.bottom;
    // With what is around it, rather than at the very edge.
    shown.scrollIntoView({ block: isSeen || view.height < part.height ? 'nearest' : 'center', inline: 'nearest' });
  }

  #frame(): void {
    const frames = [...this.#found.flatMap((key) => this.#frameOf(key, 'found')), ...this.#frameOf(this.#here, 'here')];
    this.#frames.replaceChildren(...frames, ...this.#frameOf(this.#focused, 'focused'));
  }

  /** A box around a part; along the line of a run, which may go round from row to row. */
  #frameOf(key: string | undefined, look: string): SVGElement[] {
    const group = this.elementOf(key);
    if (!group) return [];
    const lines = [...group.querySelectorAll(linesOf)];
    if (lines.length) {
      const d = lines.map((line) => line.getAttribute('d') ?? '').join('');
      return [svgElement('path', { class: `${look} along`, d })];
    }
    // An area has a bracket with its name on each row.
    const rows = group.matches('.area') ? [...group.querySelectorAll('path')].map(withNext) : [group.getBBox()];
    return rows.map(({ x, y, width, height }) => {
      const size = { width: String(width + 2 * margin), height: String(height + 2 * margin) };
      return svgElement('rect', { class: look, x: String(x - margin), y: String(y - margin), rx: '4', ...size });
    });
  }

  zoomBy(factor: number, around?: { readonly x: number; readonly y: number }): void {
    const { element: view } = this;
    const before = this.#zoom;
    const box = view.getBoundingClientRect();
    const x = around ? around.x - box.left : view.clientWidth / 2;
    const y = around ? around.y - box.top : view.clientHeight / 2;
    this.#zoom = Math.min(zooms.most, Math.max(zooms.least, before * factor));
    this.#resize();
    const grown = this.#zoom / before;
    view.scrollLeft = (view.scrollLeft + x) * grown - x;
    view.scrollTop = (view.scrollTop + y) * grown - y;
  }

  zoomTo(zoom: number): void {
    this.#zoom = Math.min(zooms.most, Math.max(zooms.least, zoom));
    this.#resize();
  }

  restore({ zoom, left, top }: { readonly zoom: number; readonly left: number; readonly top: number }): void {
    this.#zoom = zoom;
    this.#resize();
    this.element.scrollTo({ left, top });
  }

  #resize(): void {
    const { width, height } = this.#size;
    this.#svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
    this.#svg.setAttribute('width', String(width * this.#zoom));
    this.#svg.setAttribute('height', String(height * this.#zoom));
  }
}

/** What is framed along its lines: it goes from row to row, where a box would hold much else. */
const linesOf = ['run > path.line', 'joint > path.lead'].map((one) => `.${one}`).join();

/** The box of a shape and of the one behind it. */
function withNext(shape: SVGGraphicsElement): DOMRect {
  const [one, next] = [shape.getBBox(), (shape.nextElementSibling as SVGGraphicsElement | null)?.getBBox()];
  if (!next) return one;
  const [left, top] = [Math.min(one.x, next.x), Math.min(one.y, next.y)];
  const right = Math.max(one.x + one.width, next.x + next.width);
  return new DOMRect(left, top, right - left, Math.max(one.y + one.height, next.y + next.height) - top);
}
