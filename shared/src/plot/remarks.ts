/** What the marks of a plot mean, in small print at its foot. */
import { wrapped } from '../plain-text.js';
import { element, escapedLine } from './svg.js';
import type { WavePlot } from './wave-plot.js';

/** Pixels from one line to the next. */
export const remarkPitch = 15;
const left = 58;
/** Pixels that a character takes at most, on average. */
const characterWidth = 6.6;

/** The lines of the small print, broken so that they fit. @param marks what the marks of this sort of plot mean */
export function remarksOf({ names, width }: WavePlot, marks: string): string[] {
  const text = names ? `thin: ${names.curve}; broad and pale: ${names.changed}; ${marks}` : marks;
  return wrapped(text, Math.floor((width - left - 10) / characterWidth));
}

/** @param bottom the height of the whole plot */
export function remarkLines(lines: readonly string[], bottom: number): string {
  const top = bottom - 3 - remarkPitch * (lines.length - 1);
  const line = (text: string, index: number) =>
    element(
      'text',
      { class: 'wave-remark', x: left, y: top + index * remarkPitch, fill: '#555555' },
      escapedLine(text),
    );
  return lines.map(line).join('');
}
