/** A PDF as another library reads its tags: what a screen reader has of it. */
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** An element with its parts, or a piece of what a page shows. */
export interface PdfNode {
  readonly role?: string;
  readonly alt?: string;
  readonly type?: string;
  readonly id?: string;
  readonly children?: readonly PdfNode[];
}

export function* nodesIn(node: PdfNode): Generator<PdfNode> {
  yield node;
  for (const child of node.children ?? []) yield* nodesIn(child);
}

export async function readParts(bytes: Uint8Array) {
  const document = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  /** The tree of each page: an element over two pages is in both. */
  const trees: PdfNode[] = [];
  const texts = new Map<string, string>();
  /** Texts that belong to nothing and are no furniture either. */
  const outside: string[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    trees.push((await page.getStructTree()) as PdfNode);
    const { items } = await page.getTextContent({ includeMarkedContent: true });
    /** Of each mark that is open: the piece that it is, or undefined for furniture. */
    const marks: (string | undefined)[] = [];
    for (const item of items) {
      if (!('str' in item)) {
        if (item.type === 'endMarkedContent') marks.pop();
        else marks.push('id' in item && item.id !== null ? item.id : undefined);
        continue;
      }
      const mark = marks.findLast((one) => one !== undefined);
      if (mark !== undefined) texts.set(mark, (texts.get(mark) ?? '') + item.str);
      else if (marks.length === 0 && item.str.trim() !== '') outside.push(item.str);
    }
  }
  const textOf = (node: PdfNode) =>
    [...nodesIn(node)]
      .flatMap(({ type, id }) => (type === 'content' && id !== undefined ? (texts.get(id) ?? []) : []))
      .join(' ')
      .replace(/\s+/g, ' ')
      .trim();
  const all = trees.flatMap((tree) => [...nodesIn(tree)]);
  return { document, trees, outside, textOf, withRole: (role: string) => all.filter((node) => node.role === role) };
}
