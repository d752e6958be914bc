/**
 * How far colours are apart for those who see them, by the library culori: CIEDE2000 distances, colour blindness after
 * Machado, Oliveira and Fernandes (IEEE TVCG 2009), and contrast as WCAG defines it.
 */
import {
  type Color,
  differenceCiede2000,
  filterDeficiencyDeuter,
  filterDeficiencyProt,
  filterDeficiencyTrit,
  parse,
  wcagContrast,
} from 'culori';

/** The distance of the two nearest of some colours, for each kind of sight. */
export function colourDistances(colours: readonly string[]) {
  const distance = differenceCiede2000();
  const nearest = (see: (colour: Color) => Color) => {
    const seen = colours.map((colour) => see(parse(colour)!));
    return Math.min(...seen.flatMap((one, index) => seen.slice(index + 1).map((other) => distance(one, other))));
  };
  return {
    normal: nearest((colour) => colour),
    protanopia: nearest(filterDeficiencyProt(1)),
    deuteranopia: nearest(filterDeficiencyDeuter(1)),
    tritanopia: nearest(filterDeficiencyTrit(1)),
  };
}

export const contrasts = (colours: readonly string[], ground: string): number[] =>
  colours.map((colour) => wcagContrast(colour, ground));
