import { expect, it } from 'vitest';
import { Latest } from './latest.js';

/** Work that ends when the test says so. */
function heldWork() {
  const ends: (() => void)[] = [];
  const latest = new Latest(() => new Promise((resolve) => ends.push(resolve)));
  const end = async () => {
    ends.at(-1)?.();
    await new Promise((resolve) => setImmediate(resolve));
  };
  return { latest, ends, end };
}

it('works once more, and only once, for all who ask meanwhile', async () => {
  const { latest, ends, end } = heldWork();
  latest.ask();
  latest.ask();
  latest.ask();
  expect(ends).toHaveLength(1);
  await end();
  expect(ends).toHaveLength(2);
  await end();
  expect(ends).toHaveLength(2);
  latest.ask();
  expect(ends).toHaveLength(3);
});

it('begins nothing after its end', async () => {
  const { latest, ends, end } = heldWork();
  latest.ask();
  latest.ask();
  latest.dispose();
  await end();
  expect(ends).toHaveLength(1);
});
