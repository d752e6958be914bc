import { expect, it } from 'vitest';
import { busOf, headDevice } from '../testing/network.js';
import { censusOf } from './census.js';

it('counts landings by what they are on, and names those that are out of the ordinary', () => {
  const { bus } = busOf('rs485')
    .from('head', { device: headDevice, terminate: 120 })
    .to('a', 10, { address: 4 })
    .to('s', 10, { splice: true })
    .to('b', 10, { address: 2.5, crossed: true })
    .to('c', 10, { device: null })
    .built();
  const { outfits, remarked, ascending } = censusOf(bus);
  expect(
    outfits.map(({ isSplice, device, landings }) => [isSplice, device?.name, landings.map(({ name }) => name)]),
  ).toEqual([
    [false, headDevice.name, ['head']],
    [false, bus.landings[1]?.node?.device?.name, ['a', 'b']],
    [true, undefined, ['s']],
    [false, undefined, ['c']],
  ]);
  expect(outfits[1]?.addresses).toMatchObject({ least: 2.5, most: 4, allWhole: false, complete: true });
  expect(outfits[0]?.addresses).toMatchObject({ least: Number.POSITIVE_INFINITY, complete: false });
  expect(remarked.map(({ name }) => name)).toEqual(['head', 'b']);
  expect(ascending).toBe(false);
});
