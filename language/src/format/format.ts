/**
 * The formatter: indents by blocks, one space between words, at most one blank line, and nothing else.
 *
 * It works on tokens, not on the tree, so it formats broken text as well, never moves a word to another line and
 * never aligns columns: a diff shows only the lines that somebody changed.
 */
const tokenPattern =
  /(?<space>\s+)|(?<comment>\/\*[\s\S]*?(?:\*\/|$)|\/\/[^\n\r]*)|(?<text>"(?:\\.|[^"\\\r\n])*(?:"|\\)?)|(?<number>[78][NEO][12]\b|\d+(?:\.\d+)?(?:e[+-]?\d+)?)|(?<word>[A-Za-z_]\w*(?:-\w+)*)|(?<sign>\.\.|[\s\S])/gy;

type Kind = 'comment' | 'text' | 'number' | 'word' | 'sign';
interface Token {
  readonly kind: Kind;
  readonly text: string;
  /** Line ends between the token before and this one. */
  readonly lines: number;
}

/** The formatted text. Line ends are those of the text's first line; a byte-order mark is kept. */
export function formatText(text: string): string {
  const mark = text.startsWith('\uFEFF') ? '\uFEFF' : '';
  const lineEnd = /\r\n|\n|\r/.exec(text)?.[0] ?? '\n';
  const tokens = tokensOf(text.slice(mark.length));
  let result = '';
  let depth = 0;
  let previous: Token | undefined;
  for (const token of tokens) {
    if (token.text === '}' && token.kind === 'sign') depth = Math.max(0, depth - 1);
    const indent = '  '.repeat(depth);
    if (!previous) result += indent;
    else if (token.lines) {
      const blank = 1 < token.lines && previous.text !== '{' && token.text !== '}';
      result += `${blank ? '\n\n' : '\n'}${indent}`;
    } else if (spaced(previous, token, result)) result += ' ';
    result += token.text;
    if (token.text === '{' && token.kind === 'sign') depth++;
    previous = token;
  }
  if (result !== '') result += '\n';
  return mark + (lineEnd === '\n' ? result : result.replace(/\n/g, lineEnd));
}

function tokensOf(text: string): Token[] {
  const tokens: Token[] = [];
  let lines = 0;
  for (const { groups = {} } of text.matchAll(tokenPattern)) {
    if (groups['space'] !== undefined) {
      lines += groups['space'].match(/\r\n|[\n\r]/g)?.length ?? 0;
      continue;
    }
    for (const kind of ['comment', 'text', 'number', 'word', 'sign'] as const) {
      const found = groups[kind];
      if (found === undefined) continue;
      tokens.push({
        kind,
        text: found
          .trimEnd()
          .replace(/\r\n?/g, '\n')
          .replace(/[ \t]+$/gm, ''),
        lines,
      });
    }
    lines = 0;
  }
  return tokens;
}

/** Whether a space stands between two tokens of one line. */
function spaced(left: Token, right: Token, before: string): boolean {
  if (left.kind === 'comment' || right.kind === 'comment') return true;
  // Closed up, these would read as something else: a comment, a range, a decimal number.
  if (left.text === '/' && /^[/*]/.test(right.text)) return true;
  if (left.text === '.' && (right.text.startsWith('.') || right.kind === 'number')) return true;
  if (left.kind === 'number' && right.text === '.') return true;
  if (right.kind === 'sign' && (right.text === ',' || right.text === '.' || right.text === '..' || right.text === '/'))
    return false;
  if (left.kind === 'sign') {
    if (left.text === '.' || left.text === '..' || left.text === '/') return false;
    // A minus before a number is its sign, but not the conductor's name in `to -` and `breaks -`.
    if (left.text === '-' && right.kind === 'number') return /\b(?:to|breaks) -$/.test(before);
  }
  return true;
}
