/** The library's document, where it would do the same work over and over. */
import PDFDocument from 'pdfkit';
import type { Face } from './face.js';

/**
 * The library makes a byte array of each operator and keeps it until the page is complete, which for the tens of
 * thousands of a packet takes longer than all else; here they are kept as text, and a page is one array.
 */
export class BatchedDocument extends PDFDocument {
  readonly #operators = new Map<PDFKit.PDFPage, string[]>();
  #isUnseen = false;
  #face: Face | undefined;
  #size = 1;

  setFace(face: Face, size: number): this {
    [this.#face, this.#size] = [face, size];
    return this.font(face.name).fontSize(size);
  }

  /** Of a text in the face and size that are set; the library asks for it, too, whenever it sets one. */
  override widthOfString(text: string): number {
    const measure = () => super.widthOfString(text) / this.#size;
    return (this.#face?.width(text, measure) ?? measure()) * this.#size;
  }

  get isUnseen(): boolean {
    return this.#isUnseen;
  }

  /** Does what would show something, and shows nothing. */
  unseen(work: () => void): void {
    this.#isUnseen = true;
    try {
      work();
    } finally {
      this.#isUnseen = false;
    }
  }

  override addContent(operator: string): this {
    if (this.#isUnseen) return this;
    const operators = this.#operators.get(this.page);
    if (operators) operators.push(operator);
    else this.#operators.set(this.page, [operator]);
    return this;
  }

  /** A page that another follows rarely gets more but its furniture. */
  override addPage(options?: PDFKit.PDFDocumentOptions): this {
    const operators = this.page && this.#operators.get(this.page);
    if (operators) this.#operators.set(this.page, [operators.join('\n')]);
    super.addPage(options);
    return this;
  }

  override flushPages(): void {
    for (const [page, operators] of this.#operators) page.write(operators.join('\n'));
    this.#operators.clear();
    super.flushPages();
  }
}
