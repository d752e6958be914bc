/** What a quoted text means: quotes taken off, `\n`, `\t` and escaped characters resolved. */
export function unquote(source: string): string {
  const inner = source.endsWith('"') && source.length > 1 ? source.slice(1, -1) : source.slice(1);
  if (!inner.includes('\\')) return inner;
  return inner.replace(/\\(.)/g, (_, character: string) =>
    character === 'n' ? '\n' : character === 't' ? '\t' : character,
  );
}

/** The number that `text` has between two offsets, as the grammar writes numbers. */
export function decimalAt(text: string, start: number, end: number): number {
  // Nearly all are short and whole; those need no text of their own.
  if (15 < end - start) return Number(text.slice(start, end));
  let value = 0;
  for (let at = start; at < end; at++) {
    const digit = text.charCodeAt(at) - 48;
    if (digit < 0 || 9 < digit) return Number(text.slice(start, end));
    value = value * 10 + digit;
  }
  return value;
}

/** A text as it is written in a file; the inverse of {@link unquote}. */
export function quote(value: string): string {
  const escaped = value
    .replace(/[\\"]/g, '\\$&')
    .replace(/\r\n|[\n\r\u2028\u2029]/g, '\\n')
    .replace(/\t/g, '\\t');
  return `"${escaped}"`;
}
