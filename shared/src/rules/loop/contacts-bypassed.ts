/** A loop whose cable closes a ring. */
import type { Fix } from '../../finding.js';
import type { Bus, Run } from '../../network.js';
import { saysMore, visitBy } from '../../visits.js';
import type { BusRule } from '../rule.js';
import { runText } from '../shape/names.js';
import { loopExample, soundLoop } from './example.js';

export const contactsBypassed: BusRule = {
  id: 'contacts-bypassed',
  scope: 'bus',
  severity: 'error',
  kinds: ['contact-loop'],
  check(study, report) {
    const { bus, shape } = study;
    const input = bus.landings.find(({ port }) => port?.input);
    if (bus.damaged || !input) return;
    const component = shape.componentOf[input.index];
    for (const index of shape.closing) {
      const run = bus.runs[index]!;
      if (run.to === undefined || run.to === run.from || shape.componentOf[run.from] !== component) continue;
      const text = runText(bus, index, study.lengthText);
      report({
        message: `${text} closes a ring of cable pairs; a contact that breaks a conductor in it is bypassed by the other way round: leave one run of the ring out`,
        place: run.place,
        at: bus.landings[run.to]!.name,
        fixes: () => (saysMoreThanRun(bus, run) ? [] : [leaveOut(bus, run, text)]),
      });
    }
  },
  explanation: {
    what: 'The cable pairs of a contact loop close a ring.',
    why: 'Current reaches every landing both ways, so that a contact that opens in one of them changes nothing, or less than the input needs to see. The loop of an alarm is the way out on one conductor and back on the other, not a ring of cable.',
    field: 'A contact opens and no alarm comes until a second one opens too; a cut wire goes unnoticed.',
    mend: 'Leave out one run, so that the cable has one end, and put the resistor there.',
    bad: loopExample([...soundLoop, '40 ft to panel']),
    good: loopExample(soundLoop),
    sources: ['Series and parallel connection of resistances: circuit theory'],
    since: '0.1.0',
  },
};

/** What is written with the run about its landing would go with it. */
function saysMoreThanRun(bus: Bus, run: Run): boolean {
  const visit = visitBy(bus.landings[run.to!]!, run);
  return visit !== undefined && saysMore(visit);
}

const leaveOut = (bus: Bus, { index }: Run, text: string): Fix => ({
  title: `Leave out ${text}`,
  safe: false,
  edits: [{ kind: 'remove-run', bus: bus.index, run: index }],
});
