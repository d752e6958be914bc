/** A contact of which the text does not say how it lies in its loop. */
import type { Fix, WiringEdit } from '../../finding.js';
import type { Bus, Landing } from '../../network.js';
import type { BusRule } from '../rule.js';
import { loopExample, soundLoop } from './example.js';
import { loopOf, unplaced } from './loops.js';

export const contactUnplaced: BusRule = {
  id: 'contact-unplaced',
  scope: 'bus',
  severity: 'error',
  kinds: ['contact-loop'],
  check(study, report) {
    const loop = loopOf(study);
    if (!loop) return;
    for (const landing of unplaced(loop)) {
      const usual = landing.port?.contact === 'open' ? 'across' : 'breaks +';
      report({
        message: `the contact of ${landing.name} is normally ${landing.port?.contact}, and bus ${loop.bus.name} does not say how it is wired; write breaks + where it interrupts the plus conductor, breaks - for the other one, or across where it joins the two (usual for this contact: ${usual})`,
        place: landing.place,
        at: landing.name,
        fixes: () => wirings(loop.bus, landing, loop.input.port?.input?.resistor?.resistance),
      });
    }
    for (const { index, wiring, name, port, node, splice } of loop.landings) {
      if (!wiring || port?.contact || (node && !port)) continue;
      const what = splice === undefined ? `the port of ${name}` : `splice ${name}`;
      report({
        message: `${what} has no contact that could lie in the loop; write normally closed or normally open at its port in the catalogue, or take the words about it out`,
        place: wiring.place,
        at: loop.bus.landings[index]!.name,
      });
    }
  },
  explanation: {
    what: 'A landing has a contact, and the text does not say how it lies in the loop; or it says so of a landing without a contact.',
    why: 'A contact can interrupt one conductor, which is then cut and landed on its two terminals, or join the two. The installer must know which, and everything that the input reads depends on it.',
    field: 'Two installers wire two rooms in two ways; one of them alarms when the door is shut.',
    mend: 'Write `breaks +` or `breaks -` for the conductor that is cut, or `across`. A resistor over the contact is `bridged 4.7 kohm`, one in line with a contact across the pair is `through 2.2 kohm`.',
    bad: loopExample([
      '60 ft to call1 : CallButton',
      '25 ft to call2 : CallButton breaks + bridged 4.7 kohm terminate resistor 4.7 kohm',
    ]),
    good: loopExample(soundLoop),
    sources: ['Common practice, no published source'],
    since: '0.1.0',
  },
};

/** The usual wiring of the contact first; a bridge as large as the end's resistor, where the other contacts have one. */
function wirings(bus: Bus, { name, index, port }: Landing, due: number | undefined): Fix[] {
  const bridged = bus.landings.find(({ wiring }) => wiring?.kind === 'breaks' && wiring.bridge !== undefined)?.wiring;
  const bridge = bridged?.kind === 'breaks' && due !== undefined ? bridged.bridge : undefined;
  const breaks: WiringEdit = { kind: 'breaks', conductor: 'plus', ...(bridge !== undefined && { bridge }) };
  const across: WiringEdit = { kind: 'across' };
  const choices = port?.contact === 'open' ? [across, breaks] : [breaks];
  return choices.map((wiring) => ({
    title:
      wiring.kind === 'across'
        ? `Wire ${name} across the pair`
        : `Let ${name} break the plus conductor${bridge === undefined ? '' : ', bridged like the others'}`,
    safe: false,
    edits: [{ kind: 'wire-contact', bus: bus.index, landing: index, wiring }],
  }));
}
