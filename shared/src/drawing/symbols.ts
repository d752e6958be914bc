/**
 * The symbols of what sits on a bus, in the meanings that IEC 60617 gives to their shapes: a rectangle is a resistor,
 * two short strokes a capacitor, a slanted stroke an open-and-close contact, three shrinking strokes an earth, dashes
 * around a line a screen (from memory of the standard).
 */
import type { ContactRest, LandingTermination } from '../network.js';
import type { Shape } from './scene.js';
import { box, circle, line, path } from './shapes.js';

/**
 * A terminator at an end of the line: a contact when it is switched, then the resistor upright across the end, then a
 * capacitor where there is one. `way` is -1 to the left and 1 to the right.
 */
export function endTerminator({ means, capacitance }: LandingTermination, x: number, y: number, way: -1 | 1): Shape[] {
  const at = (distance: number) => x + way * distance;
  const shapes = means === 'switch' ? contact(x, y, way) : [line('line', at(0), y, at(28), y)];
  const resistor = at(33);
  shapes.push(box('resistor', resistor - 5, y - 12, 10, 24));
  if (means === 'fixed') shapes.push(line('line', resistor - 9, y + 15, resistor + 9, y + 15));
  if (capacitance !== undefined) {
    shapes.push(line('line', resistor + way * 5, y, resistor + way * 8, y));
    for (const plate of [8, 12])
      shapes.push(line('plate-stroke', resistor + way * plate, y - 8, resistor + way * plate, y + 8));
  }
  return shapes;
}

/** A closed contact on a lead of 28: two points and the blade between them. */
function contact(x: number, y: number, way: -1 | 1): Shape[] {
  const at = (distance: number) => x + way * distance;
  return [
    line('line', at(0), y, at(10), y),
    line('line', at(10), y, at(23), y - 5),
    line('line', at(22), y, at(28), y),
    circle('point', at(10), y, 1.8),
    circle('point', at(22), y, 1.8),
  ];
}

/** What branches off upward from a landing's lead at height `y`, to the right of it: a lying resistor. */
export function sideTerminator({ means, capacitance }: LandingTermination, x: number, y: number): Shape[] {
  const shapes: Shape[] = means === 'switch' ? contact(x, y, 1) : [line('line', x, y, x + 28, y)];
  shapes.push(box('resistor', x + 28, y - 4.5, 20, 9));
  if (capacitance !== undefined) {
    shapes.push(line('line', x + 48, y, x + 51, y));
    for (const plate of [51, 54]) shapes.push(line('plate-stroke', x + plate, y - 5, x + plate, y + 5));
  }
  return shapes;
}

/** Two resistors, one up to plus and one down to minus, on a lead to the right. */
export function biasSymbol(x: number, y: number): Shape[] {
  return [
    line('line', x, y, x + 20, y),
    line('line', x + 20, y - 5, x + 20, y + 5),
    line('line', x + 20, y - 5, x + 26, y - 5),
    line('line', x + 20, y + 5, x + 26, y + 5),
    box('resistor', x + 26, y - 8, 14, 6),
    box('resistor', x + 26, y + 2, 14, 6),
    path('thin', `M${x + 43} ${y - 5}h5M${x + 45.5} ${y - 7.5}v5M${x + 43} ${y + 5}h5`),
  ];
}

/** A fuse in a line, around (x, y). */
export const fuseSymbol = (x: number, y: number): Shape[] => [
  box('resistor', x - 8, y - 3.5, 16, 7),
  line('thin', x - 8, y, x + 8, y),
];

/** A contact on a lead around (x, y): open, or closed against a stop, as it is when nothing is wrong. */
export function contactSymbol(x: number, y: number, rest: ContactRest): Shape[] {
  const blade = line('crossing', x, y + 6, x + 5, y - 6);
  const stop = rest === 'closed' ? [line('crossing', x, y - 5, x + 6, y - 5)] : [];
  return [box('clear', x - 3, y - 5, 6, 10), blade, ...stop, circle('point', x, y + 6, 1.8)];
}

/** An earth that hangs from a screen at (x, y), directly or through a resistor. */
export function earthSymbol(x: number, y: number, throughResistor: boolean): Shape[] {
  return [
    line('shield-lead', x, y, x, y + 8),
    ...(throughResistor ? [box('resistor', x - 2, y + 1, 4, 6)] : []),
    line('earth-bar', x - 7, y + 8, x + 7, y + 8),
    line('earth-bar', x - 4.5, y + 11.5, x + 4.5, y + 11.5),
    line('earth-bar', x - 2, y + 15, x + 2, y + 15),
  ];
}

/** The two wires changing places on a lead, around (x, y). */
export function crossing(x: number, y: number): Shape[] {
  return [
    box('clear', x - 5, y - 6, 10, 12),
    path('crossing', `M${x - 4} ${y - 6}L${x + 4} ${y + 6}M${x + 4} ${y - 6}L${x - 4} ${y + 6}`),
  ];
}

/** A triangle on a lead: what comes in goes out again, as strong as new. */
export const repeaterSymbol = (x: number, y: number): Shape =>
  path('amplifier', `M${x - 7} ${y - 6}L${x + 7} ${y - 6}L${x} ${y + 6}Z`);
