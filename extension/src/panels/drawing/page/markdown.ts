/** The little Markdown that hovers are written in: paragraphs, lists, bold and escaped characters. All else is text. */

export interface Piece {
  readonly text: string;
  readonly strong: boolean;
}

export interface Block {
  readonly kind: 'text' | 'item';
  readonly pieces: readonly Piece[];
}

export function blocksOf(markdown: string): Block[] {
  const blocks: Block[] = [];
  for (const paragraph of markdown.split(/\n[ \t]*\n/)) {
    for (const line of paragraph.split('\n')) {
      const [, item] = /^[ \t]*- (.*)$/.exec(line) ?? [];
      const text = (item ?? line).trim();
      if (text !== '') blocks.push({ kind: item === undefined ? 'text' : 'item', pieces: piecesOf(text) });
    }
  }
  return blocks;
}

/** A backslash takes the sign behind it literally; two stars turn bold on and off; a code mark is left out. */
function piecesOf(line: string): Piece[] {
  const pieces: Piece[] = [];
  let strong = false;
  let text = '';
  const end = () => {
    if (text !== '') pieces.push({ text, strong });
    text = '';
  };
  for (let index = 0; index < line.length; index++) {
    const sign = line[index] ?? '';
    const next = line[index + 1] ?? '';
    if (sign === '\\' && /[!-/:-@[-`{-~]/.test(next)) {
      text += next;
      index++;
    } else if (sign === '*' && next === '*') {
      end();
      strong = !strong;
      index++;
    } else if (sign !== '`') {
      text += sign;
    }
  }
  end();
  return pieces;
}
