import { describe, expect, it } from 'vitest';
import { isUnknown } from '../known.js';
import type { Cable } from '../network.js';
import { metres, ratio } from '../quantity.js';
import { busOf, testCable } from '../testing/network.js';
import { channelDelay, linkDelay, linkResistance } from './links.js';

const links = () =>
  busOf('ethernet')
    .from('p1')
    .to('a', 40)
    .from('p2')
    .to('box', 30, { splice: true })
    .to('panel', 20, { splice: true })
    .to('b', 10)
    .from('p3')
    .to('outlet', 5, { splice: true });

describe('the links of an Ethernet bus', () => {
  it('are its runs, joined where they meet at a splice', () => {
    const { study, bus } = links().built();
    const named = study.links.map(({ from, to, length }) => [bus.landings[from]?.name, bus.landings[to]?.name, length]);
    expect(named).toEqual([
      ['p1', 'a', 40],
      ['p2', 'b', 60],
      ['p3', 'outlet', 5],
    ]);
  });

  it('are found whichever of their runs the text has first', () => {
    const { study, bus } = busOf('ethernet').from('box', { splice: true }).to('b', 10).from('a').to('box', 20).built();
    expect(
      study.links.map(({ from, to, runs }) => [bus.landings[from]?.name, bus.landings[to]?.name, runs.length]),
    ).toEqual([['a', 'b', 2]]);
  });

  it('end at a splice where three meet, and in a ring of splices somewhere', () => {
    const star = busOf('ethernet')
      .from('hub', { splice: true })
      .to('a', 1)
      .from('hub')
      .to('b', 1)
      .from('hub')
      .to('c', 1);
    expect(star.built().study.links).toHaveLength(3);
    const ring = busOf('ethernet')
      .from('x', { splice: true })
      .to('y', 1, { splice: true })
      .to('z', 1, { splice: true });
    expect(ring.to('x', 1).built().study.links).toHaveLength(1);
  });

  it('have a resistance, a delay, and distances of their own', () => {
    // 24 AWG: 84.2 ohm/km of one conductor (NBS Handbook 100).
    const { study } = busOf('ethernet', { cable: testCable({ gauge: 24 }) })
      .from('p1')
      .to('a', 40)
      .from('p2')
      .to('b', 90)
      .built();
    const [, second] = study.links;
    const resistance = second ? linkResistance(study, second) : { unknown: 'no link' };
    expect(isUnknown(resistance) ? undefined : resistance.nominal).toBeCloseTo(2 * 0.0842 * 90, 1);
    expect(second && linkDelay(study, second)).toBeCloseTo(90 / (0.66 * 299_792_458), 12);
    expect(study.shape.distance).toEqual([0, metres(40), 0, metres(90)]);
    const withCords = (cable?: Cable) => {
      const runs = second!.runs.map((run) => ({
        ...run,
        cords: { length: metres(10), place: run.place, ...(cable && { cable }) },
      }));
      return channelDelay(study, { ...second!, runs });
    };
    expect(withCords()).toBeCloseTo(100 / (0.66 * 299_792_458), 12);
    expect(withCords(testCable({ velocity: ratio(0.5) }))).toBeCloseTo((90 / 0.66 + 10 / 0.5) / 299_792_458, 12);
    expect(study.delay.every((delay) => !isUnknown(delay))).toBe(true);
  });
});
