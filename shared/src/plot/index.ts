/** Pictures of waveforms, apart from the engine: most commands and checks need none. */
export { lineStyle } from './line-styles.js';
export {
  closeSamples,
  eyePattern,
  plotOf,
  plotSamples,
  readoutOf,
  samplesOf,
  usualLandings,
} from './of-waves.js';
export { type DrawnPlot, drawWaves } from './plot.js';
export { levelAt, type Samples } from './trace.js';
export type { WavePlot, WaveView } from './wave-plot.js';
