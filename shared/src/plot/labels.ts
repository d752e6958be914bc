/** Labels at the ends of lines, so that nobody has to look a line up in a legend. */
import type { Frame } from './axes.js';
import { lineStyle } from './line-styles.js';
import { element, escapedLine, shortened } from './svg.js';

export interface LineEnd {
  readonly name: string;
  /** Number of its style. */
  readonly style: number;
  /** Where the line leaves the frame. */
  readonly y: number;
}

/** Pixels from one label to the next. */
const pitch = 15;
/** What a label may take: the rest of a long name is in its tooltip. */
const mostCharacters = 22;
/** Pixels in front of a label's text, and for each of its characters at 12 pixels: the widest usual letters fit. */
const leaderWidth = 39;
const characterWidth = 7.2;

/** What the labels of some names take right of a frame, in pixels. @param most what there is for them */
export function labelsWidth(names: readonly string[], most: number): number {
  const longest = Math.max(0, ...names.map((name) => [...name].length));
  return Math.min(most, leaderWidth + 6 + Math.ceil(Math.min(longest, mostCharacters) * characterWidth));
}

/** Labels right of a frame, each joined to its line by a piece in the line's own style. @param width what they may take */
export function lineLabels({ top, right, bottom }: Frame, ends: readonly LineEnd[], width: number): string {
  const fits = Math.max(4, Math.floor((width - leaderWidth) / characterWidth));
  // Lines that end at the same height, to the eye, have their labels in the order of the bus.
  const height = ({ y }: LineEnd) => Math.round(y / 4);
  const sorted = ends.toSorted((left, other) => height(left) - height(other));
  const fitting = Math.max(1, Math.floor((bottom - top) / pitch) + 1);
  const shown = sorted.length <= fitting ? sorted : sorted.slice(0, fitting - 1);
  const places = spread(
    shown.map(({ y }) => y),
    top,
    bottom - (shown.length < sorted.length ? pitch : 0),
  );
  const labels = shown.map(({ name, style, y }, index) => {
    const { className, colour, dashes } = lineStyle(style);
    const at = places[index]!;
    const leader = element('path', {
      class: className,
      d: `M${right + 2} ${round(y)}L${right + 12} ${round(at)}H${right + 34}`,
      fill: 'none',
      stroke: colour,
      'stroke-width': 1.8,
      'stroke-dasharray': dashes,
    });
    const text = element(
      'text',
      { x: right + leaderWidth, y: at + 4 },
      ...(shortened(name, fits) === name ? [] : [element('title', {}, escapedLine(name))]),
      escapedLine(shortened(name, fits)),
    );
    return leader + text;
  });
  if (shown.length < sorted.length) {
    labels.push(element('text', { x: right + leaderWidth, y: bottom + 4 }, `and ${sorted.length - shown.length} more`));
  }
  return labels.join('');
}

const round = (value: number) => Math.round(value * 10) / 10;

/** Moves places apart until they are a pitch away from each other, within bounds, in their order. */
function spread(wanted: readonly number[], top: number, bottom: number): number[] {
  const places: number[] = [];
  for (const [index, place] of wanted.entries()) {
    places.push(Math.max(place, top, index === 0 ? top : places[index - 1]! + pitch));
  }
  let below = bottom;
  for (let index = places.length - 1; 0 <= index; index--) {
    places[index] = Math.min(places[index]!, below);
    below = places[index]! - pitch;
  }
  return places;
}
