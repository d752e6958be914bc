import type { WorkspaceCheck } from '../../../server/src/protocol.js';
import { counted, countedFindings } from './counted.js';

/** The totals of a workspace in one sentence. */
export function describeCheck({ files, stores, buses, findings }: WorkspaceCheck): string {
  const size = `${counted(files, 'file')}, ${counted(stores, 'store')}, ${counted(buses, 'bus', 'buses')}`;
  return `${size} checked: ${countedFindings(findings)}.`;
}
