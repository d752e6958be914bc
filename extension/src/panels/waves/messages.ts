/** What the waveform view and its page say to each other. */
import type { WaveChoices, WavesPage } from '../../../../server/src/protocol.js';

export type ToWavesPage =
  /** What to show; null when the text has no bus. `choices` are those that it was made for. */
  | { readonly page: WavesPage | null; readonly choices: WaveChoices }
  /** What the bus that is shown allows, each a sentence. */
  | { readonly advice: readonly string[] }
  /** A simulation takes longer than usual. */
  | { readonly busy: true }
  /** Why there is no answer, as a sentence. */
  | { readonly failure: string };

export type FromWavesPage =
  | { readonly choices: WaveChoices }
  /** Pixels that the plot may take. */
  | { readonly size: { readonly width: number; readonly height: number } }
  /** Show a landing in the text. */
  | { readonly goTo: string }
  /** Write what is shown to a file. */
  | { readonly keep: 'svg' | 'csv' };
