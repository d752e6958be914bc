/** Figures for programs, by the schema `fieldpair-figures-1`: SI units, null with a reason for what is unknown. */
import { busFigures } from '@fieldpair/shared';
import type { FiguresFormat } from './format.js';

export const figuresJson: FiguresFormat = (stores) => {
  const value = {
    schema: 'fieldpair-figures-1',
    stores: stores.map(({ store, studies }) => ({ store: store.name, buses: studies.map(busFigures) })),
  };
  return `${JSON.stringify(value, undefined, 2)}\n`;
};
