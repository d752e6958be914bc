/** Waveforms for people: the outcome, a table of the landings, and the worst of them drawn in characters. */
import {
  plainLine,
  tableLines,
  type Waves,
  waveColumns,
  waveColumnsExplained,
  waveNotes,
  waveRow,
  waveSummary,
  worstOf,
  wrapped,
} from '@fieldpair/shared';
import { samplesOf, usualLandings } from '@fieldpair/shared/plot';
import { painter } from '../terminal.js';
import { waveChart } from './wave-chart.js';

export interface WaveText {
  readonly heading: string;
  readonly waves: Waves;
  readonly kind: 'step' | 'pattern';
  /** The landings to draw; the one with the least margin when left out. */
  readonly drawn?: readonly string[];
  /** Sentences about what the bus allows. */
  readonly advice?: readonly string[];
}

const width = 100;

export function waveText(
  { heading, waves, kind, drawn, advice = [] }: WaveText,
  { colour }: { readonly colour: boolean },
): string {
  const paint = painter(colour);
  const lines = [paint('bold', plainLine(heading)), '', ...wrapped(plainLine(waveSummary(waves)), width), ''];
  for (const sentence of advice) lines.push(...wrapped(plainLine(sentence), width));
  if (0 < advice.length) lines.push('');
  lines.push(...tableLines([[...waveColumns], ...waves.landings.map((one) => waveRow(one).map(plainLine))]), '');
  const shown = drawn ?? [worstOf(waves)?.name ?? usualLandings(waves)[0] ?? ''];
  for (const name of shown) {
    const one = waves.landings.find((landing) => landing.name === name);
    if (!one) continue;
    const chart = waveChart({
      samples: samplesOf(waves, kind, one.landing),
      thresholds: waves.threshold,
      bits: kind === 'pattern' ? waves.pattern.bits.slice(1) : '',
      bitTime: waves.bitTime,
    });
    if (chart.length)
      lines.push(
        `${paint('bold', plainLine(name))}: ${kind === 'step' ? 'one edge' : 'level over time'}; dotted: the receiver's thresholds`,
        ...chart,
        '',
      );
  }
  for (const note of [waveColumnsExplained, ...waveNotes(waves)]) lines.push(...wrapped(plainLine(note), width));
  return `${lines.join('\n')}\n`;
}
