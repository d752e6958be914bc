/**
 * Supplies and contact loops against ngspice (npm package `eecircuit-engine`), a circuit simulator that shares nothing
 * with this project: random trees and rings of both wires, with fixed currents and fixed powers, and every state of
 * random loops.
 */
import { Simulation } from 'eecircuit-engine';
import { beforeAll, describe, expect, it } from 'vitest';
import { studyText } from '../../language/src/testing/study-text.js';
import { isUnknown } from '../../shared/src/figures/study.js';
import { chanceOf } from '../../shared/src/testing/chance.js';

const simulation = new Simulation();
beforeAll(async () => simulation.start());

/** Operating point of a netlist: node voltages by name. */
async function operatingPoint(lines: readonly string[]): Promise<Map<string, number>> {
  simulation.setNetList(
    ['* two wires', ...lines, '.options reltol=1e-9 abstol=1e-15 vntol=1e-12', '.op', '.end'].join('\n'),
  );
  const result = await simulation.runSim();
  // A run that failed does not throw: it has no data, and the reason among the errors.
  expect(result.data.length, simulation.getError().join('\n')).toBeGreaterThan(0);
  return new Map(result.data.map(({ name, values }) => [name.toLowerCase(), Number(values[0])]));
}

/** Ohms of one conductor per metre, at 20 degC. */
const perMetre = 0.02;
const cable = `cable Wire {\n  conductor 1 mm2 stranded\n  resistance ${perMetre * 1000} ohm/km\n}\n`;

interface DrawnRun {
  readonly from: number;
  readonly to: number;
  readonly length: number;
}

/** A tree of landings 0 to count - 1, each hung on an earlier one. */
function drawnTree(chance: () => number, count: number, longest: number): DrawnRun[] {
  return Array.from({ length: count - 1 }, (_, index) => ({
    from: chance() < 0.6 ? index : Math.floor(chance() * (index + 1)),
    to: index + 1,
    length: Math.round((1 + chance() * longest) * 10) / 10,
  }));
}

const courseOf = (runs: readonly DrawnRun[], say: (landing: number) => string) =>
  [`from ${say(0)}`, ...runs.flatMap(({ from, to, length }) => [`from n${from}`, `${length} m to ${say(to)}`])].join(
    '\n',
  );

describe('supplies', () => {
  const seeds = Array.from({ length: 24 }, (_, seed) => ({ seed: seed + 1, ring: seed % 3 === 2 }));
  it.each(seeds)('seed $seed, ring: $ring', async ({ seed, ring }) => {
    const chance = chanceOf(seed);
    const count = 3 + Math.floor(chance() * 8);
    const runs = drawnTree(chance, count, 30);
    const loads = Array.from({ length: count }, (_, landing) => {
      if (landing === 0) return undefined;
      return chance() < 0.5
        ? { amperes: Math.round(50 + chance() * 350) / 1000 }
        : { watts: Math.round(5 + chance() * 50) / 10 };
    });
    const devices = loads.map((load, index) =>
      load
        ? `device L${index} { port p : supply { draws ${'amperes' in load ? `${load.amperes} A` : `${load.watts} W`} } }`
        : `device L${index} { port p : supply { supplies 24 V dc within 5 % } }`,
    );
    const told = new Set<number>();
    const say = (landing: number) => {
      const again = told.has(landing);
      told.add(landing);
      return again ? `n${landing}` : `n${landing} : L${landing}`;
    };
    const course = courseOf(runs, say);
    const closing = ring ? [{ from: count - 1, to: 0, length: 12.5 }] : [];
    const text = `${cable}${devices.join('\n')}\nstore s {\n bus b : supply on Wire {\n${course}${ring ? `\nfrom n${count - 1}\n12.5 m to n0` : ''}\n}\n}\n`;
    const { supply, bus } = studyText(text);
    if (isUnknown(supply)) throw new Error(supply.unknown);

    const netlist = (source: number, factor: number) => [
      `Vsource p0 0 ${source}`,
      'Rground m0 0 1e-6',
      ...[...runs, ...closing].flatMap(({ from, to, length }, index) =>
        ['p', 'm'].map((wire) => `R${wire}${index} ${wire}${from} ${wire}${to} ${length * perMetre * factor}`),
      ),
      ...loads.flatMap((load, landing) => {
        if (!load) return [];
        const between = `p${landing} m${landing}`;
        // Never near 5 V here; the simulator starts its search at 0 V.
        if ('watts' in load) return [`B${landing} ${between} I=${load.watts}/max(v(p${landing},m${landing}),5)`];
        return [`I${landing} ${between} ${load.amperes}`];
      }),
    ];
    // 5 % for the cable, and 50 degC in place of 20 degC: 1 + 0.00393 * 30 (NBS Handbook 100).
    const nominal = await operatingPoint(netlist(24, 1));
    const worst = await operatingPoint(netlist(24 * 0.95, 1.05 * (1 + 0.00393 * 30)));
    const between = (point: Map<string, number>, landing: number) =>
      point.get(`v(p${landing})`)! - point.get(`v(m${landing})`)!;
    for (const { index, name } of bus.landings) {
      const level = supply.volts[index]!;
      if (isUnknown(level)) throw new Error(level.unknown);
      const landing = Number(name.slice(1));
      expect(level.nominal).toBeCloseTo(between(nominal, landing), 4);
      expect(level.low).toBeCloseTo(between(worst, landing), 4);
      expect(level.high).toBeCloseTo(24 * 1.05, 9);
    }
    for (const [index, { from, to, length }] of [...runs, ...closing].entries()) {
      const current = supply.amperes[index]!;
      if (isUnknown(current)) throw new Error(current.unknown);
      const flowing = (nominal.get(`v(p${from})`)! - nominal.get(`v(p${to})`)!) / (length * perMetre);
      expect(current.nominal).toBeCloseTo(Math.abs(flowing), 4);
    }
  });
});

describe('contact loops', () => {
  // Gaps and joints as far apart as the simulator's arithmetic bears; resistors of a loop lie far between them.
  const open = 1e9;
  const joint = 1e-4;
  interface Contact {
    readonly rest: 'closed' | 'open';
    readonly lies: 'breaks +' | 'breaks -' | 'across';
    readonly resistor?: number;
  }

  it.each(Array.from({ length: 24 }, (_, seed) => seed + 1))('seed %i', async (seed) => {
    const chance = chanceOf(seed);
    const count = 3 + Math.floor(chance() * 5);
    const runs = drawnTree(chance, count, 300);
    const resistorOf = () => [1000, 2200, 4700, 10_000][Math.floor(chance() * 4)]!;
    const contacts = Array.from({ length: count }, (_, landing): Contact | undefined => {
      if (landing === 0 || chance() < 0.2) return undefined;
      const lies = (['breaks +', 'breaks -', 'across'] as const)[Math.floor(chance() * 3)]!;
      const usual = lies === 'across' ? 'open' : 'closed';
      const rest = chance() < 0.85 ? usual : usual === 'open' ? 'closed' : 'open';
      return { rest, lies, ...(chance() < 0.7 && { resistor: resistorOf() }) };
    });
    const inner = new Set(runs.map(({ from }) => from));
    const ends = contacts.map((_, landing) =>
      landing !== 0 && !inner.has(landing) && chance() < 0.9 ? resistorOf() : undefined,
    );
    const words = (landing: number) => {
      const { lies, resistor } = contacts[landing] ?? {};
      const own = resistor === undefined ? '' : ` ${lies === 'across' ? 'through' : 'bridged'} ${resistor} ohm`;
      const end = ends[landing] === undefined ? '' : ` terminate resistor ${ends[landing]} ohm`;
      return `${lies === undefined ? '' : ` ${lies}${own}`}${end}`;
    };
    const told = new Set<number>();
    const say = (landing: number) => {
      const again = told.has(landing);
      told.add(landing);
      if (again) return `n${landing}`;
      if (landing > 0 && !contacts[landing]) return `splice n${landing}${words(landing)}`;
      const device = landing === 0 ? 'Panel' : contacts[landing]?.rest === 'closed' ? 'Closed' : 'Open';
      return `n${landing} : ${device}${words(landing)}`;
    };
    const text = `${cable}
device Panel { port p : contact-loop { reads normal below 1 Mohm } }
device Closed { port p : contact-loop { normally closed } }
device Open { port p : contact-loop { normally open } }
store s {\n bus b : contact-loop on Wire {\n${courseOf(runs, say)}\n}\n}\n`;
    const { contactLoop: loop, bus } = studyText(text);
    if (isUnknown(loop)) throw new Error(loop.unknown);

    /** One copy of the loop, a microampere fed into its input. `touched` are the near ends where the wires touch. */
    const copy = (prefix: string, alarms: readonly number[], cut?: number, touched?: number): string[] => {
      const near = (wire: string, landing: number) => `${prefix}${wire}${landing}n`;
      const far = (wire: string, landing: number) => `${prefix}${wire}${landing}f`;
      const lines = [`I${prefix} 0 ${near('p', 0)} 1u`, `R${prefix}0 ${near('m', 0)} 0 ${joint}`];
      lines.push(`R${prefix}leak ${near('p', 0)} 0 ${open}`);
      const resistor = (left: string, right: string, value: number) =>
        lines.push(`R${prefix}x${lines.length} ${left} ${right} ${value}`);
      for (const [index, { from, to, length }] of runs.entries()) {
        for (const wire of ['p', 'm']) {
          resistor(far(wire, from), near(wire, to), index === cut ? open : length * perMetre);
        }
      }
      for (let landing = 0; landing < count; landing++) {
        const contact = contacts[landing];
        const closed = contact && (contact.rest === 'closed') !== alarms.includes(landing);
        for (const wire of ['p', 'm']) {
          const breaks = contact?.lies === (wire === 'p' ? 'breaks +' : 'breaks -');
          resistor(near(wire, landing), far(wire, landing), breaks && !closed ? (contact?.resistor ?? open) : joint);
        }
        if (contact?.lies === 'across') {
          resistor(far('p', landing), far('m', landing), closed ? (contact.resistor ?? joint) : open);
        }
        const end = ends[landing];
        if (end !== undefined) resistor(far('p', landing), far('m', landing), end);
        if (landing === touched) resistor(near('p', landing), near('m', landing), joint);
      }
      return lines;
    };
    const alarmed = contacts.flatMap((contact, landing) => (contact ? [landing] : []));
    const point = await operatingPoint([
      ...copy('rest', []),
      ...copy('all', alarmed),
      ...alarmed.flatMap((landing) => copy(`alarm${landing}z`, [landing])),
      ...runs.flatMap(({ to }, index) => [...copy(`cut${to}z`, [], index), ...copy(`touch${to}z`, [], undefined, to)]),
    ]);
    const seen = (prefix: string) => point.get(`v(${prefix}p0n)`)! / 1e-6;
    const compare = (resistance: number, prefix: string) => {
      if (1e6 < resistance) expect(seen(prefix)).toBeGreaterThan(1e7);
      else expect(Math.abs(resistance - seen(prefix))).toBeLessThan(1e-4 * resistance + 1e-2);
    };
    const numberOf = (landing: number) => Number(bus.landings[landing]!.name.slice(1));
    for (const { state, landing, resistance } of loop.states) {
      expect(resistance.low).toBeLessThanOrEqual(resistance.nominal);
      expect(resistance.nominal).toBeLessThanOrEqual(resistance.high);
      if (state === 'normal') compare(resistance.nominal, 'rest');
      if (state === 'all alarms') compare(resistance.nominal, 'all');
      if (state === 'alarm') compare(resistance.nominal, `alarm${numberOf(landing!)}z`);
    }
    for (const { landing, cut, short } of loop.wires) {
      compare(cut.nominal, `cut${numberOf(landing)}z`);
      compare(short.nominal, `touch${numberOf(landing)}z`);
    }
  });
});
