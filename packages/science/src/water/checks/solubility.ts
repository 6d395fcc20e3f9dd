import type { Check } from '../../check.js';
import { checksOf } from './row.js';

const at = (t: number) => ({ temperature_c: t });
const handbook = { kind: 'published', source: 'mohos-2010-app', standing: 'found' } as const;
const page = { kind: 'published', source: 'sucrose-properties-page', standing: 'found', note: 'used from 80 °C' } as const;
const perHundred = (grams: number) => grams / 100;

export const solubilityChecks: readonly Check[] = [
  ...checksOf('sucrose.solubility', 'solids', handbook, [
    ['0', at(0), 0.6418, 0.006],
    ['10', at(10), 0.6558, 0.006],
    ['20', at(20), 0.6709, 0.006],
    ['40', at(40), 0.7042, 0.006],
    ['60', at(60), 0.7418, 0.006],
    ['70', at(70), 0.7622, 0.006],
    ['80', at(80), 0.7836, 0.006],
    ['100', at(100), 0.8297, 0.006],
  ]),
  ...checksOf('sucrose.solubility', 'sucrose_per_water', page, [
    ['page_0', at(0), 1.812, 0.036],
    ['page_20', at(20), 2.007, 0.04],
    ['page_40', at(40), 2.358, 0.047],
    ['page_60', at(60), 2.894, 0.058],
    ['page_80', at(80), 3.704, 0.074],
    ['page_100', at(100), 4.844, 0.097],
    ['page_140', at(140), 10.71, 0.214],
  ]),
  ...checksOf(
    'sucrose.solubility',
    'solids',
    { kind: 'published', source: 'charles-1960', standing: 'memory', note: 'another polynomial' },
    [
      ['charles_20', at(20), 0.66598, 0.004],
      ['charles_60', at(60), 0.74201, 0.004],
    ],
  ),
  ...checksOf('sugar.solubility', 'solids', { kind: 'published', source: 'hartel-2011', standing: 'found', note: 'review table' }, [
    ['fructose_20', { sugar: 'fructose', ...at(20) }, 0.789, 0.01],
    ['lactose_50', { sugar: 'lactose', ...at(50) }, 0.303, 0.01],
    ['maltose_50', { sugar: 'maltose', ...at(50) }, 0.583, 0.01],
    ['sorbitol_20', { sugar: 'sorbitol', ...at(20) }, 0.73, 0.01],
    ['sorbitol_50', { sugar: 'sorbitol', ...at(50) }, 0.83, 0.01],
    ['glucose_commercial_20', { sugar: 'glucose', ...at(20) }, 0.497, 0.02],
  ]),
  ...checksOf('sugar.solubility', 'solids', { kind: 'measured', source: 'gillis-1920', standing: 'found', note: 'the table itself' }, [
    ['maltose_0', { sugar: 'maltose', ...at(0.6) }, 0.361, 0.008],
    ['maltose_21', { sugar: 'maltose', ...at(21) }, 0.441, 0.008],
    ['maltose_60', { sugar: 'maltose', ...at(59.8) }, 0.637, 0.008],
    ['maltose_96', { sugar: 'maltose', ...at(96.5) }, 0.851, 0.008],
  ]),
  ...checksOf(
    'lactose.solubility',
    'final_per_water',
    { kind: 'measured', source: 'hudson-1908', standing: 'found', note: 'the table itself' },
    [
      ['0', at(0), perHundred(11.9), 0.007],
      ['25', at(25), perHundred(21.6), 0.009],
      ['49', at(49), perHundred(42.4), 0.016],
      ['74', at(74), perHundred(86.2), 0.029],
      ['89', at(89), perHundred(139.2), 0.045],
    ],
  ),
  ...checksOf('lactose.solubility', 'alpha_initial_per_water', { kind: 'published', source: 'walstra-2006', standing: 'found' }, [
    ['alpha_20', at(20), 0.07, 0.005],
  ]),
  ...checksOf('lactose.solubility', 'beta_by_alpha', { kind: 'published', source: 'walstra-2006', standing: 'found' }, [
    ['ratio_20', at(20), 1.586, 0.001],
  ]),
  ...checksOf(
    'sucrose.supersaturation',
    'supersaturation',
    { kind: 'published', source: 'coulson-richardson-2', standing: 'found', note: '2.45 kg/kg at 20 °C' },
    [['example', { solids: 2.45 / 3.45, ...at(20) }, 1.2, 0.025]],
  ),
  ...checksOf('sucrose.supersaturation', 'on_solution', { kind: 'published', source: 'coulson-richardson-2', standing: 'found' }, [
    ['example_on_solution', { solids: 2.45 / 3.45, ...at(20) }, 1.06, 0.01],
  ]),
  ...checksOf(
    'sucrose.kelvin_effect',
    'rise',
    { kind: 'published', source: 'coulson-richardson-2', standing: 'found', note: 'the size printed is the diameter' },
    [['one_micrometre', { diameter_m: 1e-6, ...at(25) }, 0.00348, 0.0002]],
  ),
  ...checksOf(
    'sucrose.saturation_function',
    'saturation_coefficient',
    { kind: 'code', source: 'wiklund-vavrinecz', standing: 'found', note: 'the same formula' },
    [
      ['beet_0.2', { nonsugar_per_water: 0.2 }, 0.9696, 0.0005],
      ['beet_0.5', { nonsugar_per_water: 0.5 }, 0.9611, 0.0005],
      ['beet_1', { nonsugar_per_water: 1 }, 1.0029, 0.0005],
      ['beet_1.5', { nonsugar_per_water: 1.5 }, 1.0774, 0.0005],
    ],
  ),
  ...checksOf(
    'syrup.grain',
    'saturation_coefficient',
    {
      kind: 'published',
      source: 'wiklund-vavrinecz',
      standing: 'secondhand',
      note: 'cane syrup, whose salts lift it; ours has no salts, so it should lie at or below',
    },
    [['cane_60', { water: 1, sucrose: 2, glucose: 0.5, fructose: 0.5, ...at(60) }, [0.85, 0.9216], 0.03]],
  ),
  ...checksOf(
    'syrup.grain',
    'saturation_coefficient',
    { kind: 'measured', source: 'sucrose-invert-solubility', standing: 'memory', note: 'used in fitting: one constant' },
    [['invert_20', { water: 27.6, sucrose: 46.6, glucose: 12.9, fructose: 12.9, ...at(20) }, 0.83, 0.01]],
  ),
  ...checksOf(
    'syrup.grain',
    'syrup_solids',
    {
      kind: 'published',
      source: 'sucrose-invert-solubility',
      standing: 'memory',
      note: 'total solids of saturated sucrose and invert, 72 to 76 %',
    },
    [['invert_solids_20', { water: 26, sucrose: 50, glucose: 12, fructose: 12, ...at(20) }, [0.72, 0.76], 0.005]],
  ),
  ...checksOf(
    'syrup.grain',
    'verdict',
    {
      kind: 'published',
      source: 'hartel-2011',
      standing: 'memory',
      note: 'milk caramel grains last in lactose or sucrose only when seeded or cold',
    },
    [['pure_syrup_80_at_20', { water: 20, sucrose: 80, ...at(20) }, 'labile', 0]],
  ),
];
