/**
 * How the lines of a plot are told apart: by a colour that colour-blind people can tell from the others, by dashes that
 * black-and-white print keeps, and by a label at the line.
 */

export interface LineStyle {
  /** For a view that sets the colour itself: `wave-0` to `wave-5`. */
  readonly className: string;
  /** On white. */
  readonly colour: string;
  /** As SVG's stroke-dasharray; undefined for an unbroken line. */
  readonly dashes: string | undefined;
}

/**
 * Blue, vermilion and bluish green are those of Okabe and Ito (Color Universal Design, 2008); the other three are as
 * far from them as they are from each other, for the three kinds of colour blindness too. All stand out from white.
 */
export const lineColours = ['#0072b2', '#d55e00', '#009e73', '#882255', '#444444', '#c050c0'] as const;
const dashes = [undefined, '8 4', '2 3', '11 3 2 3'] as const;

/** The style of the line with this number, from 0. Two of 24 neighbours never look the same. */
export function lineStyle(number: number): LineStyle {
  const colour = number % lineColours.length;
  const dash = (number + Math.floor(number / 12)) % dashes.length;
  return { className: `wave-${colour}`, colour: lineColours[colour]!, dashes: dashes[dash] };
}
