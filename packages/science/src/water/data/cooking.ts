import type { Table } from '../../sources.js';

/** Specific heat of a syrup by mass: water, and dissolved sugar a + b t. */
export const syrupSpecificHeat = {
  source: 'sugar-liquor-thermal',
  standing: 'found',
  note: 'cp = 4184 - 2971 B + 460 B P + 7.5 B t at purity P = 1, as the share of the sugar.',
  valid: { solids: [0, 0.9], temperature_c: [0, 120] },
  values: { water: 4186, sugar: [1673, 7.5] },
} as const satisfies Table;
