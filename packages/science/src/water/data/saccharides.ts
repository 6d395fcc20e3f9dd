import type { Table } from '../../sources.js';

/** Share of the dry solids that is glucose and maltose in acid-converted syrups, against dextrose equivalent. */
export const acidConverted = {
  source: 'pancoast-junk-1980',
  standing: 'memory',
  note: 'Table of saccharide composition; the row at 42 (19 % glucose, 14 % maltose, 11 % maltotriose) found elsewhere. 0 and 100 are limits.',
  valid: { dextrose_equivalent: [20, 67] },
  values: {
    dextrose_equivalent: [0, 10, 20, 30, 35, 42, 48, 54, 60, 67, 80, 90, 95, 100],
    glucose: [0, 0.023, 0.055, 0.104, 0.134, 0.19, 0.24, 0.297, 0.362, 0.425, 0.62, 0.8, 0.9, 1],
    maltose: [0, 0.028, 0.058, 0.093, 0.113, 0.14, 0.16, 0.178, 0.195, 0.209, 0.2, 0.12, 0.065, 0],
  },
} as const satisfies Table;

/** High-maltose syrups: enzyme converted, little glucose. */
export const highMaltose = {
  source: 'pancoast-junk-1980',
  standing: 'memory',
  note: 'Rows near 42 and 48; straight lines to the limits.',
  valid: { dextrose_equivalent: [38, 55] },
  values: {
    dextrose_equivalent: [0, 20, 42, 48, 60, 100],
    glucose: [0, 0.02, 0.06, 0.09, 0.2, 1],
    maltose: [0, 0.15, 0.45, 0.52, 0.55, 0],
  },
} as const satisfies Table;

/** Acid and enzyme: sweet syrups of high conversion. */
export const acidEnzyme = {
  source: 'pancoast-junk-1980',
  standing: 'memory',
  note: 'Row at 63: 38.8 % glucose, 28.1 % maltose; straight lines to the limits.',
  valid: { dextrose_equivalent: [58, 70] },
  values: {
    dextrose_equivalent: [0, 42, 63, 70, 95, 100],
    glucose: [0, 0.16, 0.388, 0.47, 0.92, 1],
    maltose: [0, 0.2, 0.281, 0.27, 0.04, 0],
  },
} as const satisfies Table;
