import { describe, expect, it } from 'vitest';
import type { AddressSetting } from '../catalogue.js';
import type { Picture } from './picture.js';
import { addressPosition } from './setting-picture.js';

/** What somebody reads who looks at the sliders, told from where the black of each is in its slot. */
function switchesIn({ shapes }: Picture): boolean[] {
  const boxes = shapes.flatMap((shape) => (shape.shape === 'box' ? shape : []));
  const [slots, sliders] = ['thin', 'point'].map((look) =>
    boxes.filter((one) => one.look === look).map(({ box }) => box),
  );
  const on = shapes.find((shape) => shape.shape === 'text' && shape.text === 'ON');
  return slots!.map((slot) => {
    const slider = sliders!.find(({ x, width }) => slot.x <= x && x + width <= slot.x + slot.width)!;
    const middle = slot.y + slot.height / 2;
    const isUp = slider.y + slider.height / 2 < middle;
    const onIsUp = on?.shape === 'text' && on.y - on.size / 3 < middle;
    return isUp === onIsUp;
  });
}

const addressOf = (states: readonly boolean[], first: 'least' | 'most'): number =>
  (first === 'least' ? states.toReversed() : states).reduce((value, state) => 2 * value + (state ? 1 : 0), 0);

describe('switches', () => {
  it.each([
    ['least', 'up'],
    ['least', 'down'],
    ['most', 'up'],
    ['most', 'down'],
  ] as const)('that count %s first with ON %s show each address', (first, on) => {
    const setting: AddressSetting = { means: 'switches', low: 0, high: 127, positions: 8, first, on };
    for (let address = 0; address <= 127; address++) {
      const states = switchesIn(addressPosition(setting, address)!.picture!);
      expect(states).toHaveLength(8);
      expect(addressOf(states, first)).toBe(address);
    }
  });

  it('that count where they are off show the opposite', () => {
    const setting: AddressSetting = { means: 'switches', low: 0, high: 15, first: 'least', on: 'up', onIsZero: true };
    const states = switchesIn(addressPosition(setting, 5)!.picture!);
    expect(states).toEqual([false, true, false, true]);
  });

  it('are told in words too', () => {
    const setting: AddressSetting = { means: 'switches', low: 0, high: 63, first: 'least' };
    expect(addressPosition(setting, 21)?.text).toBe('1, 3 and 5 ON, all others OFF');
    expect(addressPosition(setting, 0)?.text).toBe('all OFF');
    expect(addressPosition(setting, 63)?.text).toBe('all ON');
    expect(addressPosition(setting, 62)?.text).toBe('2, 3, 4, 5 and 6 ON, all others OFF');
  });

  it('have no picture where nobody knows which one counts what', () => {
    expect(addressPosition({ means: 'switches', low: 1, high: 63 }, 11)).toEqual({
      text: 'ON: those that count 1, 2, 8; all others OFF (the catalogue does not say which switch counts what)',
    });
  });
});

describe('dials', () => {
  const digitsIn = ({ shapes }: Picture) =>
    shapes.flatMap((shape) => (shape.shape === 'text' && shape.bold ? shape.text : [])).join('');

  it('show the digits as they are written, or turned round', () => {
    const setting: AddressSetting = { means: 'dial', low: 1, high: 99 };
    expect(addressPosition(setting, 7)?.text).toBe('tens 0, ones 7');
    expect(digitsIn(addressPosition(setting, 42)!.picture!)).toBe('42');
    expect(digitsIn(addressPosition({ ...setting, first: 'least' }, 42)!.picture!)).toBe('24');
    expect(digitsIn(addressPosition({ ...setting, positions: 3 }, 42)!.picture!)).toBe('042');
  });

  it('may be hexadecimal', () => {
    const setting: AddressSetting = { means: 'dial', low: 0, high: 255, hexadecimal: true };
    expect(addressPosition(setting, 175)).toMatchObject({ text: 'x 16 A, x 1 F' });
    expect(addressPosition({ ...setting, high: 15 }, 11)?.text).toBe('dial at B');
  });
});

it('an address that the device does not have has no position', () => {
  const setting: AddressSetting = { means: 'dial', low: 1, high: 99 };
  for (const address of [0, 100, 1.5, Number.NaN]) expect(addressPosition(setting, address)).toBeUndefined();
  expect(addressPosition({ means: 'software', low: 1, high: 247 }, 31)).toEqual({ text: 'set to 31 by software' });
});
