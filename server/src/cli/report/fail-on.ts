/** Which findings make a check fail. */
import { type Severity, severities } from '@fieldpair/shared';

/** Whether a severity is as grave as the least grave one that fails, or graver. */
export function reaches(severity: Severity, failOn: Severity): boolean {
  return severities.indexOf(severity) <= severities.indexOf(failOn);
}
