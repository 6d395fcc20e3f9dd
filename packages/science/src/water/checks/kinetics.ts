import type { Check } from '../../check.js';
import { checksOf } from './row.js';

const polynomial = { kind: 'code', source: 'price-2014', standing: 'found', note: 'the same polynomial' } as const;
const lienhard = {
  kind: 'code',
  source: 'lienhard-2015',
  standing: 'found',
  note: 'evaluated as a public code has it, weighted twice',
} as const;
const coded = (kelvin: number, x: number) => ({ temperature_c: kelvin - 273.15, water_mole_fraction: x, weighting: 'as_coded' });

export const kineticsChecks: readonly Check[] = [
  ...checksOf(
    'sucrose.inversion_rate',
    'rate_per_min',
    { kind: 'code', source: 'vukov-1965', standing: 'secondhand', note: 'the same formula' },
    [
      ['ph5_110', { ph: 5, temperature_c: 110, water_g_ml: 0.4 }, 5.1715e-4, 1e-6],
      ['ph6_115', { ph: 6, temperature_c: 115, water_g_ml: 0.4 }, 8.0213e-5, 1.6e-7],
    ],
  ),
  ...checksOf('sucrose.water_diffusivity', 'log10_diffusivity', polynomial, [
    ['sucrose_0.3', { water_activity: 0.3 }, -15.181, 0.01],
    ['sucrose_0.45', { water_activity: 0.45 }, -13.471, 0.01],
    ['sucrose_0.6', { water_activity: 0.6 }, -12.164, 0.01],
    ['sucrose_0.75', { water_activity: 0.75 }, -10.989, 0.01],
    ['sucrose_1', { water_activity: 1 }, -8.59, 0.01],
    ['raffinose_0.3', { fit: 'raffinose', water_activity: 0.3 }, -12.475, 0.01],
    ['raffinose_0.45', { fit: 'raffinose', water_activity: 0.45 }, -11.44, 0.01],
    ['raffinose_0.6', { fit: 'raffinose', water_activity: 0.6 }, -10.834, 0.01],
    ['raffinose_0.75', { fit: 'raffinose', water_activity: 0.75 }, -10.311, 0.01],
    ['raffinose_1', { fit: 'raffinose', water_activity: 1 }, -8.69, 0.01],
    ['quintic_0.3', { fit: 'sucrose_quintic', water_activity: 0.3 }, -14.724, 0.01],
    ['quintic_0.45', { fit: 'sucrose_quintic', water_activity: 0.45 }, -13.557, 0.01],
    ['quintic_0.75', { fit: 'sucrose_quintic', water_activity: 0.75 }, -10.627, 0.01],
    ['quintic_1', { fit: 'sucrose_quintic', water_activity: 1 }, -8.698, 0.01],
  ]),
  ...checksOf(
    'sucrose.water_diffusivity',
    'log10_diffusivity',
    { kind: 'measured', source: 'water-self-diffusion', standing: 'memory', note: 'pure water at 23 °C, 2.2e-9 m²/s' },
    [['pure_water', { water_activity: 1 }, Math.log10(2.2e-9), 0.15]],
  ),
  ...checksOf('sucrose.self_diffusivity', 'log10_diffusivity', polynomial, [
    ['0.5', { water_activity: 0.5 }, -15.47, 0.01],
    ['0.65', { water_activity: 0.65 }, -13.633, 0.01],
    ['0.85', { water_activity: 0.85 }, -11.471, 0.01],
  ]),
  ...checksOf('sucrose.water_diffusivity_by_mole_fraction', 'diffusivity_m2_s', lienhard, [
    ['coded_278_0.7', coded(278.15, 0.7), 1.249e-17, 0.025e-17],
    ['coded_278_0.85', coded(278.15, 0.85), 2.446e-14, 0.05e-14],
    ['coded_288_0.7', coded(288.15, 0.7), 1.584e-16, 0.032e-16],
    ['coded_288_0.85', coded(288.15, 0.85), 1.244e-13, 0.025e-13],
    ['coded_298_0.7', coded(298.15, 0.7), 1.692e-15, 0.034e-15],
    ['coded_298_0.85', coded(298.15, 0.85), 5.631e-13, 0.11e-13],
  ]),
  ...checksOf(
    'sucrose.water_diffusivity_by_mole_fraction',
    'log10_diffusivity',
    {
      kind: 'published',
      source: 'price-2014',
      standing: 'found',
      note: 'the fit by water activity at the activity of that solution; sources differ by 0.4 decade',
    },
    [
      ['price_0.7', { water_mole_fraction: 0.7, temperature_c: 23.5 }, -13.45, 0.4],
      ['price_0.85', { water_mole_fraction: 0.85, temperature_c: 23.5 }, -11.04, 0.4],
    ],
  ),
  ...checksOf(
    'sucrose.water_diffusivity_by_temperature',
    'log10_diffusivity',
    { kind: 'published', source: 'price-2014', standing: 'found', note: 'the cubic in activity at 23.5 °C; sources differ by 0.4 decade' },
    [
      ['price_0.45', { water_activity: 0.45, temperature_c: 23.5 }, -13.471, 0.4],
      ['price_0.6', { water_activity: 0.6, temperature_c: 23.5 }, -12.164, 0.4],
      ['price_0.75', { water_activity: 0.75, temperature_c: 23.5 }, -10.989, 0.4],
      ['price_1', { water_activity: 1, temperature_c: 23.5 }, -8.59, 0.4],
    ],
  ),
  ...checksOf(
    'cook.temperature_at_pressure',
    'shift_k',
    { kind: 'published', source: 'candy-altitude-rule', standing: 'found', note: '305 m above the sea, standard atmosphere' },
    [['altitude_305', { sucrose: 1, temperature_c: 118, pressure_pa: 97_709 }, -1, 0.15]],
  ),
  ...checksOf(
    'sugar_boiling.stage',
    'stage',
    { kind: 'published', source: 'sugar-boiling-stages', standing: 'found', note: 'the table itself' },
    [
      ['115', { temperature_c: 115 }, 'soft_ball', 0],
      ['125', { temperature_c: 125 }, 'hard_ball', 0],
      ['150', { temperature_c: 150 }, 'hard_crack', 0],
    ],
  ),
  ...checksOf(
    'sugar_boiling.stage_temperatures',
    'low_c',
    { kind: 'published', source: 'candy-altitude-rule', standing: 'found', note: 'soft ball 113 °C less 1 K per 305 m' },
    [['soft_ball_at_1000_m', { stage: 'soft_ball', pressure_pa: 89_875 }, 113 - 1000 / 305, 0.5]],
  ),
];
