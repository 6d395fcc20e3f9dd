import type { Table } from '../../sources.js';

/** Inversion of sucrose: log10 k = 16.91 + log10(water, g/mL) - 5670/T - pH, k per minute. */
export const vukovInversion = {
  source: 'vukov-1965',
  standing: 'secondhand',
  note: 'Constants read in public code as 8.12831e16, 13055.7 and 2.30259; the concentration there is the water per millilitre, and the pH that at the temperature of the syrup.',
  valid: { temperature_c: [60, 130], ph: [3, 8] },
  values: { log: 16.91, slope: 5670 },
} as const satisfies Table;

/** 342.3 g of sucrose and 18.0 g of water give 360.3 g of invert. */
export const invertYield = {
  source: 'iupac-atomic-weights',
  standing: 'memory',
  note: 'Molar masses.',
  valid: {},
  values: { perSucrose: 360.32 / 342.3 },
} as const satisfies Table;
