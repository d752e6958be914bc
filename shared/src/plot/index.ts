/** Pictures of waveforms, apart from the engine: most commands and checks need none. */
export type { Frame, Span } from './axes.js';
export { lineColours, lineStyle } from './line-styles.js';
export {
  closeSamples,
  eyePattern,
  type PlotChoices,
  plotOf,
  plotSamples,
  type Readout,
  readoutOf,
  samplesOf,
  usualLandings,
} from './of-waves.js';
export { type DrawnPlot, drawWaves } from './plot.js';
export { levelAt, pixelPoints, type Samples } from './trace.js';
export { type Curve, type WavePlot, type WaveView, waveViews } from './wave-plot.js';
