import type { Check } from '../../check.js';
import { checksOf, type Row } from './row.js';

const crc = { kind: 'measured', source: 'crc-102-solutions', standing: 'found' } as const;
const glucoseSyrup42 = (percent: number) => ({ water: 100 - percent, glucose_syrup_solids: percent });

const iso: readonly (readonly [percent: number, t: number, index: number])[] = [
  [40, 30, 1.40163],
  [40, 45, 1.39894],
  [40, 60, 1.39592],
  [50, 20, 1.42452],
  [50, 45, 1.42003],
  [60, 20, 1.44767],
  [60, 30, 1.44588],
  [60, 60, 1.43981],
  [64, 30, 1.45565],
  [64, 45, 1.45269],
  [10, 20, 1.34852],
  [20, 60, 1.35877],
];

const pure = (brix: number, t: number, expected: number, tolerance: number): Row => [
  `${brix}_at_${t}`,
  { solids: brix / 100, temperature_c: t },
  expected,
  tolerance,
];

export const physicalChecks: readonly Check[] = [
  ...checksOf('sucrose.density', 'density_kg_m3', crc, [
    pure(10, 20, 1038.1, 0.3),
    pure(40, 20, 1176.5, 0.3),
    pure(64, 20, 1310.3, 0.3),
    pure(70, 20, 1347.2, 0.3),
    pure(74, 20, 1372.6, 1),
    pure(84, 20, 1438.3, 1),
  ]),
  ...checksOf(
    'sucrose.density',
    'density_kg_m3',
    { kind: 'code', source: 'icumsa-sucrose-density', standing: 'found', note: 'the same polynomial' },
    [pure(60, 50, 1270.62, 0.05), pure(70, 60, 1324.8, 0.05), pure(75, 80, 1343.82, 0.05)],
  ),
  ...checksOf(
    'sucrose.density',
    'density_kg_m3',
    {
      kind: 'published',
      source: 'mohos-2010-app',
      standing: 'found',
      note: 'density at 15 °C of solutions saturated at 20, 40, 80 °C; the print does not say so',
    },
    [pure(67.09, 15, 1332.7, 1.5), pure(70.42, 15, 1353.5, 1.5), pure(78.36, 15, 1404.9, 1.5)],
  ),
  ...checksOf('syrup.density', 'density_kg_m3', { ...crc, note: 'its volume ratio was taken from this density' }, [
    ['glucose_40', { water: 60, glucose: 40 }, 1172.4, 1.5],
    ['fructose_40', { water: 60, fructose: 40 }, 1176.9, 1.5],
    ['maltose_40', { water: 60, maltose: 40 }, 1176.9, 1.5],
    ['lactose_18', { water: 82, lactose: 18 }, 1074.6, 1.5],
    ['sucrose_60', { water: 40, sucrose: 60 }, 1286.4, 1.5],
  ]),
  ...checksOf(
    'syrup.density',
    'density_kg_m3',
    {
      kind: 'measured',
      source: 'corn-syrup-77-density',
      standing: 'found',
      note: 'taken as 42 DE; at 20 °C used for the ratio, at 60 °C beyond the fit of its authors',
    },
    [
      ['corn_syrup_77_20', { ...glucoseSyrup42(77), temperature_c: 20 }, 1404.6, 4],
      ['corn_syrup_77_46', { ...glucoseSyrup42(77), temperature_c: 46 }, 1404.6 - 0.5012 * 26, 4],
    ],
  ),
  ...checksOf('brix.from_density', 'brix', crc, [
    ['1176.5', { density_kg_m3: 1176.5 }, 40, 0.1],
    ['1310.3', { density_kg_m3: 1310.3 }, 64, 0.1],
    ['1372.6', { density_kg_m3: 1372.6 }, 74, 0.2],
    ['1038.1', { density_kg_m3: 1038.1 }, 10, 0.1],
    ['1438.3', { density_kg_m3: 1438.3 }, 84, 0.2],
  ]),
  ...checksOf('baume.from_brix', 'baume', { kind: 'published', source: 'brix-baume-table', standing: 'found' }, [
    ['5', { brix: 5 }, 2.79, 0.03],
    ['10', { brix: 10 }, 5.57, 0.03],
    ['20', { brix: 20 }, 11.1, 0.03],
    ['40', { brix: 40 }, 21.97, 0.03],
    ['60', { brix: 60 }, 32.49, 0.05],
    ['80', { brix: 80 }, 42.47, 0.06],
  ]),
  ...checksOf(
    'glucose_syrup.solids_from_baume',
    'solids',
    { kind: 'published', source: 'junk-pancoast-1973', standing: 'found', note: 'tolerance of the volume ratios' },
    [
      ['30', { baume: 30, dextrose_equivalent: 42 }, 0.5547, 0.008],
      ['40', { baume: 40, dextrose_equivalent: 42 }, 0.7439, 0.008],
    ],
  ),
  ...checksOf(
    'sucrose.refractive_index',
    'refractive_index',
    { kind: 'published', source: 'icumsa-sps-3', standing: 'memory', note: 'the table the specific refraction was taken from' },
    [
      pure(10, 20, 1.34782, 1e-4),
      pure(20, 20, 1.36384, 1e-4),
      pure(30, 20, 1.38115, 1e-4),
      pure(40, 20, 1.39986, 1e-4),
      pure(50, 20, 1.42009, 1e-4),
      pure(85, 20, 1.50398, 2e-4),
    ],
  ),
  ...checksOf(
    'syrup.refractive_index',
    'refractive_index',
    {
      kind: 'published',
      source: 'iso-1743',
      standing: 'found',
      note: 'one constant (the refraction of the chains) was taken from this table at 20 °C, its drift with temperature too',
    },
    iso.map(
      ([percent, t, index]) =>
        [`glucose_syrup_${percent}_at_${t}`, { ...glucoseSyrup42(percent), temperature_c: t }, index, 0.0008] as const,
    ),
  ),
  ...checksOf(
    'syrup.refractive_index',
    'correction',
    {
      kind: 'published',
      source: 'invert-refractometer-rule',
      standing: 'memory',
      note: 'common practice, no source; the refraction of the monosaccharides was taken from it at 60 %',
    },
    [
      ['invert_40', { water: 60, glucose: 20, fructose: 20 }, 0.022 * 40, 0.35],
      ['invert_72', { water: 28, glucose: 36, fructose: 36 }, 0.022 * 72, 0.35],
      ['half_invert_72', { water: 28, sucrose: 36, glucose: 18, fructose: 18 }, 0.022 * 36, 0.3],
    ],
  ),
  ...checksOf(
    'syrup.solids_from_refractometer',
    'solids',
    { kind: 'published', source: 'iso-1743', standing: 'found', note: 'the table read the other way' },
    [
      ['1.44588_at_30', { glucose_syrup_solids: 1, refractive_index: 1.44588, temperature_c: 30 }, 0.6, 0.0035],
      ['1.42452_at_20', { glucose_syrup_solids: 1, refractive_index: 1.42452, temperature_c: 20 }, 0.5, 0.0035],
      ['1.39592_at_60', { glucose_syrup_solids: 1, refractive_index: 1.39592, temperature_c: 60 }, 0.4, 0.0035],
    ],
  ),
  ...checksOf('sucrose.viscosity', 'viscosity_pa_s', { ...crc, note: 'two tables differ by 3.4 % at 60 %' }, [
    pure(20, 20, 1.96e-3, 0.157e-3),
    pure(40, 20, 6.2e-3, 0.496e-3),
    pure(40, 60, 1.982e-3, 0.159e-3),
    pure(60, 20, 56.5e-3, 4.52e-3),
    pure(60, 40, 21.28e-3, 1.7e-3),
    pure(60, 60, 9.83e-3, 0.786e-3),
    pure(60, 80, 5.4e-3, 0.432e-3),
    pure(60, 100, 3.34e-3, 0.267e-3),
    pure(56, 20, 32.06 * 1.005e-3, 2.6e-3),
    pure(68, 20, 287.9 * 1.005e-3, 23e-3),
    pure(70, 20, 480.6 * 1.005e-3, 38.4e-3),
    pure(74, 20, 1628 * 1.005e-3, 0.13),
  ]),
  ...checksOf(
    'syrup.viscosity',
    'viscosity_pa_s',
    { ...crc, note: 'glucose 50, fructose 40, maltose 58, lactose 10, mannitol 15 %: the thickening power was taken from it' },
    [
      ['glucose_20', { water: 80, glucose: 20 }, 1.904e-3, 0.095e-3],
      ['glucose_50', { water: 50, glucose: 50 }, 11.884e-3, 0.6e-3],
      ['fructose_40', { water: 60, fructose: 40 }, 5.046e-3, 0.252e-3],
      ['maltose_20', { water: 80, maltose: 20 }, 2.021e-3, 0.101e-3],
      ['maltose_58', { water: 42, maltose: 58 }, 49.298e-3, 2.465e-3],
      ['lactose_10', { water: 90, lactose: 10 }, 1.37e-3, 0.069e-3],
      ['sucrose_60', { water: 40, sucrose: 60 }, 58.487e-3, 2.924e-3],
      ['mannitol_15', { water: 85, mannitol: 15 }, 1.537e-3, 0.077e-3],
    ],
  ),
  ...checksOf(
    'syrup.viscosity',
    'viscosity_pa_s',
    {
      kind: 'measured',
      source: 'telis-2007',
      standing: 'found',
      note: 'read from an excerpt; lies below glucose at 20 °C carried to 45 °C like sucrose',
    },
    [['glucose_50_at_45', { water: 50, glucose: 50, temperature_c: 45 }, 3.65e-3, 0.44e-3]],
  ),
  ...checksOf(
    'syrup.viscosity',
    'viscosity_pa_s',
    {
      kind: 'measured',
      source: 'corn-syrup-77-density',
      standing: 'found',
      note: 'taken as 42 DE; one constant came from 35 °C; tolerance 35 %, what one point of solids does',
    },
    [
      ['corn_syrup_77_at_25', { ...glucoseSyrup42(77), temperature_c: 25 }, 6.057, 2.1],
      ['corn_syrup_77_at_35', { ...glucoseSyrup42(77), temperature_c: 35 }, 2.665, 0.93],
      ['corn_syrup_77_at_45', { ...glucoseSyrup42(77), temperature_c: 45 }, 1.443, 0.5],
    ],
  ),
  ...checksOf(
    'glucose_syrup.viscosity_77',
    'viscosity_pa_s',
    { kind: 'code', source: 'corn-syrup-77-density', standing: 'found', note: 'the same formula' },
    [
      ['25', { temperature_c: 25 }, 6.057, 0.02],
      ['35', { temperature_c: 35 }, 2.665, 0.02],
      ['45', { temperature_c: 45 }, 1.443, 0.02],
    ],
  ),
];
