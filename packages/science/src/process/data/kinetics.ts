import type { Table } from '../../sources.js';

/** Activation energies of colour, J/mol. */
export const browningEnergy = {
  source: 'pagliarini-milk-colour',
  standing: 'found',
  note:
    'Total colour difference of milk, zero order, 90 to 130 °C: 101.8 kJ/mol. Sweetened milk powder and sucrose systems, 105 to 140 °C: 81 to ' +
    '159 kJ/mol by the measure used. Whole milk powder in storage at 37 to 55 °C, across its glass transition: about 200 kJ/mol.',
  valid: { temperature_c: [90, 140] },
  values: { milk: 101_800, sweetened_milk: [81_000, 159_000], stored_milk_powder: 200_000 },
} as const satisfies Table;

/** Zero-order peroxide rates of lard, units per day as printed, at three temperatures; their Arrhenius slope. */
export const lardPeroxide = {
  source: 'lard-peroxide-2018',
  standing: 'found',
  note: 'Rates at 283, 298 and 308 K as printed; energy is our fit to the three.',
  valid: { temperature_c: [10, 35] },
  values: { temperature_c: [9.85, 24.85, 34.85], rate_per_day: [0.0439, 0.2263, 0.5503], energy: 73_500 },
} as const satisfies Table;

/** Crispness against water activity, Fermi curve. */
export const crispness = {
  source: 'katz-labuza-1981',
  standing: 'secondhand',
  note: 'Low-moisture cereal snacks lose crispness between 0.35 and 0.50. Middle 0.45 and width 0.05 for peanuts are a default from memory.',
  valid: { water_activity: [0.1, 0.8] },
  values: { critical: 0.45, width: 0.05 },
} as const satisfies Table;

/** First-order loss of roasted-peanutty flavour at 30 °C, 1/day. */
export const roastedPeanutty = {
  source: 'sanders-ars-91039',
  standing: 'found',
  note: 'High-moisture lot roasted at 163 °C: intensity 5.5 to 2.6 in 28 days.',
  valid: { temperature_c: [29, 31] },
  values: { rate_per_day: 0.02676, temperature_c: 30 },
} as const satisfies Table;
