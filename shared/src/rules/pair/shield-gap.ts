import { occasion } from '../../figures/occasions.js';
import { cableNeeds } from '../../limits/cable.js';
import { metres } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { cableFaults } from './cable-faults.js';
import { cablePlaceOf, isPartlyShielded, isShielded, mainCable, recable } from './cables.js';
import { exampleFile, soundFile, soundRemarks } from './example.js';
import { shieldSections } from './shield-sections.js';

export const shieldGap: BusRule = {
  id: 'shield-gap',
  scope: 'bus',
  occasions: occasion.unusualShield | occasion.severalCables,
  severity: 'warning',
  kinds: ['rs485', 'modbus-rtu', 'bacnet-mstp', 'peer-485', 'free-topology', 'can'],
  explanation: {
    what:
      'The shield is interrupted: cut at a landing between two cables, or missing along a stretch of cable. A cut ' +
      'between stretches that are each earthed is none.',
    why:
      'A shield works by leading noise to earth. Beyond a gap it leads nowhere: it floats, and couples what it picks ' +
      'up along its whole length into the pair.',
    field: 'Devices behind the gap lose polls when motors, drives or lamps switch; those before it do not.',
    mend: 'Join the two drain wires at the landing, insulated from everything else, or pull shielded cable throughout.',
    bad: exampleFile(`from head : SiteHead terminate switch
38 ft to caseA1 : CaseBoard address 11 shield open
22 ft to caseA2 : CaseBoard address 12 terminate resistor 120 ohm
${soundRemarks}`),
    good: soundFile,
    sources: [
      'MODBUS over Serial Line, Specification and Implementation Guide V1.02, 3.6 (each shield is connected to earth)',
      'Common practice, no published source, for joining the shields of a chain at each landing',
    ],
    since: '0.1.0',
  },
  check(study, report) {
    const { bus, census, runsByCable, lengthText } = study;
    if (!isPartlyShielded(study)) return;
    const cuts = census.remarked.filter(({ shield }) => shield === 'open');
    const sections = cuts.length ? shieldSections(bus) : undefined;
    for (const landing of cuts) {
      const meeting = sections?.at(landing.index) ?? [];
      if (meeting.length < 2) continue;
      if (meeting.every((section) => sections?.earthed.has(section))) continue;
      report({
        message: `the shield is cut at ${landing.name}, so that beyond it nothing leads noise to earth; join the ${meeting.length} shields there`,
        place: landing.shieldPlace ?? landing.place,
        at: landing.name,
        fixes: () => [
          {
            title: `Join the shields at ${landing.name}`,
            safe: false,
            edits: [{ kind: 'set-shield', bus: bus.index, landing: landing.index, treatment: 'through' }],
          },
        ],
      });
    }
    const needs = bus.kind && cableNeeds[bus.kind];
    for (const [cable, runs] of runsByCable) {
      if (isShielded(cable) !== false) continue;
      // What else is wrong with the cable is told together with its missing shield.
      if (needs && cableFaults(cable, needs, false).length) continue;
      const [first, ...others] = runs;
      const length = metres(runs.reduce((sum, run) => sum + run.length, 0));
      const main = mainCable(bus, new Map([...runsByCable].filter(([other]) => isShielded(other))));
      report({
        message: `${lengthText(length)} of bus ${bus.name} run on ${cable.name}, which has no shield, while the rest is shielded; pull shielded cable there too`,
        place: cablePlaceOf(bus, first),
        related: others.map(({ place }) => ({ message: `this run is on ${cable.name} too`, place })),
        at: cable.name,
        fixes: () => (main ? [recable(bus, runs, main)] : []),
      });
    }
  },
};
