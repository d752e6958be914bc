/** What can be done about a fact that the text states twice. */
import type { Fix, Place } from '@fieldpair/shared';

export interface Said {
  /** The fact as it is written. */
  readonly text: string;
  readonly place: Place;
}

/**
 * Keeps the first of two statements or the second. Said twice in the same words, the second has no effect, so that it
 * goes unasked. `whole` is the second statement with its keyword, where that is more than the fact.
 */
export function repeatedFixes(first: Said, second: Said, whole: Place = second.place): Fix[] {
  const remove = { kind: 'write', place: whole, text: '' } as const;
  const said = (text: string) => text.replace(/\s+/g, ' ');
  if (said(first.text) === said(second.text)) {
    return [{ title: `Remove the repeated ${said(second.text)}`, safe: true, edits: [remove] }];
  }
  return [
    { title: `Keep ${said(first.text)}, remove ${said(second.text)}`, safe: false, edits: [remove] },
    {
      title: `Keep ${said(second.text)}, remove ${said(first.text)}`,
      safe: false,
      edits: [{ kind: 'write', place: first.place, text: second.text }, remove],
    },
  ];
}
