import type { Check } from '../check.js';

/** Values gathered to examine the finished models; none was at hand when they were built. */
type Rest = Pick<Check, 'kind' | 'source' | 'standing'> & { readonly note?: string };
const row = (
  id: string,
  model: string,
  inputs: Check['inputs'],
  output: string,
  expected: Check['expected'],
  tolerance: number,
  rest: Rest,
): Check => ({ id: `examined-${id}`, model, inputs, output, expected, tolerance, ...rest });

const exact = { kind: 'published', source: 'abramowitz-stegun-1964', standing: 'memory' } as const;
const oc = (id: string, inputs: Check['inputs'], output: string, expected: number, tolerance: number, rest: Rest = exact): Check =>
  row(`oc-${id}`, 'sampling.operating_characteristic', inputs, output, expected, tolerance, rest);

const iso = { kind: 'published', source: 'iso-2859-1', standing: 'memory' } as const;
const plans = [
  [1000, 'II', 1, 80, 2],
  [500, 'II', 2.5, 50, 3],
  [3000, 'II', 0.25, 200, 1],
  [10_000, 'II', 1.5, 200, 7],
  [100, 'II', 4, 20, 2],
  [35_000, 'II', 0.65, 315, 5],
  [1000, 'I', 1, 50, 1],
  [200, 'II', 6.5, 32, 5],
] as const;

const drops = { kind: 'measured', source: 'gunn-kinzer-1949', standing: 'memory' } as const;
const drop = (diameter_mm: number, expected: number, tolerance: number, note: string): Check =>
  row(`drop-${diameter_mm}`, 'air.terminal_velocity', { diameter_mm, density_kg_m3: 998 }, 'terminal_velocity_m_s', expected, tolerance, {
    ...drops,
    note,
  });

const z = (id: string, t: readonly number[], d: readonly number[], expected: number, tolerance: number, source: Check['source']): Check =>
  row(`z-${id}`, 'lethality.z_value', { temperature_series_c: t, d_series_min: d }, 'z_k', expected, tolerance, {
    kind: 'published',
    source,
    standing: 'found',
    note: 'Printed z from the printed D.',
  });
const d = (id: string, study: string, temperature_c: number, expected: number, tolerance: number, rest: Rest): Check =>
  row(`d-${id}`, 'lethality.d_value', { study, temperature_c }, 'd_min', expected, tolerance, rest);
const chocolateOf1968 = { kind: 'measured', source: 'goepfert-biggie-1968', standing: 'memory' } as const;

const limit = (market: string, contaminant: string, product: string, day: string, expected: number, rest: Rest): Check =>
  row(
    `limit-${market}-${contaminant}-${product}-${day}`.replaceAll(' ', '-'),
    'contaminant.limit',
    { market, contaminant, product, day },
    'limit',
    expected,
    1e-9,
    rest,
  );
const nickel = { kind: 'published', source: 'eu-2024-1987', standing: 'memory' } as const;
const codex = { kind: 'published', source: 'codex-cxs-193', standing: 'secondhand' } as const;

const threshold = (material: string, contact_s: number, expected: number, tolerance: number): Check =>
  row(
    `burn-${material}-${contact_s}`.replaceAll(/[ ,]+/g, '-'),
    'burn.surface_threshold',
    { material, contact_s },
    'threshold_c',
    expected,
    tolerance,
    {
      kind: 'published',
      source: 'iso-13732-1',
      standing: 'memory',
      note: 'Typing of a remembered table, except 10 s, which lies between.',
    },
  );
const scald = (temperature_c: number, expected: readonly [number, number]): Check =>
  row(`scald-${temperature_c}`, 'burn.contact_time', { temperature_c }, 'time_s', expected, 0, {
    kind: 'published',
    source: 'moritz-henriques-1947',
    standing: 'memory',
    note: 'Scald tables of hot water in dwellings, second and third degree.',
  });

export const examinedSafetyChecks: readonly Check[] = [
  oc('binomial-50-1', { sample_size: 50, acceptance_number: 1, fraction_defective: 0.02 }, 'acceptance_probability', 0.7358, 2e-4),
  oc('binomial-20-2', { sample_size: 20, acceptance_number: 2, fraction_defective: 0.1 }, 'acceptance_probability', 0.6769, 1e-4),
  oc(
    'poisson-2-2',
    { sample_size: 100, acceptance_number: 2, fraction_defective: 0.02, law: 'poisson' },
    'acceptance_probability',
    0.6767,
    1e-4,
  ),
  oc(
    'hypergeometric-50-10',
    { sample_size: 10, acceptance_number: 0, fraction_defective: 0.1, law: 'hypergeometric', lot_size: 50 },
    'acceptance_probability',
    0.31056,
    5e-5,
  ),
  oc('limiting-80-2', { sample_size: 80, acceptance_number: 2, fraction_defective: 0.01 }, 'limiting_quality', 0.0652, 4e-4, iso),
  ...plans.flatMap(([lot_size, level, aql_percent, n, c]) =>
    (
      [
        ['sample_size', n],
        ['acceptance_number', c],
      ] as const
    ).map(([output, expected]) =>
      row(
        `plan-${lot_size}-${level}-${aql_percent}-${output}`,
        'sampling.attribute_plan',
        { lot_size, level, aql_percent },
        output,
        expected,
        0,
        iso,
      ),
    ),
  ),
  row(
    'sixty-portions',
    'sampling.presence_absence',
    { portions: 60, portion_g: 25, organisms_per_kg: 1 },
    'acceptance_probability',
    0.2231,
    1e-3,
    { kind: 'published', source: 'icmsf-7', standing: 'memory', note: 'Case 15, one cell per kg.' },
  ),
  drop(0.1, 0.27, 0.035, 'Water drops, almost rigid spheres; later work prints 0.256.'),
  drop(0.5, 2.06, 0.12, 'Water drops, still round.'),
  drop(1, 4.03, 0.3, 'Water drops, nearly round.'),
  row('wheat', 'air.terminal_velocity', { diameter_mm: 3.88, density_kg_m3: 1300, sphericity: 0.85 }, 'terminal_velocity_m_s', 7.8, 0.9, {
    kind: 'measured',
    source: 'wheat-terminal-velocity',
    standing: 'found',
    note: 'Wheat at 9 % moisture, size printed; density and sphericity usual (memory). Another grain of this size, for want of cocoa.',
  }),
  row(
    'groundnut',
    'air.terminal_velocity',
    { diameter_mm: 9.5, density_kg_m3: 1000, sphericity: 0.9 },
    'terminal_velocity_m_s',
    [10.5, 13.5],
    0,
    {
      kind: 'published',
      source: 'common-practice',
      standing: 'memory',
      note: 'Peanut kernels in an aspirator.',
    },
  ),
  d('dough-80', 'salmonella peanut butter dough', 80, 2.59, 0.3, {
    kind: 'measured',
    source: 'cookie-dough-stec',
    standing: 'found',
    note: 'Not held by the model: between the two points that it holds.',
  }),
  d('cocoa-powder-80-conference', 'salmonella cocoa powder', 80, 13.3, 2, {
    kind: 'measured',
    source: 'iafp-2017-cocoa-powder',
    standing: 'found',
    note: 'Conference abstract of the same group; the model holds the journal’s 11.5 ± 0.9.',
  }),
  d('enterococcus-75', 'enterococcus cocoa powder', 75, 28.9, 13, {
    kind: 'measured',
    source: 'tsai-2019',
    standing: 'found',
    note: 'Journal abstract; the model holds the conference abstract of the same group. A factor of 1.4 apart.',
  }),
  z('enterococcus-dough', [75, 80, 85], [15.5, 5.02, 2.02], 11.31, 0.05, 'cookie-dough-stec'),
  z('salmonella-dough', [75, 80, 85], [4.97, 2.59, 1.23], 16.45, 0.1, 'cookie-dough-stec'),
  z('coli-dough', [65, 70, 75], [14.01, 3.56, 1.73], 11.02, 0.05, 'cookie-dough-stec'),
  z('cocoa-powder-salmonella', [70, 75, 80], [46, 22.1, 13.3], 18.5, 0.2, 'iafp-2017-cocoa-powder'),
  z('cocoa-powder-enterococcus', [70, 75, 80], [105.4, 40.7, 18.3], 13.1, 0.1, 'iafp-2017-cocoa-powder'),
  z('cocoa-powder-listeria', [70, 75, 80], [7.44, 3.62, 1.35], 13.48, 0.1, 'iafp-2017-listeria'),
  z('cocoa-powder-listeria-wetter', [70, 75, 80], [4.77, 2.84, 1.06], 15.31, 0.1, 'iafp-2017-listeria'),
  row('milk-chocolate-70', 'milk_chocolate.salmonella_d', { temperature_c: 70 }, 'd_slowest_min', [816, 2000], 0, {
    ...chocolateOf1968,
    note: 'S. Typhimurium, 816 min: the slowest value of the model must not lie below.',
  }),
  row('milk-chocolate-90', 'milk_chocolate.salmonella_d', { temperature_c: 90 }, 'd_slowest_min', [75, 200], 0, {
    ...chocolateOf1968,
    note: 'S. Typhimurium, about 75 min at 90 °C.',
  }),
  row(
    'bond-10000-100',
    'grinding.bond',
    { work_index_kwh_t: 13.81, feed_80_um: 10_000, product_80_um: 100 },
    'energy_kwh_t',
    12.429,
    0.002,
    {
      kind: 'published',
      source: 'bond-1952',
      standing: 'memory',
      note: 'Mean work index of all materials tested; arithmetic by hand.',
    },
  ),
  row('hatch-choate', 'grinding.log_normal', { median_size_um: 10, geometric_deviation: 2 }, 'sauter_um', 7.865, 0.01, {
    ...exact,
    note: 'd50 exp(-ln² σ / 2), the conversion of Hatch and Choate.',
  }),
  limit('EU', 'nickel', 'milk chocolate below 30 % cocoa solids', '2026-01-01', 2.5, nickel),
  limit('EU', 'nickel', 'chocolate from 50 % cocoa solids', '2026-01-01', 7, nickel),
  limit('EU', 'nickel', 'cocoa powder for the consumer', '2026-01-01', 15, { ...nickel, standing: 'secondhand' }),
  limit('Codex', 'cadmium', 'chocolate below 30 % cocoa solids', '2026-01-01', 0.3, codex),
  limit('Codex', 'cadmium', 'chocolate of 30 to below 50 % cocoa solids', '2026-01-01', 0.7, codex),
  limit('China', 'aflatoxin b1', 'peanuts', '2026-01-01', 20, { kind: 'published', source: 'gb-2761', standing: 'memory' }),
  limit('US', 'mouldy and insect-infested beans', 'cocoa beans', '2026-01-01', 0.06, {
    kind: 'published',
    source: 'fda-cpg-515-775',
    standing: 'found',
  }),
  threshold('bare metal', 1, 65, 1),
  threshold('bare metal', 10, 56, 2),
  threshold('bare metal', 60, 51, 0.5),
  threshold('ceramic, glass, stone', 60, 56, 0.5),
  threshold('plastic', 60, 60, 0.5),
  threshold('wood', 600, 48, 0.5),
  threshold('bare metal', 28_800, 43, 0.5),
  scald(49, [240, 600]),
  scald(55, [15, 35]),
  scald(60, [3, 6]),
];
