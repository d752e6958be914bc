/** Which part of the time a plot shows, in seconds. */
export type Span = readonly [from: number, to: number];

/** The span drawn nearer to a moment, or away from it. @param factor below 1 shows less and larger */
export const scaledAround = ([from, to]: Span, moment: number, factor: number): Span => [
  moment - (moment - from) * factor,
  moment + (to - moment) * factor,
];

/** The span moved by a share of its own length. */
export const shifted = ([from, to]: Span, share: number): Span => [
  from + (to - from) * share,
  to + (to - from) * share,
];

/** Where in a span a moment is: 0 at its beginning, 1 at its end. */
export const shareOf = ([from, to]: Span, moment: number): number => (moment - from) / (to - from);

export const momentAt = ([from, to]: Span, share: number): number => from + (to - from) * share;
