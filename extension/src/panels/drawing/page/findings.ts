/** The words in which a page tells a finding. */
import type { PagePart } from '../messages.js';

type Finding = PagePart['findings'][number];

export const isOpen = ({ waived }: Finding): boolean => waived === undefined;

/** What stands before its message: how grave it is, and whether somebody has agreed to it. */
export const findingTitle = ({ severity, waived }: Finding): string =>
  waived === undefined ? severity : `waived ${severity}`;

export function findingText({ message, waived }: Finding): string {
  if (waived === undefined) return message;
  return waived.trim() === '' ? `${message} (no reason is given)` : `${message} (waived because: ${waived})`;
}
