/** What the rules about shape share. */
import type { BusStudy } from '../../figures/study.js';
import { type Bus, type BusKind, type Landing, rs485Kinds } from '../../network.js';

/** The kinds whose shape is judged: one trunk with two ends. */
export const trunkKinds: readonly BusKind[] = [...rs485Kinds, 'can'];

/**
 * Whether every landing is what its writer meant. A name or port that does not exist makes a landing of its own, so
 * that its bus seems to fall apart; that has its own finding.
 */
export const namesResolved = ({ census }: BusStudy): boolean =>
  census.outfits.every(({ isSplice, port, landings }) => isSplice || port !== undefined || landings.every(isResolved));

const isResolved = ({ node, port, portPlace }: Landing) =>
  (node?.device || node?.devicePlace) && !(portPlace && node.device && !port);

/** `the 30 ft run from caseA3 to head`, as a part of a sentence. */
export const runText = (
  bus: Bus,
  index: number,
  lengthText: (length: Bus['runs'][number]['length']) => string,
): string => {
  const run = bus.runs[index]!;
  const to = run.to === undefined ? '' : ` to ${bus.landings[run.to]!.name}`;
  return `the ${lengthText(run.length)} ${run.tap ? 'tap' : 'run'} from ${bus.landings[run.from]!.name}${to}`;
};
