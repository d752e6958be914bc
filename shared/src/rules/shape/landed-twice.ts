/** A cable that comes back to where it, or the chain, has been already. */
import { occasion } from '../../figures/occasions.js';
import type { Bus, Run } from '../../network.js';
import { saysMore, visitBy } from '../../visits.js';
import { severityBySource } from '../ends/terminators.js';
import type { BusRule } from '../rule.js';
import { exampleOf } from './example.js';
import { runText, trunkKinds } from './names.js';
import { oneChainFixes } from './one-chain.js';

/** Whether the chain goes on from the landing that this run comes back to: it is passed twice, which is no ring. */
export function passesTwice(bus: Bus, run: Run): boolean {
  const next = bus.runs[run.index + 1];
  if (run.tap || run.to === undefined || run.to === run.from || !next || next.from !== run.to) return false;
  return !bus.pens.some(
    ({ place }) => place.file === run.place.file && run.place.end <= place.start && place.end <= next.place.start,
  );
}

/** Whether there is another run between the same two landings that the text has before this one. */
const hasTwin = (bus: Bus, run: Run): boolean =>
  bus.landings[run.from]!.runs.some((index) => {
    const other = bus.runs[index]!;
    const there = other.from === run.from && other.to === run.to;
    return index < run.index && (there || (other.from === run.to && other.to === run.from));
  });

/** Why a run that closes a loop lands twice, as the end of a sentence; undefined when it closes a ring. */
export function landsTwice(bus: Bus, run: Run): string | undefined {
  const [from, to] = [bus.landings[run.from]!.name, bus.landings[run.to ?? run.from]!.name];
  if (run.from === run.to) return `leaves ${from} and comes back to it`;
  if (passesTwice(bus, run)) return `comes back to ${to}, which the chain has passed before`;
  return hasTwin(bus, run) ? `joins ${from} and ${to}, which another cable joins already` : undefined;
}

export const landedTwice: BusRule = {
  id: 'landed-twice',
  scope: 'bus',
  occasions: occasion.loop,
  severity: 'error',
  kinds: trunkKinds,
  check(study, report) {
    const { bus, shape } = study;
    if (bus.damaged) return;
    for (const index of shape.closing) {
      const run = bus.runs[index]!;
      const what = landsTwice(bus, run);
      if (what === undefined) continue;
      const landing = bus.landings[run.to ?? run.from]!;
      const visit = visitBy(landing, run);
      report({
        message: `${runText(bus, index, study.lengthText)} ${what}; each landing of bus ${bus.name} is reached once: name the device that this cable really reaches, or remove the run`,
        place: visit?.referencePlace ?? run.place,
        related: [{ message: `${landing.name} is landed here first`, place: landing.place }],
        at: landing.name,
        severity: severityBySource(bus),
        // A run in the middle of the chain, or one that properties are written with, is left out by drawing the bus anew.
        fixes: () =>
          passesTwice(bus, run) || !visit || saysMore(visit)
            ? oneChainFixes(study, run)
            : [
                {
                  title: `Remove ${runText(bus, index, study.lengthText)}`,
                  safe: false,
                  edits: [{ kind: 'remove-run', bus: bus.index, run: index }],
                },
              ],
      });
    }
  },
  explanation: {
    what: 'A cable leaves a landing and comes back to it, or reaches one that the chain has passed already.',
    why: 'Mostly it is a name that was written twice, so that the plan lacks a device. If it is really wired so, the wave runs both ways round and arrives at different times.',
    field: 'The device that the plan lacks is searched for in vain; addresses and pull list are one short.',
    mend: 'Write the name of the device that the cable reaches. A cable that really comes back is taken out.',
    bad: exampleOf([
      'from head : SiteHead terminate switch',
      '38 ft to case1 : CaseBoard address 1',
      '22 ft to case2 : CaseBoard address 2 terminate switch',
      '22 ft to case2',
    ]),
    good: exampleOf([
      'from head : SiteHead terminate switch',
      '38 ft to case1 : CaseBoard address 1',
      '22 ft to case2 : CaseBoard address 2',
      '22 ft to case3 : CaseBoard address 3 terminate switch',
    ]),
    sources: [
      'MODBUS over Serial Line, Specification and Implementation Guide V1.02, 3.4.2: one trunk',
      'Other kinds: common practice, no published source, hence a warning',
    ],
    since: '0.1.0',
  },
};
