/** A waveform of bits beside what the simulator has for the same node. */
import { waveOfBits } from '../../shared/src/physics/wave/bits.js';
import type { WaveCircuit } from '../../shared/src/physics/wave/wave-circuit.js';

/** Without the skin effect, which the simulator's lines do not have. */
export const withoutSkin = (circuit: WaveCircuit): WaveCircuit => ({
  ...circuit,
  media: circuit.media.map((medium) => ({ ...medium, skin: false })),
});

const samples = 256;

/**
 * The largest difference at the simulator's own instants, in volts. Of `raised` the first bit is what was there before
 * time 0, and the second begins at 0.
 */
export function largestDifference(
  raised: readonly boolean[],
  signal: Parameters<typeof waveOfBits>[1],
  bitTime: number,
  { time, volts }: { readonly time: readonly number[]; readonly volts: readonly number[] },
): number {
  const wave = waveOfBits(raised, signal, bitTime, samples);
  let largest = 0;
  for (const [point, instant] of time.entries()) {
    const position = (instant / bitTime) * samples;
    const floor = Math.min(wave.length - 2, Math.floor(position));
    const ours = wave[floor]! + (position - floor) * (wave[floor + 1]! - wave[floor]!);
    largest = Math.max(largest, Math.abs(ours - volts[point]!));
  }
  return largest;
}
