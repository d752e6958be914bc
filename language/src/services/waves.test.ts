import { describe, expect, it } from 'vitest';
import { projectOf } from '../testing/check-text.js';
import { codeLenses, showWavesCommand } from './code-lens.js';
import { Desk } from './desk.js';
import { hover } from './hover.js';
import { planWaves, type WaveWishes } from './waves.js';

const text = `
cable Pair22 { conductor 22 AWG impedance 120 ohm velocity 66 % }
device Head { role head port field : rs485 { load 1/8 } }
device Board { port field : rs485 { load 1/8 } }
store trial {
  node head : Head
  bus cases : modbus-rtu 19200 8E1 on Pair22 {
    from head terminate resistor 120 ohm
    30 m to caseA : Board address 1
    20 m to caseB : Board address 2
    colours + white - blue
  }
  bus feed : supply on Pair22 { }
  bus other : modbus-rtu on Pair22 { from head }
}
`;
const desk = new Desk(projectOf({ 'store.pair': text }));
const plan = (wishes: Partial<WaveWishes> = {}, position?: { line: number; character: number }) =>
  planWaves(desk, 'store.pair', { view: 'pattern', ...wishes }, position)!;

describe('the way to the waveforms of a bus', () => {
  const place = { line: 6, character: 7 };
  const said = () => JSON.stringify(hover(desk, 'store.pair', place)?.contents);

  it('is a lens above each bus that has any', () => {
    const found = codeLenses(desk, 'store.pair').filter(({ command }) => command?.title === 'Waveforms');
    expect(found.map(({ command }) => command?.command)).toEqual(new Array(2).fill(showWavesCommand));
    expect(found[0]?.command?.arguments).toEqual(['store.pair', { line: 6, character: 6 }]);
  });

  it('is in the hover of a bus where an editor follows links to commands', () => {
    expect(said()).not.toContain('command:');
    desk.commandLinks = true;
    expect(said()).toContain(`[Show waveforms](command:${showWavesCommand}?%5B%22store.pair%22`);
    desk.commandLinks = false;
  });
});

describe('what is simulated for a view', () => {
  it('is the bus that is named, else the one at the place, else the first', () => {
    expect(plan().written.bus.name).toBe('cases');
    expect(plan({ store: 'trial', bus: 'other' }).written.bus.name).toBe('other');
    expect(plan({}, { line: 13, character: 8 }).written.bus.name).toBe('other');
    expect(plan({ store: 'trial', bus: 'gone' }).written.bus.name).toBe('cases');
    expect(plan().buses.map(({ bus }) => bus.name)).toEqual(['cases', 'other']);
    expect(planWaves(new Desk(projectOf({ 'x.pair': 'store x {\n}\n' })), 'x.pair', { view: 'step' })).toBeUndefined();
  });

  it('is driven by the head, at the rate and edge of the bus, unless wished otherwise', () => {
    expect(plan().written.question).toEqual({ driver: 0, samples: expect.any(Number) });
    const { question } = plan({ driver: 'caseB', rate: '115.2 kbit/s', edge: '300 ns', bits: '0101 0011' }).written;
    expect(question).toMatchObject({
      driver: 2,
      rate: expect.closeTo(115_200, 6),
      edge: expect.closeTo(3e-7, 12),
      pattern: '01010011',
    });
    expect(plan({ view: 'eye' }).written.question.pattern).toHaveLength(134);
  });

  it('goes without what cannot be had, and says so', () => {
    const { written, changed, problems } = plan({
      driver: 'caseX',
      rate: 'fast',
      edge: '3 m',
      bits: '012',
      faults: ['melted'],
      fix: 'no such fix',
    });
    expect(written.question).toEqual({ driver: 0, samples: expect.any(Number) });
    expect(changed).toBeUndefined();
    expect(problems).toHaveLength(6);
    for (const problem of problems) expect(problem).toMatch(/^[A-Z].*\.$/);
  });

  it('is compared with faults', () => {
    const { changed } = plan({ faults: ['crossed at caseA', 'no terminator at head'] });
    expect(changed?.question.faults?.map(({ kind }) => kind)).toEqual(['crossed', 'terminators']);
    expect(changed?.name).toBe('with crossed at caseA and no terminator at head');
  });

  it('is compared with a fix of one of its findings, which only fixes that matter to a signal are', () => {
    const { fixes } = plan();
    const fix = fixes.find(({ title }) => /Terminate caseB/.test(title))!;
    expect(fixes.filter(({ title }) => /[Aa]ddress|colour/.test(title))).toEqual([]);
    const { changed } = plan({ fix: fix.id });
    expect(changed?.name).toBe('as it should be');
    expect(changed?.bus.landings[2]?.terminations).toHaveLength(1);
    const both = plan({ fix: fix.id, faults: ['crossed at caseB'] }).changed;
    expect(both?.name).toBe('mended, and with crossed at caseB');
    expect(both?.question.faults).toEqual([{ kind: 'crossed', landing: 2 }]);
  });
});
