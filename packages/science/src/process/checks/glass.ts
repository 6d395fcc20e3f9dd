import type { Check } from '../../check.js';
import { rows } from './row.js';

const gt = (tg: number, k: number, water: number) => ({ solid_glass_transition_c: tg, gordon_taylor_k: k, water });
const solid = (material: string, water = 0) => ({ material, water });

/** Usual sugars of honey (memory). */
const honey = (water: number) => ({
  water,
  fructose: 0.46 * (1 - water),
  glucose: 0.375 * (1 - water),
  maltose: 0.12 * (1 - water),
  sucrose: 0.045 * (1 - water),
});

export const glassChecks: readonly Check[] = [
  ...rows({ model: 'glass_transition.gordon_taylor', kind: 'code', source: 'gordon-taylor-table-2016', standing: 'found' }, [
    ['gt-fructose-0.06', gt(5, 3.8, 0.06), 'glass_transition_c', -22.33, 0.05],
    ['gt-glucose-0.1', gt(31, 4.5, 0.1), 'glass_transition_c', -24.33, 0.05],
    ['gt-maltose-0.03', gt(87, 6.2, 0.03), 'glass_transition_c', 51.28, 0.05],
    ['gt-maltodextrin-de20-0.1', gt(141, 6.8, 0.1), 'glass_transition_c', 22.22, 0.05],
    ['gt-maltodextrin-de5-0.06', gt(188, 7.7, 0.06), 'glass_transition_c', 81.56, 0.05],
    ['gt-sucrose-0.05', gt(62, 5.42, 0.05), 'glass_transition_c', 18.3, 0.2],
    ['gt-lactose-0.0637', gt(101, 6.56, 0.0637), 'glass_transition_c', 28.2, 0.2],
  ]),
  ...rows({ model: 'glass_transition.solid', kind: 'published', source: 'berk-table-1-4', standing: 'found' }, [
    ['tg-glucose-second-table', solid('glucose'), 'glass_transition_c', 31, 8],
    ['tg-sucrose-second-table', solid('sucrose'), 'glass_transition_c', 52, 10, 'The lower of the two sets that circulate.'],
    ['tg-sorbitol-second-table', solid('sorbitol'), 'glass_transition_c', -2, 8],
  ]),
  ...rows({ model: 'glass_transition.solid', kind: 'measured', source: 'glass-data-base', standing: 'found' }, [
    ['tg-fructose-measured', solid('fructose'), 'glass_transition_c', 6.85, 6],
    ['tg-glucose-measured', solid('glucose'), 'glass_transition_c', 37.85, 7],
  ]),
  ...rows({ model: 'glass_transition.solid', kind: 'measured', source: 'lactose-glass-2006', standing: 'found' }, [
    ['tg-lactose-measured', solid('lactose'), 'glass_transition_c', 102, 3],
  ]),
  ...rows({ model: 'glass_transition.solid', kind: 'measured', source: 'fructose-blends', standing: 'found' }, [
    ['tg-fructose-blends', solid('fructose'), 'glass_transition_c', 12.85, 8],
  ]),
  ...rows({ model: 'glass_transition.syrup', kind: 'published', source: 'gordon-taylor-table-2016', standing: 'found' }, [
    ['tg-chain-maltose', { dextrose_equivalent: 52.6 }, 'glass_transition_c', 87, 1, 'A row of the series.'],
    ['tg-chain-20', { dextrose_equivalent: 20 }, 'glass_transition_c', 141, 1, 'A row of the series.'],
    ['tg-chain-5', { dextrose_equivalent: 5 }, 'glass_transition_c', 188, 1, 'A row of the series.'],
    ['tg-chain-glucose', { dextrose_equivalent: 100 }, 'glass_transition_c', 31, 1, 'A row of the series.'],
    ['tg-chain-starch', { dextrose_equivalent: 0 }, 'glass_transition_c', 250, 15, 'Not used: long chains against starch.'],
  ]),
  ...rows({ model: 'glass_transition.mixture', kind: 'measured', source: 'kawai-2019', standing: 'found' }, [
    [
      'tg-hard-candy',
      { sucrose: 0.53, glucose_syrup_solids: 0.44, water: 0.03 },
      'glass_transition_c',
      [28, 49],
      3,
      'Band of commercial candies; usual recipe with 3 % water.',
    ],
  ]),
  ...rows({ model: 'glass_transition.mixture', kind: 'measured', source: 'kantor-1999', standing: 'found' }, [
    ['tg-honey-17', honey(0.17), 'glass_transition_c', [-51, -42], 2, 'Band of unadulterated honeys; 17 % water and usual sugars assumed.'],
  ]),
  ...rows({ model: 'glass_transition.mixture', kind: 'measured', source: 'lazaridou-2004', standing: 'found' }, [
    ['tg-honey-13', honey(0.13), 'glass_transition_c', -34, 6, 'Driest and highest of 33 honeys.'],
    ['tg-honey-18.9', honey(0.189), 'glass_transition_c', -47, 6, 'Wettest and lowest of 33 honeys.'],
  ]),
  ...rows({ model: 'glass_transition.solid', kind: 'measured', source: 'roe-labuza-2005', standing: 'found' }, [
    ['tg-sucrose-freeze-dried', solid('sucrose'), 'glass_transition_c', 60, 4],
  ]),
  ...rows({ model: 'glass_transition.solid', kind: 'measured', source: 'roe-labuza-2005', standing: 'found' }, [
    ['tg-trehalose', solid('trehalose'), 'glass_transition_c', 106, 8],
  ]),
  ...rows({ model: 'glass_transition.solid', kind: 'measured', source: 'glass-data-base', standing: 'found' }, [
    ['tg-sorbitol-measured', solid('sorbitol'), 'glass_transition_c', -0.15, 6],
    ['tg-erythritol-measured', solid('erythritol'), 'glass_transition_c', -59.7, 8],
  ]),
  ...rows({ model: 'glass_transition.solid', kind: 'code', source: 'glass-data-base', standing: 'found' }, [
    ['tg-isomalt-in-use', solid('isomalt'), 'glass_transition_c', 63.6, 0.1],
  ]),
  ...rows({ model: 'glass_transition.solid', kind: 'measured', source: 'roos-1993', standing: 'memory' }, [
    ['tg-prime-sucrose', solid('sucrose', 0.183), 'glass_transition_c', -46, 5, 'Maximally freeze-concentrated solution.'],
    ['tg-prime-glucose', solid('glucose', 0.2), 'glass_transition_c', -57, 5, 'As above.'],
    ['tg-prime-maltose', solid('maltose', 0.175), 'glass_transition_c', -42, 5, 'As above.'],
    ['tg-prime-lactose', solid('lactose', 0.187), 'glass_transition_c', -41, 5, 'As above.'],
    ['tg-prime-fructose', solid('fructose', 0.205), 'glass_transition_c', -57, 8, 'As above.'],
    ['tg-prime-maltitol', solid('maltitol', 0.183), 'glass_transition_c', -47, 8, 'As above.'],
    ['tg-prime-trehalose', solid('trehalose', 0.167), 'glass_transition_c', -40, 8, 'As above.'],
  ]),
  ...rows({ model: 'glass_transition.mixture', kind: 'measured', source: 'glass-data-base', standing: 'found' }, [
    ['tg-glucose-fructose-blend', { glucose: 0.5, fructose: 0.5 }, 'glass_transition_c', 20, 5, 'Dry blend of equal parts.'],
  ]),
  ...rows({ model: 'glass_transition.mixture', kind: 'measured', source: 'tomaszewska-gras-2015', standing: 'found' }, [
    [
      'tg-honeys-polish',
      honey(0.17),
      'glass_transition_c',
      [-49.7, -34.8],
      6,
      'Range of liquid honeys; 17 % water and usual sugars assumed.',
    ],
  ]),
  ...rows({ model: 'glass_transition.fox', kind: 'measured', source: 'sritham-2016', standing: 'found' }, [
    [
      'fox-sucrose-maltodextrin-30',
      { first_glass_transition_c: 62, second_glass_transition_c: 141, second_share: 0.3 },
      'glass_transition_c',
      77,
      8,
      'Maltodextrin of DE 20 assumed.',
    ],
  ]),
  ...rows({ model: 'glass_transition.couchman_karasz', kind: 'code', source: 'gordon-taylor-table-2016', standing: 'found' }, [
    [
      'couchman-karasz-sucrose-0.05',
      { first_glass_transition_c: 62, first_step_j_g_k: 0.6, second_share: 0.05 },
      'glass_transition_c',
      18.3,
      8,
      'Against the Gordon-Taylor table; step of sucrose 0.6 J/(g K) from memory.',
    ],
  ]),
  ...rows({ model: 'glass_transition.mixture', kind: 'measured', source: 'sritham-2016', standing: 'found' }, [
    [
      'tg-sucrose-maltodextrin-30',
      { sucrose: 0.7, glucose_syrup_solids: 0.3, dextrose_equivalent: 20 },
      'glass_transition_c',
      77,
      8,
      'Dextrose equivalent not stated; 20 assumed, and the glass held citrate too.',
    ],
    [
      'tg-sucrose-maltodextrin-70',
      { sucrose: 0.3, glucose_syrup_solids: 0.7, dextrose_equivalent: 20 },
      'glass_transition_c',
      101,
      13,
      'As above; tolerance widened by the spread of maltodextrins of DE 15 to 25.',
    ],
  ]),
  ...rows({ model: 'glass_transition.critical_water', kind: 'measured', source: 'roos-2002', standing: 'found' }, [
    ['lactose-critical-water', { lactose: 1, temperature_c: 24 }, 'moisture_dry_basis', 0.068, 0.006],
    [
      'lactose-critical-activity',
      { lactose: 1, temperature_c: 24, gab_monolayer: 0.0491, gab_c: 4.33, gab_k: 1.18 },
      'water_activity',
      0.37,
      0.03,
      'GAB constants of amorphous lactose from memory.',
    ],
  ]),
];
