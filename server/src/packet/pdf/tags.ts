/**
 * What the parts of a PDF are (ISO 32000-1, 14.8): headings, tables with head cells, lists, figures with words, and what
 * is only furniture. A screen reader goes by it; without it a page is lines and letters at places.
 */
import type { BatchedDocument } from './document.js';

type Element = PDFKit.PDFStructureElement;

/** An element that is still to get something. */
export interface OpenElement {
  /** @param show shows what belongs to the element, on the page that is being worked on */
  add(show: () => void): void;
}

export interface ElementOptions {
  /** For whoever cannot see it. */
  readonly alt?: string;
  /** Of a head cell. */
  readonly scope?: 'Column';
  /** How many rows a cell covers. */
  readonly rows?: number;
}

export class Tags {
  readonly #document: BatchedDocument;
  readonly #root: Element;
  readonly #open: Element[];
  #isMarked = false;

  constructor(document: BatchedDocument) {
    this.#document = document;
    this.#root = document.struct('Document');
    document.addStructure(this.#root);
    this.#open = [this.#root];
  }

  /** An element, within the one that is open, of all that is shown meanwhile. */
  element(role: string, work: () => void, options: ElementOptions = {}): void {
    if (this.#document.isUnseen) {
      work();
      return;
    }
    const element = this.#begin(role, options);
    this.#within(element, work);
  }

  /** An element that gets more later. */
  open(role: string): OpenElement {
    const element = this.#begin(role, {});
    return { add: (show) => this.#within(element, show) };
  }

  /** What is shown belongs to the element that is open. @param actual what it says, where it shows something else */
  content(show: () => void, actual?: string): void {
    this.#marked(show, () => {
      const element = this.#open.at(-1) ?? this.#root;
      element.add(this.#document.markStructureContent('Span', actual === undefined ? {} : { actual }));
    });
  }

  /** What is shown is no part of what the document says: a rule, a border, what is on every page. */
  artifact(show: () => void, type: 'Layout' | 'Pagination' = 'Layout'): void {
    this.#marked(show, () => this.#document.markContent('Artifact', { type }));
  }

  /** To another place of the document. @param work shows what leads there */
  link(box: { x: number; y: number; width: number; height: number }, to: string, work: () => void): void {
    const structParent = this.#begin('Link', {});
    this.#within(structParent, work);
    // The library knows the option, its types do not.
    const options = { structParent } as PDFKit.Mixins.AnnotationOption;
    this.#document.goTo(box.x, box.y, box.width, box.height, to, options);
    // The library takes the page that is worked on when this ends for the page of the link.
    structParent.end();
  }

  /** Once all is shown. */
  end(): void {
    this.#root.end();
  }

  #within(element: Element, work: () => void): void {
    this.#open.push(element);
    work();
    this.#open.pop();
  }

  /** Marks are not put into each other: what is marked already stays what it is. */
  #marked(show: () => void, mark: () => void): void {
    if (this.#isMarked || this.#document.isUnseen) {
      show();
      return;
    }
    this.#isMarked = true;
    mark();
    show();
    this.#document.endMarkedContent();
    this.#isMarked = false;
  }

  #begin(role: string, { alt, scope, rows = 1 }: ElementOptions): Element {
    const element = this.#document.struct(role, { ...(alt !== undefined && { alt }), ...(scope && { scope }) });
    if (1 < rows) spanRows(element, rows);
    (this.#open.at(-1) ?? this.#root).add(element);
    return element;
  }
}

/** The library writes attributes of tables, but not this one from its options. */
function spanRows(element: Element, rows: number): void {
  const { dictionary } = element as unknown as { dictionary: { data: Record<string, unknown> } };
  dictionary.data.A = { O: 'Table', RowSpan: rows };
}
