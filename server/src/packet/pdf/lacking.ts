/** Which characters of a packet its typeface lacks, and on which sheets they are. */
import type { Packet, Sheet } from '@fieldpair/shared/documents';
import { lackingIn } from './typeface.js';

/** Each character that is lacking, in the order of their code points, with the sheets that should show it. */
export function lackingOf({ sheets }: Packet): Map<string, readonly Sheet[]> {
  const found = new Map<string, Set<Sheet>>();
  for (const sheet of sheets) {
    eachText(sheet, (text) => {
      for (const one of lackingIn(text)) {
        const known = found.get(one);
        if (known) known.add(sheet);
        else found.set(one, new Set([sheet]));
      }
    });
  }
  const inOrder = [...found].sort(([one], [other]) => one.codePointAt(0)! - other.codePointAt(0)!);
  return new Map(inOrder.map(([one, its]) => [one, [...its]]));
}

function eachText(value: unknown, tell: (text: string) => void): void {
  if (typeof value === 'string') tell(value);
  else if (Array.isArray(value)) for (let index = 0; index < value.length; index++) eachText(value[index], tell);
  else if (typeof value === 'object' && value !== null) {
    for (const key in value) eachText(value[key as keyof typeof value], tell);
  }
}
