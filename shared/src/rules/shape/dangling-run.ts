/** A cable that ends nowhere. */
import { occasion } from '../../figures/occasions.js';
import type { BusRule } from '../rule.js';
import { exampleOf } from './example.js';
import { runText } from './names.js';

export const danglingRun: BusRule = {
  id: 'dangling-run',
  scope: 'bus',
  occasions: occasion.looseRun,
  severity: 'warning',
  kinds: 'every',
  check(study, report) {
    const { bus, shape } = study;
    if (bus.damaged) return;
    for (const index of shape.loose) {
      const run = bus.runs[index]!;
      const text = runText(bus, index, study.lengthText);
      report({
        message: `${text} ends nowhere; write where it lands (to LANDING), or mark it spare if it is connected at neither end`,
        place: run.place,
        at: bus.landings[run.from]!.name,
        fixes: () => [
          { title: `Mark ${text} as spare`, safe: false, edits: [{ kind: 'mark-spare', bus: bus.index, run: index }] },
          { title: `Remove ${text}`, safe: false, edits: [{ kind: 'remove-run', bus: bus.index, run: index }] },
        ],
      });
    }
  },
  explanation: {
    what: 'A run says where it starts and not where it ends, and it is not marked spare.',
    why: 'Cable that is connected at one end is a stub: the wave runs into it and comes back from its open end. It also adds its capacitance to the bus.',
    field: 'It is mostly left over from a device that was taken out, or pulled ahead for one that is still to come.',
    mend: 'Land the far end and write it down, or take the near end off as well and mark the run `spare`.',
    bad: exampleOf([
      'from head : SiteHead terminate switch',
      '38 ft to case1 : CaseBoard address 1 terminate switch',
      '30 ft',
    ]),
    good: exampleOf([
      'from head : SiteHead terminate switch',
      '38 ft to case1 : CaseBoard address 1 terminate switch',
      '30 ft spare',
    ]),
    sources: ['Reflection at an open end (rho = 1): line theory; stubs: data sheets of RS-485 transceivers'],
    since: '0.1.0',
  },
};
