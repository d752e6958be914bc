/** What a search finds among the parts of a drawing. */
import type { PagePart } from './messages.js';

type Named = Pick<PagePart, 'kind' | 'name'>;

/**
 * The parts whose own name begins with a text, so that a search for a landing does not stop at every run beside it; where
 * there are none, those whose description holds it. What is drawn again is found where it is drawn first.
 */
export function matching<Part extends Named>(parts: readonly Part[], text: string): Part[] {
  const wanted = text.trim().toLowerCase();
  if (wanted === '') return [];
  const searched = parts.filter(({ kind }) => kind !== 'again' && kind !== 'joint');
  const called = searched.filter(({ name }) => {
    const lower = name.toLowerCase();
    return lower.startsWith(wanted) || lower.replace(/^(store|bus|host network|area) /, '').startsWith(wanted);
  });
  return called.length ? called : searched.filter(({ name }) => name.toLowerCase().includes(wanted));
}
