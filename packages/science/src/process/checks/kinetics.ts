import type { Check } from '../../check.js';
import { rows } from './row.js';

const days = [0, 5, 10, 15, 20, 25, 30];

export const kineticsChecks: readonly Check[] = [
  ...rows({ model: 'kinetics.arrhenius', kind: 'code', source: 'arrhenius', standing: 'memory' }, [
    ['arrhenius-90-20-30', { activation_energy_kj_mol: 90, from_temperature_c: 20, to_temperature_c: 30 }, 'rate_ratio', 3.381, 0.003],
  ]),
  ...rows({ model: 'kinetics.arrhenius', kind: 'measured', source: 'lard-peroxide-2018', standing: 'found' }, [
    [
      'lard-rate-ratio-25-35',
      { activation_energy_kj_mol: 73.5, from_temperature_c: 24.85, to_temperature_c: 34.85 },
      'rate_ratio',
      2.432,
      0.25,
      'The energy is our fit to the three rates.',
    ],
  ]),
  ...rows({ model: 'kinetics.q10', kind: 'code', source: 'arrhenius', standing: 'memory' }, [
    ['q10-81-105', { activation_energy_kj_mol: 81, temperature_c: 105 }, 'q10', 1.942, 0.005],
    ['q10-120-115', { activation_energy_kj_mol: 120, temperature_c: 115 }, 'q10', 2.544, 0.005],
    ['q10-101.8-110', { activation_energy_kj_mol: 101.8, temperature_c: 110 }, 'q10', 2.254, 0.003],
  ]),
  ...rows({ model: 'kinetics.rate_from_data', kind: 'published', source: 'ffa-exercise', standing: 'found' }, [
    ['ffa-rate-25', { times: days, values: [0.32, 0.62, 1.34, 1.45, 1.68, 1.85, 2.01] }, 'rate', 0.05621, 5e-5],
    ['ffa-rate-35', { times: days, values: [0.32, 0.83, 1.12, 1.34, 1.76, 1.97, 2.11] }, 'rate', 0.05921, 5e-5],
    ['ffa-rate-45', { times: days, values: [0.32, 0.83, 1.32, 1.67, 1.92, 2.18, 2.49] }, 'rate', 0.07007, 5e-5],
  ]),
  ...rows({ model: 'kinetics.rate_from_data', kind: 'measured', source: 'sanders-ars-91039', standing: 'found' }, [
    ['roasted-peanutty-rate', { times: [0, 28], values: [5.5, 2.6], order: 'first' }, 'rate', -0.02676, 2e-5],
  ]),
  ...rows({ model: 'kinetics.activation_energy', kind: 'published', source: 'ffa-exercise', standing: 'found' }, [
    ['ffa-slope', { temperatures_c: [24.85, 34.85, 44.85], rates: [0.0562, 0.0592, 0.0701] }, 'slope_k', -1040.8, 8],
    ['ffa-energy', { temperatures_c: [24.85, 34.85, 44.85], rates: [0.0562, 0.0592, 0.0701] }, 'activation_energy_kj_mol', 8.65, 0.07],
  ]),
  ...rows({ model: 'kinetics.activation_energy', kind: 'published', source: 'lard-peroxide-2018', standing: 'found' }, [
    [
      'oil-energy-band',
      { temperatures_c: [9.85, 24.85, 34.85], rates: [0.0439, 0.2263, 0.5503] },
      'activation_energy_kj_mol',
      [60, 104],
      0,
      'Band from storage studies of oils (memory) up to the calorimetric 79 to 104 at 110 to 140 °C (found).',
    ],
  ]),
  ...rows({ model: 'browning.history', kind: 'code', source: 'pagliarini-milk-colour', standing: 'found' }, [
    [
      'browning-ten-kelvin',
      { times_min: [0, 10], temperatures_c: [120, 120], reference_temperature_c: 110 },
      'equivalent_time_min',
      22.54,
      0.03,
    ],
    ['browning-q10', { times_min: [0, 10], temperatures_c: [110, 110], reference_temperature_c: 110 }, 'q10', 2.254, 0.003],
  ]),
  ...rows({ model: 'shelf_life.peroxide_value', kind: 'measured', source: 'lard-peroxide-2018', standing: 'found' }, [
    ['lard-rate-10', { temperature_c: 9.85 }, 'rate_per_day', 0.0439, 0.0044, 'Used in the fit of the energy.'],
    ['lard-rate-25', { temperature_c: 24.85 }, 'rate_per_day', 0.2263, 0.0226, 'The reference.'],
    ['lard-rate-35', { temperature_c: 34.85 }, 'rate_per_day', 0.5503, 0.055, 'Used in the fit of the energy.'],
  ]),
  ...rows({ model: 'shelf_life.roasted_flavour', kind: 'measured', source: 'sanders-ars-91039', standing: 'found' }, [
    ['peanutty-28-days', { time_d: 28 }, 'intensity', 2.6, 0.4, 'The rate was taken from this pair.'],
  ]),
  ...rows({ model: 'shelf_life.crispness', kind: 'published', source: 'katz-labuza-1981', standing: 'found' }, [
    ['crisp-below', { water_activity: 0.35 }, 'crispness', [0.8, 1], 0, 'Still crisp at the lower end of the band.'],
    ['soft-above', { water_activity: 0.5 }, 'crispness', [0, 0.35], 0, 'Gone at the upper end of the band.'],
  ]),
  ...rows({ model: 'kinetics.time_to_limit', kind: 'measured', source: 'sanders-ars-91039', standing: 'found' }, [
    ['peanutty-to-2.6', { start: 5.5, limit: 2.6, rate: -0.02676, order: 'first' }, 'time', 28, 0.1, 'The rate was taken from this pair.'],
  ]),
  ...rows({ model: 'kinetics.time_to_limit', kind: 'published', source: 'ffa-exercise', standing: 'found' }, [
    ['ffa-to-2.01', { start: 0.535, limit: 2.01, rate: 0.05621 }, 'time', 26.2, 0.3, 'From the intercept of the line.'],
  ]),
  ...rows({ model: 'shelf_life.q10', kind: 'measured', source: 'lard-peroxide-2018', standing: 'found' }, [
    [
      'lard-life-25-35',
      { known_life_d: 10 / 0.2263, known_temperature_c: 24.85, temperature_c: 34.85, q10: 2.432 },
      'life_d',
      10 / 0.5503,
      0.1,
      'Days to a rise of ten at the two printed rates.',
    ],
  ]),
];
