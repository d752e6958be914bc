import type { CheckStatus } from '../../../server/src/protocol.js';
import type { ServerState } from '../client.js';
import { counted, countedFindings } from './counted.js';

export interface StatusText {
  readonly text: string;
  readonly detail: string;
  readonly severity: 'error' | 'warning' | 'info';
  readonly busy: boolean;
}

/**
 * What the language status item says.
 *
 * @param last what the running server said last, if anything
 * @param clock shows the time of day as the user is used to
 */
export function describeStatus(
  state: ServerState,
  last: CheckStatus | undefined,
  clock: (time: Date) => string,
): StatusText {
  if (state === 'stopped') {
    return { text: 'Not running', detail: 'files are coloured but not checked', severity: 'error', busy: false };
  }
  if (state === 'starting') return { text: 'Starting', detail: '', severity: 'info', busy: true };
  if (!last?.at) return { text: 'Reading the workspace', detail: '', severity: 'info', busy: true };
  const { findings } = last;
  const text = countedFindings(findings);
  return {
    text: text.charAt(0).toUpperCase() + text.slice(1),
    detail: `${counted(last.files, 'file')} at ${clock(new Date(last.at))} in ${duration(last.milliseconds)}`,
    severity: findings.error > 0 ? 'error' : findings.warning > 0 ? 'warning' : 'info',
    busy: last.checking,
  };
}

function duration(milliseconds: number): string {
  if (milliseconds < 1) return 'less than 1 ms';
  return milliseconds < 1000 ? `${Math.round(milliseconds)} ms` : `${(milliseconds / 1000).toFixed(1)} s`;
}
