/** Pictures of waveforms, apart from the engine: most commands and checks need none. */
export { lineColours, lineStyle } from './line-styles.js';
export { type Curve, type DrawnPlot, drawWaves, type WavePlot, type WaveView, waveViews } from './plot.js';
export { levelAt, pixelPoints, type Samples } from './trace.js';
