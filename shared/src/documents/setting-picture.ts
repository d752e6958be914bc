/** How an address looks on the dials or switches of a device: as a picture, and in words. */
import type { AddressSetting } from '../catalogue.js';
import type { Shape } from '../drawing/scene.js';
import { box, circle, path, text } from '../drawing/shapes.js';
import { allListed } from '../known.js';
import type { Picture } from './picture.js';

/** What the setter of an address sees and does. */
export interface AddressPosition {
  /** `tens 1, ones 4`; `1, 2 and 4 ON, all others OFF`. */
  readonly text: string;
  /** Absent where the address is typed in, or where the catalogue does not say which switch counts what. */
  readonly picture?: Picture;
  /** What is to be read beside the picture; a dial says all by itself. */
  readonly caption?: string;
}

/** Undefined where the device cannot be set to the address. */
export function addressPosition(setting: AddressSetting, address: number): AddressPosition | undefined {
  if (!Number.isInteger(address) || address < 0 || address < setting.low || setting.high < address) return undefined;
  if (setting.means === 'software') return { text: `set to ${address} by software` };
  return setting.means === 'dial' ? dialPosition(setting, address) : switchPosition(setting, address);
}

const decimalPlaces = ['ones', 'tens', 'hundreds', 'thousands'];

function dialPosition({ high, positions, first, hexadecimal }: AddressSetting, address: number): AddressPosition {
  const base = hexadecimal ? 16 : 10;
  const count = positions ?? high.toString(base).length;
  // What counts most comes first, as numbers are written, unless the catalogue says otherwise.
  const digits = [...address.toString(base).toUpperCase().padStart(count, '0')].map((digit, index) => ({
    digit,
    place: placeName(count - 1 - index, base),
  }));
  if (first === 'least') digits.reverse();
  const words =
    count === 1 ? `dial at ${digits[0]!.digit}` : digits.map(({ place, digit }) => `${place} ${digit}`).join(', ');
  return { text: words, picture: dialPicture(digits, words) };
}

const placeName = (exponent: number, base: number) =>
  (base === 10 ? decimalPlaces[exponent] : undefined) ?? `x ${base ** exponent}`;

const dialPitch = 50;
const dialRadius = 11;

/** Each dial as a knob whose mark points at its digit; which way up it is mounted is not known. */
function dialPicture(digits: readonly { digit: string; place: string }[], description: string): Picture {
  const shapes = digits.flatMap(({ digit, place }, index): Shape[] => {
    const x = dialPitch * (index + 0.5);
    const y = 19;
    return [
      circle('thin', x, y, dialRadius),
      path('point', `M${x - 5} 1H${x + 5}L${x} 8Z`),
      text('value', x, y + 5.5, digit, { size: 15, anchor: 'middle', bold: true }),
      ...(digits.length === 1 ? [] : [text('value', x, 40.5, place, { size: 10, anchor: 'middle' })]),
    ];
  });
  return { width: dialPitch * digits.length, height: digits.length === 1 ? 32 : 43, shapes, description };
}

function switchPosition(setting: AddressSetting, address: number): AddressPosition {
  const { high, positions, first, onIsZero = false } = setting;
  const count = positions ?? high.toString(2).length;
  const isOn = (weight: number) => (Math.floor(address / 2 ** weight) % 2 === 1) !== onIsZero;
  const weights = Array.from({ length: count }, (_, index) => index);
  if (first === undefined) {
    const on = weights.filter(isOn).map((weight) => String(2 ** weight));
    const which = on.length === 0 ? 'all OFF' : `ON: those that count ${on.join(', ')}; all others OFF`;
    return { text: `${which} (the catalogue does not say which switch counts what)` };
  }
  const inOrder = (first === 'least' ? weights : weights.toReversed()).map(isOn);
  const on = inOrder.flatMap((one, index) => (one ? [String(index + 1)] : []));
  const words = on.length === 0 ? 'all OFF' : on.length === count ? 'all ON' : `${allListed(on)} ON, all others OFF`;
  const picture = switchPicture(inOrder, setting.on ?? 'up', `switches ${words}`);
  return { text: words, caption: words, picture };
}

const slot = { pitch: 17, width: 12, height: 30, left: 26, top: 4 };

/** Each switch as a slot with its slider, numbered from the left; the side that is ON is marked. */
function switchPicture(states: readonly boolean[], onSide: 'up' | 'down', description: string): Picture {
  const { pitch, width, height, left, top } = slot;
  const half = height / 2;
  const onAt = (onSide === 'up' ? top : top + half) + 12;
  const slots = states.flatMap((on, index): Shape[] => {
    const x = left + pitch * index;
    const isUp = on === (onSide === 'up');
    return [
      box('thin', x, top, width, height),
      box('point', x + 1.5, isUp ? top + 1.5 : top + half, width - 3, half - 1.5),
      text('value', x + width / 2, top + height + 12, String(index + 1), { size: 10, anchor: 'middle' }),
    ];
  });
  const shapes = [text('value', left - 5, onAt, 'ON', { size: 10, anchor: 'end', bold: true }), ...slots];
  return { width: left + pitch * states.length, height: top + height + 16, shapes, description };
}
