import type { FindingCounts } from '../../../server/src/protocol.js';

/** `1 file`, `12 files`. */
export function counted(count: number, one: string, several = `${one}s`): string {
  return `${count.toLocaleString('en-US')} ${count === 1 ? one : several}`;
}

/** `3 errors, 1 warning`; the severities that have none are left out. */
export function countedFindings({ error, warning, info }: FindingCounts): string {
  const parts: string[] = [];
  if (error > 0) parts.push(counted(error, 'error'));
  if (warning > 0) parts.push(counted(warning, 'warning'));
  if (info > 0) parts.push(counted(info, 'note'));
  return parts.join(', ') || 'no findings';
}
