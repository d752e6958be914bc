/**
 * The characters of a text as bytes. Looking at bytes is several times faster than at a text, of which it has to be found
 * out each time how it is laid out in memory.
 */

/** Stand for characters outside ASCII, which mean something only in quotes and comments, unless they are spaces. */
export const enum Beyond {
  Other = 128,
  Space = 129,
  LineEnd = 130,
}

let buffer = new Uint8Array(1 << 16);
const encoder = new TextEncoder();

/** One byte for each UTF-16 unit of the text, then a few of 0; shared, so valid until the next call. */
export function codesOf(text: string): Uint8Array {
  const { length } = text;
  if (buffer.length < length + 4) buffer = new Uint8Array(2 * length + 4);
  const codes = buffer;
  // As many bytes as units: all are ASCII.
  if (encoder.encodeInto(text, codes).written !== length) {
    for (let at = 0; at < length; at++) {
      const code = text.charCodeAt(at);
      codes[at] = code < 128 ? code : codeBeyond(code);
    }
  }
  codes.fill(0, length, length + 4);
  return codes;
}

function codeBeyond(code: number): Beyond {
  if (code === 0x2028 || code === 0x2029) return Beyond.LineEnd;
  return /\s/.test(String.fromCharCode(code)) ? Beyond.Space : Beyond.Other;
}
