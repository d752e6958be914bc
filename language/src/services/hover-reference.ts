/** Hovers on the words of a statement: what the language reference says of it. */
import { type BusKind, busKinds } from '@fieldpair/shared';
import type { Sheet } from '../generated/reader.js';
import { type Entry, entryOf } from '../reference/index.js';
import { kindTopics } from '../reference/kind-topics.js';
import { anchorOf, entryText } from '../reference/page.js';

/** A word of a statement with what the reference says of the statement. */
export interface Told {
  readonly start: number;
  readonly end: number;
  readonly entry: Entry;
  readonly word: string;
}

interface Spot {
  readonly type: string;
  readonly start: number;
  readonly end: number;
}

/** The word under an offset and the statement that it belongs to; undefined on names' quotes, comments and blanks. */
export function toldAt(sheet: Sheet, text: string, offset: number): Told | undefined {
  const path = pathTo(sheet, offset);
  const inPort = path.some(({ type }) => type === 'PortDeclaration');
  for (const spot of path) {
    const entry = entryOf(spot.type, inPort ? 'port' : 'cable');
    if (!entry) continue;
    const word = wordAt(text, spot, offset);
    // Behind its brace a block has no word of its own: that is the end of a statement which could not be read.
    return word && (spot !== path[0] || !word.isBehindBrace) ? { ...word, entry } : undefined;
  }
  return undefined;
}

/** What of the tree lies around an offset, the innermost first. */
function pathTo(sheet: Sheet, offset: number): Spot[] {
  const path: Spot[] = [];
  let inner: unknown = sheet;
  while (isSpot(inner)) {
    path.unshift(inner);
    const children: unknown[] = Object.values(inner).flat();
    inner = children.find((child) => isSpot(child) && child.start <= offset && offset < child.end);
  }
  return path;
}

const isSpot = (value: unknown): value is Spot =>
  typeof value === 'object' && value !== null && 'start' in value && 'type' in value;

const pattern = /\/\/[^\n\r]*|\/\*[\s\S]*?(?:\*\/|$)|"(?:\\.|[^"\\\r\n])*"?|\w+(?:-\w+)*|\S/g;

interface WordSpot {
  readonly start: number;
  readonly end: number;
  readonly word: string;
  readonly isBehindBrace: boolean;
}

function wordAt(text: string, { start, end }: Spot, offset: number): WordSpot | undefined {
  let isBehindBrace = false;
  for (const { 0: word, index } of text.slice(start, end).matchAll(pattern)) {
    const wordStart = start + index;
    if (offset < wordStart) return undefined;
    if (wordStart + word.length <= offset) isBehindBrace ||= word === '{';
    else if (/^[\w%+-]/.test(word)) return { start: wordStart, end: wordStart + word.length, word, isBehindBrace };
    else return undefined;
  }
  return undefined;
}

/** The command that opens the language reference at a heading, for an editor that follows links to commands. */
export const openReferenceCommand = 'fieldpair.openReference';

/** What the reference says, with a link to where it says it. */
export function referenceLines({ entry, word }: Told, links: boolean): string[] {
  const kind = busKinds.find((one) => one === word);
  const parameters = encodeURIComponent(JSON.stringify([anchorOf(entry.title)]));
  return [
    ...(kind ? [kindText(kind)] : []),
    entryText(entry),
    ...(links ? [`[Language reference](command:${openReferenceCommand}?${parameters})`] : []),
  ];
}

export const kindText = (kind: BusKind): string => `\`${kind}\`: ${kindTopics[kind]}`;
