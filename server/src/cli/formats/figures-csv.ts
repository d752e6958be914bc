/** Figures for spreadsheets, a row for each landing (RFC 4180); what is unknown is empty. */
import { busFigures, type RangeFigure } from '@fieldpair/shared';
import { type CsvCell, csvText } from '../../csv.js';
import type { FiguresFormat } from './format.js';

const range = (name: string, unit: string) => [`${name}_${unit}`, `${name}_low_${unit}`, `${name}_high_${unit}`];
const columns = [
  ...['store', 'bus', 'kind', 'bus_length_m', 'loop_resistance_ohm', 'unit_loads', 'landing', 'address', 'distance_m'],
  ...range('meter', 'ohm'),
  ...range('idle', 'v'),
  ...range('driven', 'v'),
  'delay_ns',
  ...range('supply', 'v'),
  ...range('alarm', 'ohm'),
  'incomplete',
  'area',
];

export const figuresCsv: FiguresFormat = (stores) => {
  const rows: CsvCell[][] = [columns];
  for (const { store, studies } of stores) {
    for (const bus of studies.map(busFigures)) {
      const shared = [store.name, bus.bus, bus.kind, bus.length_m, bus.loop_resistance_ohm, bus.unit_loads];
      for (const landing of bus.landings) {
        rows.push([
          ...shared,
          ...[landing.landing, landing.address, landing.distance_m],
          ...cells(landing.meter_ohm),
          ...cells(landing.idle_v),
          ...cells(landing.driven_v),
          landing.delay_ns,
          ...cells(landing.supply_v ?? null),
          ...cells(landing.alarm_ohm ?? null),
          bus.incomplete ? 'yes' : null,
          landing.area,
        ]);
      }
    }
  }
  return csvText(rows);
};

const cells = (figure: RangeFigure | null) => [figure?.nominal ?? null, figure?.low ?? null, figure?.high ?? null];
