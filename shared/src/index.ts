/**
 * The engine behind one door. It knows no parser, no editor, no file system and no clock.
 *
 * Start reading at `network.ts` (what a store's wiring is), then `finding.ts` (what is wrong and how to mend it),
 * `rules/` (one file each) and `physics/`.
 */

export * from './check.js';
export * from './drawing/index.js';
export * from './figures/advice.js';
export * from './figures/bare-bus.js';
export * from './figures/bus-figures.js';
export * from './figures/bus-margin.js';
export * from './figures/kind-figures.js';
export * from './figures/line.js';
export * from './figures/page/bus-page.js';
export * from './figures/page/bus-sheet.js';
export * from './figures/page/figures-view.js';
export * from './figures/page/two-wire-views.js';
export * from './figures/page/view.js';
export * from './figures/page/words.js';
export * from './figures/shape.js';
export * from './figures/signal.js';
export * from './figures/study.js';
export * from './figures/summary.js';
export * from './figures/two-wire-figures.js';
export * from './figures/wave-margins.js';
export * from './figures/wave-record.js';
export * from './figures/wave-table.js';
export * from './figures/waves.js';
export * from './finding.js';
export * from './known.js';
export * from './limits/can.js';
export * from './limits/due-terminator.js';
export * from './limits/ethernet.js';
export * from './limits/format.js';
export * from './limits/free-topology.js';
export * from './limits/length.js';
export * from './limits/level.js';
export * from './limits/limit.js';
export * from './limits/load.js';
export * from './limits/power.js';
export * from './limits/rates.js';
export * from './markup.js';
export * from './network.js';
export * from './physics/bias.js';
export * from './physics/conductor.js';
export * from './physics/contact-loop.js';
export * from './physics/modbus.js';
export * from './physics/supply.js';
export * from './physics/tolerance.js';
export * from './physics/transceiver.js';
export * from './plain-text.js';
export * from './ports.js';
export * from './quantity.js';
export * from './rules/index.js';
export * from './rules/rule.js';
