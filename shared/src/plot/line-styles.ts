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
 * Found by search: of six colours that stand out from white, these are the farthest apart for normal sight and for each
 * of the three kinds of colour blindness; the tests beside this file measure it.
 */
export const lineColours = ['#0088ee', '#850000', '#4f6500', '#d24473', '#570093', '#98975c'] as const;
const dashes = [undefined, '8 4', '2 3', '11 3 2 3'] as const;

/** The style of the line with this number, from 0. Two of 24 neighbours never look the same. */
export function lineStyle(number: number): LineStyle {
  const colour = number % lineColours.length;
  const dash = (number + Math.floor(number / 12)) % dashes.length;
  return { className: `wave-${colour}`, colour: lineColours[colour]!, dashes: dashes[dash] };
}

/**
 * Style numbers for some landings, each near the landing's own so that a line looks alike in every plot, and none of
 * the colour of another as long as there are colours left.
 */
export function styleNumbers(landings: readonly number[]): number[] {
  const taken = new Set<number>();
  return landings.map((landing) => {
    let number = landing;
    while (taken.has(number % lineColours.length)) number++;
    taken.add(number % lineColours.length);
    if (taken.size === lineColours.length) taken.clear();
    return number;
  });
}
