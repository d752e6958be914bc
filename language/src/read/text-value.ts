/** What a quoted text means: quotes taken off, `\n`, `\t` and escaped characters resolved. */
export function unquote(source: string): string {
  const inner = source.endsWith('"') && source.length > 1 ? source.slice(1, -1) : source.slice(1);
  if (!inner.includes('\\')) return inner;
  return inner.replace(/\\(.)/g, (_, character: string) =>
    character === 'n' ? '\n' : character === 't' ? '\t' : character,
  );
}

/** A text as it is written in a file; the inverse of {@link unquote}. */
export function quote(value: string): string {
  const escaped = value
    .replace(/[\\"]/g, '\\$&')
    .replace(/\r\n|[\n\r\u2028\u2029]/g, '\\n')
    .replace(/\t/g, '\\t');
  return `"${escaped}"`;
}
