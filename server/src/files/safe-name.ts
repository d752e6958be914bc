/** File names out of the names that people give to stores and tables. */

/** In UTF-8 bytes; file systems commonly allow 255, and paths have to fit too. */
const longest = 80;

/** Names of devices on Windows, with any extension: opening one opens the device. */
const reserved = /^(?:con|prn|aux|nul|com[0-9\u00b9\u00b2\u00b3]|lpt[0-9\u00b9\u00b2\u00b3])$/i;

/**
 * A name that is one part of a path on every system: letters, digits, `_` and single hyphens, none at its ends.
 *
 * @param otherwise what it is when nothing of the text can be kept; a reserved name gets it at its end
 */
export function safeName(text: string, otherwise: string): string {
  const kept = text
    .normalize('NFC')
    .replace(/[^\p{L}\p{M}\p{N}_]+/gu, '-')
    .replace(/^[-\p{M}]+/u, '');
  const name = shortened(kept).replace(/-+$/, '');
  if (name === '') return otherwise;
  return reserved.test(name) ? `${name}-${otherwise}` : name;
}

function shortened(text: string): string {
  let bytes = 0;
  let length = 0;
  for (const character of text) {
    bytes += Buffer.byteLength(character);
    if (longest < bytes) break;
    length += character.length;
  }
  return text.slice(0, length);
}

/** Gives each name that it was given before a number, names that differ only in case being the same to some systems. */
export function uniqueNames(): (name: string) => string {
  const taken = new Set<string>();
  return (name) => {
    let unique = name;
    for (let number = 2; taken.has(folded(unique)); number++) unique = `${name}-${number}`;
    taken.add(folded(unique));
    return unique;
  };
}

const folded = (name: string) => name.normalize('NFKC').toUpperCase().toLowerCase();
