import { expect, it } from 'vitest';
import { RememberedChoices } from './remembered.js';

function memory(kept?: unknown) {
  const held = new Map<string, unknown>([['fieldpair.waves', kept]]);
  return {
    get: (key: string) => held.get(key),
    update: (key: string, value: unknown) => {
      held.set(key, JSON.parse(JSON.stringify(value)));
      return Promise.resolve();
    },
  };
}

it('remembers what was chosen for each bus, by its text, store and name', async () => {
  const one = memory();
  await new RememberedChoices(one).keep('file:///a', 'north', 'cases', { view: 'eye', rate: '9600' });
  await new RememberedChoices(one).keep('file:///a', 'north', 'doors', { view: 'step' });
  const again = new RememberedChoices(one);
  expect(again.of('file:///a', 'north', 'cases')).toEqual({ view: 'eye', rate: '9600' });
  expect(again.of('file:///a', 'north', 'doors')).toEqual({ view: 'step' });
  expect(again.of('file:///b', 'north', 'cases')).toBeUndefined();
});

it('forgets what was looked at longest ago once there are too many', async () => {
  const remembered = new RememberedChoices(memory());
  for (let bus = 0; bus < 201; bus++) await remembered.keep('file:///a', 'north', `bus${bus}`, { view: 'step' });
  expect(remembered.of('file:///a', 'north', 'bus0')).toBeUndefined();
  expect(remembered.of('file:///a', 'north', 'bus1')).toBeDefined();
});

it('passes over what it did not keep itself', () => {
  for (const strange of ['text', 7, null, [1, 'two'], [['name', null]], [['name', { view: 'sideways' }]]]) {
    expect(new RememberedChoices(memory(strange)).of('name', 'north', 'cases')).toBeUndefined();
  }
});
