import { describe, expect, it } from 'vitest';
import type { Cable } from '../network.js';
import { farads, ohms } from '../quantity.js';
import { busOf, testCable } from '../testing/network.js';
import { segmentForm, segmentLimits, segmentRow } from './free-topology.js';

const bare = (differing: Partial<Cable>) => {
  const { impedance: _, ...cable } = testCable(differing);
  return cable;
};
const limitsOf = (cable: Cable) => {
  const row = segmentRow(cable);
  return row && [row.bus, row.apart, row.total];
};

describe('the reach of free topology', () => {
  // Free topology transceiver data books: doubly terminated bus; device to device and total wire in free topology, in metres.
  it.each([
    [
      'a stranded pair of 16 AWG with fluoropolymer',
      { gauge: 16, stranding: 'stranded', insulation: 'fluoropolymer' },
      [2700, 500, 500],
    ],
    ['a stranded pair of 16 AWG with PVC', { gauge: 16, stranding: 'stranded', insulation: 'pvc' }, [2700, 400, 500]],
    ['level IV', { class: 'level-4' }, [1400, 400, 500]],
    ['J-Y(St)Y 2x2x0.8', { class: 'jysty-08' }, [900, 320, 500]],
    ['category 5', { class: 'category-5' }, [900, 250, 450]],
    ['category 6', { class: 'category-6' }, [900, 250, 450]],
  ] as const)('on %s is that of the table', (_, differing, limits) => {
    expect(limitsOf(bare(differing))).toEqual(limits);
  });

  it('is told by what makes a category cable, and taken as the shorter one where insulation is unsaid', () => {
    expect(limitsOf(testCable({ gauge: 24, pairs: 4, impedance: ohms(100) }))).toEqual([900, 250, 450]);
    expect(limitsOf(bare({ gauge: 16, stranding: 'stranded' }))).toEqual([2700, 400, 500]);
  });

  it('is not told by the gauge of any other cable', () => {
    expect(segmentRow(bare({ gauge: 22 }))).toBeUndefined();
    expect(segmentRow(bare({ gauge: 16, stranding: 'solid' }))).toBeUndefined();
    expect(segmentRow(bare({ gauge: 16, stranding: 'stranded', pairs: 0 }))).toBeUndefined();
  });

  it('is the least of its cables, and that of the best where none is known', () => {
    const level4 = bare({ name: 'L', class: 'level-4' });
    const category = bare({ name: 'C', class: 'category-5' });
    const mixed = (...cables: Cable[]) =>
      cables.reduce((bus, cable, index) => bus.to(`n${index}`, 5, { cable }), busOf('free-topology').from('a')).built()
        .bus;
    expect(segmentLimits(mixed(level4, category)).total).toBe(450);
    expect(segmentLimits(mixed(level4, bare({ name: 'X' }))).apart).toBe(400);
    expect(segmentLimits(mixed(bare({ name: 'X' }))).total).toBe(500);
  });
});

describe('the form of a segment', () => {
  const rc = (resistance: number) => [
    { means: 'resistor' as const, resistance: ohms(resistance), capacitance: farads(100e-6) },
  ];
  const chain = (first?: number, middle?: number, last?: number) => {
    const words = (resistance?: number) => (resistance === undefined ? {} : { terminate: rc(resistance) });
    return busOf('free-topology').from('a', words(first)).to('b', 5, words(middle)).to('c', 5, words(last)).built()
      .study;
  };

  it('is free without terminators, with one of 52.3 ohm, and with one in the middle', () => {
    for (const study of [chain(), chain(52.3), chain(undefined, 52.3), chain(undefined, 105)])
      expect(segmentForm(study)).toBe('free');
  });

  it('is a bus with two of them, or with one of a bus at an end', () => {
    for (const study of [chain(105, undefined, 105), chain(52.3, undefined, 52.3), chain(105), chain(105, 105)])
      expect(segmentForm(study)).toBe('bus');
  });

  it('is free for every other shape, whatever terminates it', () => {
    const star = busOf('free-topology')
      .from('a', { terminate: rc(105) })
      .to('b', 5, { terminate: rc(105) });
    const { study } = star.from('a').to('c', 5).from('a').to('d', 5).built();
    expect(segmentForm(study)).toBe('free');
  });
});
