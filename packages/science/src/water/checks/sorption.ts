import type { Check } from '../../check.js';
import { checksOf } from './row.js';

const own = { kind: 'code', standing: 'found', note: 'the same formula with the same constants' } as const;
const seed = (water_activity: number, oil: number, temperature_c = 25) => ({ water_activity, oil, temperature_c });
const material = (name: string, water_activity: number, temperature_c = 25) => ({ material: name, water_activity, temperature_c });

export const sorptionChecks: readonly Check[] = [
  ...checksOf('sorption.moisture', 'moisture_dry_basis', { ...own, source: 'cocoa-isotherm-study' }, [
    ['cocoa_bean_0.3', material('cocoa_bean', 0.3), 0.0431, 0.0001],
    ['cocoa_bean_0.5', material('cocoa_bean', 0.5), 0.06017, 0.0001],
    ['cocoa_bean_0.7', material('cocoa_bean', 0.7), 0.08959, 0.0001],
    ['cocoa_shell_0.3', material('cocoa_shell', 0.3), 0.11499, 0.0001],
    ['cocoa_shell_0.5', material('cocoa_shell', 0.5), 0.15855, 0.0001],
    ['cocoa_shell_0.7', material('cocoa_shell', 0.7), 0.24803, 0.0001],
  ]),
  ...checksOf('sorption.moisture', 'moisture_dry_basis', { ...own, source: 'material-data-pasta' }, [
    ['pasta_0.3', material('pasta', 0.3), 0.0986, 0.002],
    ['pasta_0.7', material('pasta', 0.7), 0.1794, 0.002],
    ['semolina_0.3', material('semolina', 0.3), 0.0648, 0.002],
    ['semolina_0.7', material('semolina', 0.7), 0.1468, 0.002],
    ['pasta_oswin_0.3', material('pasta_oswin', 0.3), 0.0979, 0.002],
    ['pasta_oswin_0.7', material('pasta_oswin', 0.7), 0.1788, 0.002],
  ]),
  ...checksOf('sorption.moisture', 'moisture_dry_basis', { ...own, source: 'cereal-grains-storage' }, [
    ['wheat_flour_0.5', material('wheat_flour', 0.5, 20), 0.1321, 0.0002],
    ['wheat_flour_0.75', material('wheat_flour', 0.75, 20), 0.1888, 0.0002],
  ]),
  ...checksOf(
    'sorption.water_activity',
    'water_activity',
    { kind: 'measured', source: 'container-handbook', standing: 'found', note: 'wheat at 20 °C' },
    [
      ['wheat_12', { material: 'wheat_flour', moisture: 0.12, temperature_c: 20 }, 0.55, 0.04],
      ['wheat_15', { material: 'wheat_flour', moisture: 0.15, temperature_c: 20 }, 0.75, 0.04],
    ],
  ),
  ...checksOf('sorption.water_activity', 'water_activity', { ...own, source: 'asae-d245', standing: 'memory' }, [
    ['peanut_7.6_at_13', { material: 'peanut_kernel', moisture: 7.6 / 107.6, temperature_c: 13 }, 0.5783, 0.001],
    ['peanut_2_at_25', { material: 'peanut_kernel', moisture: 2 / 102, temperature_c: 25 }, 0.1296, 0.001],
    ['peanut_5_at_25', { material: 'peanut_kernel', moisture: 5 / 105, temperature_c: 25 }, 0.4219, 0.001],
    ['peanut_8.1_at_25', { material: 'peanut_kernel', moisture: 8.1 / 108.1, temperature_c: 25 }, 0.6767, 0.001],
  ]),
  ...checksOf(
    'sorption.moisture',
    'moisture',
    {
      kind: 'measured',
      source: 'butts-2017',
      standing: 'found',
      note: 'kernels after 30 days near 65 %; the store was not measured at the kernel',
    },
    [
      ['peanut_store_13', material('peanut_kernel', 0.65, 13), 0.076, 0.006],
      ['peanut_store_3', material('peanut_kernel', 0.65, 3), 0.081, 0.006],
    ],
  ),
  ...checksOf(
    'sorption.moisture',
    'moisture_dry_basis',
    { kind: 'measured', source: 'lactose-isotherms', standing: 'found', note: 'constants from memory' },
    [['amorphous_lactose_0.37', material('amorphous_lactose', 0.37, 24), 0.068, 0.005]],
  ),
  ...checksOf(
    'sorption.moisture',
    'moisture',
    {
      kind: 'measured',
      source: 'whole-milk-powder-isotherm',
      standing: 'found',
      note: 'adsorption at 0.60, where part of the lactose has crystallised',
    },
    [['whole_milk_powder_0.6', material('whole_milk_powder', 0.6, 20), 0.0782, 0.005]],
  ),
  ...checksOf(
    'sorption.moisture',
    'moisture_dry_basis',
    { kind: 'measured', source: 'bull-1944', standing: 'memory', note: 'used in fitting' },
    [
      ['egg_white_0.2', material('egg_white_powder', 0.2), 0.0595, 0.004],
      ['egg_white_0.5', material('egg_white_powder', 0.5), 0.1126, 0.006],
      ['egg_white_0.8', material('egg_white_powder', 0.8), 0.2035, 0.012],
    ],
  ),
  ...checksOf('sorption.oily_seed', 'moisture_dry_basis', { ...own, source: 'cromarty-1982' }, [
    ['peanut_0.2', seed(0.2, 0.48), 0.0374, 0.0002],
    ['peanut_0.3', seed(0.3, 0.48), 0.0473, 0.0002],
    ['peanut_0.65', seed(0.65, 0.48), 0.0811, 0.0002],
    ['peanut_0.75', seed(0.75, 0.48), 0.0932, 0.0002],
    ['almond_0.3', seed(0.3, 0.52), 0.0436, 0.0002],
    ['almond_0.65', seed(0.65, 0.52), 0.0749, 0.0002],
    ['hazelnut_0.3', seed(0.3, 0.62), 0.0346, 0.0002],
    ['hazelnut_0.65', seed(0.65, 0.62), 0.0593, 0.0002],
    ['peanut_13', seed(0.65, 0.48, 13), 0.0898, 0.0002],
  ]),
  ...checksOf(
    'sorption.oily_seed',
    'moisture_dry_basis',
    { kind: 'measured', source: 'butts-2017', standing: 'found', note: '7.6 % of the whole; the formula is for seeds at rest for long' },
    [['peanut_store', seed(0.65, 0.48, 13), 0.076 / 0.924, 0.016]],
  ),
  ...checksOf('sorption.bet_constants', 'c', { kind: 'published', source: 'berk-bet-example', standing: 'found' }, [
    ['example_c', { slope: 16.8, intercept: 0.57 }, 30.47, 0.05],
  ]),
  ...checksOf('sorption.bet_constants', 'monolayer', { kind: 'published', source: 'berk-bet-example', standing: 'found' }, [
    ['example_monolayer', { slope: 16.8, intercept: 0.57 }, 0.058, 0.0006],
  ]),
  ...checksOf('sorption.gab', 'moisture_dry_basis', { ...own, source: 'cocoa-isotherm-study' }, [
    ['cocoa_bean', { water_activity: 0.5, monolayer: 0.036, c: 21.63, k: 0.871 }, 0.06017, 0.0001],
    ['lactose', { water_activity: 0.37, monolayer: 0.0491, c: 4.33, k: 1.18 }, 0.0671, 0.0003],
  ]),
  ...checksOf(
    'sorption.gab_fit',
    'monolayer',
    { kind: 'code', source: 'cocoa-isotherm-study', standing: 'found', note: 'points of the cocoa bean curve, rounded' },
    [
      [
        'cocoa_bean_points',
        { water_activity: [0.1, 0.3, 0.5, 0.7, 0.85], moisture_dry_basis: [0.0265, 0.0431, 0.06017, 0.08959, 0.13737] },
        0.036,
        0.001,
      ],
    ],
  ),
  ...checksOf(
    'food.boiling_point',
    'elevation_k',
    {
      kind: 'published',
      source: 'hui-1992',
      standing: 'found',
      note: 'taken as whole milk; which milk is not said, and skimmed milk would give 0.3, 1.1, 3.4, 6.5 K',
    },
    [
      ...(
        [
          [0.16, 0.5, 0.4],
          [0.39, 1.5, 0.4],
          [0.62, 3, 0.8],
          [0.73, 5, 0.8],
        ] as const
      ).map(
        ([solids, expected, tolerance]) =>
          [
            `concentrated_milk_${Math.round(100 * solids)}`,
            { water: 1 - solids, fat: 0.31 * solids, milk_protein: 0.26 * solids, lactose: 0.37 * solids, ash: 0.06 * solids },
            expected,
            tolerance,
          ] as const,
      ),
    ],
  ),
  ...checksOf(
    'food.boiling_point',
    'boiling_point_c',
    {
      kind: 'measured',
      source: 'caramel-cooks',
      standing: 'found',
      note: 'recipe assumed: 12 % fat, 3 % milk protein, sucrose to syrup solids 1 : 1.25',
    },
    [
      ['caramel_12', { water: 12, fat: 12, milk_protein: 3, sucrose: 73 / 2.25, glucose_syrup_solids: (73 * 1.25) / 2.25 }, 113.3, 3.5],
      ['caramel_10', { water: 10, fat: 12, milk_protein: 3, sucrose: 75 / 2.25, glucose_syrup_solids: (75 * 1.25) / 2.25 }, 116.7, 3.5],
    ],
  ),
  ...checksOf(
    'food.water_activity',
    'water_activity',
    { kind: 'published', source: 'beuchat-1981', standing: 'found', note: 'band of a chart of foods' },
    [
      ['whole_milk_powder', { water: 3.5, fat: 26.5, milk_protein: 26, lactose: 38, ash: 6 }, [0.2, 0.3], 0.05],
      [
        'honey',
        {
          water: 17.2,
          fructose: 38.2,
          glucose: 31.3,
          maltose: 7.3,
          sucrose: 1.3,
          higher_saccharides: 1.5,
          organic_acids: 0.6,
          ash: 0.2,
          other: 2.4,
        },
        [0.6, 0.65],
        0.03,
      ],
    ],
  ),
  ...checksOf(
    'food.equilibrium_moisture',
    'moisture_dry_basis',
    { kind: 'measured', source: 'bull-1944', standing: 'memory', note: 'starch alone, used in fitting' },
    [
      ['starch_0.5', { water_activity: 0.5, starch: 1 }, 0.12, 0.008],
      ['starch_0.9', { water_activity: 0.9, starch: 1 }, 0.24, 0.015],
    ],
  ),
  ...checksOf('calibration_salt.water_activity', 'water_activity', { kind: 'published', source: 'salt-values-page', standing: 'found' }, [
    ['magnesium_chloride_22.5', { salt: 'magnesium_chloride', temperature_c: 22.5 }, 0.3295, 0.005],
    ['potassium_sulfate_22.5', { salt: 'potassium_sulfate', temperature_c: 22.5 }, 0.9745, 0.005],
  ]),
  ...checksOf(
    'calibration_salt.water_activity',
    'water_activity',
    { kind: 'published', source: 'greenspan-1977', standing: 'memory', note: 'printed table' },
    [
      ['lithium_chloride_25', { salt: 'lithium_chloride', temperature_c: 25 }, 0.113, 0.003],
      ['sodium_chloride_25', { salt: 'sodium_chloride', temperature_c: 25 }, 0.7529, 0.0012],
      ['potassium_carbonate_25', { salt: 'potassium_carbonate', temperature_c: 25 }, 0.4316, 0.004],
      ['potassium_acetate_25', { salt: 'potassium_acetate', temperature_c: 25 }, 0.2251, 0.0032],
      ['magnesium_nitrate_25', { salt: 'magnesium_nitrate', temperature_c: 25 }, 0.5289, 0.0022],
      ['sodium_bromide_25', { salt: 'sodium_bromide', temperature_c: 25 }, 0.5757, 0.004],
      ['potassium_chloride_25', { salt: 'potassium_chloride', temperature_c: 25 }, 0.8434, 0.0026],
      ['potassium_nitrate_25', { salt: 'potassium_nitrate', temperature_c: 25 }, 0.9358, 0.0055],
    ],
  ),
];
