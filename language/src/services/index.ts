/** The editor services behind one door, apart from the language itself: the command line needs none of them. */
export { Desk } from './desk.js';
export { diagnosticsOf, openFindings } from './diagnostics.js';
export { type LandingMove, landingMove, type StoreDrawing, storeDrawing } from './drawing.js';
export { type FiguresPage, figuresPage } from './figures.js';
export { createEditorServices } from './module.js';
export { defaultEditorSettings, type EditorSettings } from './settings.js';
export { planWaves, type WaveCase, type WavePlan, type WaveWishes } from './waves.js';
