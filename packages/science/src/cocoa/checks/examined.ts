import type { Check } from '../../check.js';

/** Values gathered to examine the finished models; none was at hand when they were built. */
const row = (
  model: string,
  id: string,
  inputs: Check['inputs'],
  output: string,
  expected: Check['expected'],
  tolerance: number,
  rest: Pick<Check, 'kind' | 'source' | 'standing'> & { readonly note?: string },
): Check => ({ id: `${model}/examined-${id}`, model, inputs, output, expected, tolerance, ...rest });

const ashrae = { kind: 'published', source: 'ashrae-2017-ch1', standing: 'memory' } as const;
/** Saturated air at 101.325 kPa: humidity ratio, and where printed enthalpy and specific volume. */
const saturated = (t: number, ratio: number, tolerance: number): Check =>
  row('air.dew_point', `saturated-${t}`, { temperature_c: t, relative_humidity: 1 }, 'humidity_ratio', ratio, tolerance, {
    ...ashrae,
    note: 'Table 2, real air: up to half a percent above the ideal mixture computed here.',
  });

const trade = { kind: 'published', source: 'cocoa-butter-sfc', standing: 'memory' } as const;
const solids = (id: string, inputs: Check['inputs'], expected: number, tolerance: number, note: string): Check =>
  row('fat.solid_fat_content', id, inputs, 'solid_fat_content', expected, tolerance, { ...trade, note });
const blends = 'Blend with milk fat, figures of texts on milk chocolate; spread of butters and methods.';
const milkFat = { kind: 'published', source: 'milk-fat-sfc', standing: 'memory' } as const;

const casson = (id: string, yieldValue: number, plastic: number): Check[] => {
  const rates = [2, 5, 10, 20, 30, 40, 50, 60];
  const inputs = { shear_rate_s: rates, shear_stress_pa: rates.map((g) => (Math.sqrt(yieldValue) + Math.sqrt(plastic * g)) ** 2) };
  const note = 'Round trip of parameters printed for a measured chocolate.';
  const rest = { kind: 'code', source: 'casson-analysis-page', standing: 'found', note } as const;
  return [
    row('rheology.casson_fit', `${id}-yield`, inputs, 'yield_value_pa', yieldValue, 0.01, rest),
    row('rheology.casson_fit', `${id}-plastic`, inputs, 'plastic_viscosity_pa_s', plastic, 0.001, rest),
  ];
};

/** Melting points of the forms as other laboratories print them. */
const forms = [
  ['I', 13.1],
  ['II', 17.7],
  ['III', 22.4],
  ['IV', 26.4],
  ['V', 30.7],
  ['VI', 33.8],
] as const;

export const examinedChecks: readonly Check[] = [
  saturated(0, 0.003789, 2e-5),
  saturated(10, 0.007661, 4e-5),
  saturated(20, 0.014758, 8e-5),
  saturated(30, 0.027329, 1.4e-4),
  saturated(50, 0.086858, 6e-4),
  row('air.dew_point', 'saturated-20-enthalpy', { temperature_c: 20, relative_humidity: 1 }, 'enthalpy_j_kg', 57_555, 300, ashrae),
  row('air.dew_point', 'saturated-20-volume', { temperature_c: 20, relative_humidity: 1 }, 'specific_volume_m3_kg', 0.8498, 0.001, ashrae),
  row('air.dew_point', 'wet-bulb-20-50', { temperature_c: 20, relative_humidity: 0.5 }, 'wet_bulb_c', 13.8, 0.2, ashrae),
  row('air.dew_point', 'wet-bulb-25-60', { temperature_c: 25, relative_humidity: 0.6 }, 'wet_bulb_c', 19.4, 0.2, ashrae),
  row('air.dew_point', 'dew-20-60', { temperature_c: 20, relative_humidity: 0.6 }, 'dew_point_c', 12.0, 0.1, ashrae),
  row('air.dew_point', 'dew-30-80', { temperature_c: 30, relative_humidity: 0.8 }, 'dew_point_c', 26.2, 0.1, ashrae),
  row(
    'air.dew_point',
    'altitude-1500-m',
    { temperature_c: 25, relative_humidity: 0.5, pressure_pa: 84_556 },
    'humidity_ratio',
    0.01189,
    1e-4,
    { ...ashrae, note: 'The same vapour in thinner air; the dew point stays that of sea level.' },
  ),
  solids('cocoa-butter-20-milk-20', { temperature_c: 20, milk_fat_share: 0.2 }, 0.58, 0.06, blends),
  solids('cocoa-butter-25-milk-20', { temperature_c: 25, milk_fat_share: 0.2 }, 0.45, 0.07, blends),
  solids('cocoa-butter-30-milk-20', { temperature_c: 30, milk_fat_share: 0.2 }, 0.14, 0.08, blends),
  solids('cocoa-butter-20-milk-10', { temperature_c: 20, milk_fat_share: 0.1 }, 0.67, 0.06, blends),
  row('fat.solid_fat_content', 'milk-fat-10', { temperature_c: 10, milk_fat_share: 1 }, 'solid_fat_content', 0.5, 0.06, {
    ...milkFat,
    note: 'Milk fat alone: the curve was drawn through this figure.',
  }),
  row('fat.solid_fat_content', 'cocoa-butter-5-milk-30', { temperature_c: 5, milk_fat_share: 0.3 }, 'solid_fat_content', 0.8, 0.1, {
    ...milkFat,
    note: 'In the cold milk fat is more than half solid itself.',
  }),
  ...forms.map(([form, melting]) =>
    row('fat.polymorph', `${form}-davis`, { form }, 'melting_point_c', melting, 4.5, {
      kind: 'measured',
      source: 'davis-dimick-1989',
      standing: 'memory',
      note: 'Another laboratory and butter; the forms differ by up to 6 K between works, which is what the interval of the model says.',
    }),
  ),
  row('chocolate.thermal_properties', 'liquid-50', { temperature_c: 50, melted: true }, 'specific_heat_j_kg_k', 1670, 85, {
    kind: 'published',
    source: 'beckett-constants-2009',
    standing: 'found',
    note: 'Liquid chocolate 40 to 60 °C, recipe not told.',
  }),
  row('chocolate.thermal_properties', 'dark-latent', { temperature_c: 5, fat: 0.3, sucrose: 0.5 }, 'heat_of_melting_j_kg', 46_000, 7000, {
    kind: 'measured',
    source: 'beckett-constants-2009',
    standing: 'found',
    note: 'Dark chocolate, recipe not told: 15 %.',
  }),
  row(
    'chocolate.thermal_properties',
    'butter-density-40',
    { temperature_c: 40, fat: 1, sucrose: 0, melted: true },
    'density_kg_m3',
    893,
    8,
    { kind: 'published', source: 'cocoa-butter-sfc', standing: 'memory', note: 'Specifications of cocoa butter, 0.888 to 0.898 at 40 °C.' },
  ),
  row(
    'chocolate.thermal_properties',
    'solid-density-20',
    { temperature_c: 20, fat: 0.31, sucrose: 0.46 },
    'density_kg_m3',
    [1280, 1330],
    0,
    { kind: 'published', source: 'enrober-practice', standing: 'memory', note: 'Solid chocolate without air.' },
  ),
  ...casson('milk', 14.28, 1.863),
  ...casson('dark', 29.02, 6.056),
  row(
    'rheology.composition_shift',
    'pgpr-half-percent',
    { fat: 0.3, lecithin: 0.003, new_fat: 0.3, new_lecithin: 0.003, new_pgpr: 0.005 },
    'yield_factor',
    [0.02, 0.35],
    0,
    {
      kind: 'published',
      source: 'chocolate-flow-texts',
      standing: 'memory',
      note: 'Half a percent of E476 all but removes the yield value.',
    },
  ),
  row(
    'rheology.composition_shift',
    'first-half-percent-lecithin',
    { fat: 0.335, lecithin: 0, new_fat: 0.335, new_lecithin: 0.005 },
    'plastic_factor',
    [0.4, 0.75],
    0,
    { kind: 'published', source: 'chocolate-flow-texts', standing: 'memory', note: 'Dark chocolate of 33.5 % fat.' },
  ),
  row(
    'rheology.composition_shift',
    'fat-28-to-32',
    { fat: 0.28, lecithin: 0.0025, new_fat: 0.32, new_lecithin: 0.0025 },
    'plastic_factor',
    [0.2, 0.5],
    0,
    { kind: 'published', source: 'chocolate-flow-texts', standing: 'memory', note: 'Four points of fat more than halve it at low fat.' },
  ),
];
