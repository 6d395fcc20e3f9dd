import type { Check } from '../../check.js';
import { rows } from './row.js';

const sucrose = (solids: number, t: number) => ({ water: 1 - solids, sucrose: solids, temperature_c: t });
/** Usual sugars of honey (memory): fructose 38, glucose 31, maltose and its like 10, sucrose 3.7 in 83. */
const honey = (water: number, t: number) => ({
  water,
  fructose: 0.46 * (1 - water),
  glucose: 0.375 * (1 - water),
  maltose: 0.12 * (1 - water),
  sucrose: 0.045 * (1 - water),
  temperature_c: t,
});

const syrup = (dextrose_equivalent: number, solids: number, t: number) => ({
  water: 1 - solids,
  glucose_syrup_solids: solids,
  dextrose_equivalent,
  temperature_c: t,
});

export const flowChecks: readonly Check[] = [
  ...rows({ model: 'viscosity.wlf', kind: 'code', source: 'berk-table-1-4', standing: 'found' }, [
    ['wlf-10', { temperature_c: 10, reference_temperature_c: 0 }, 'log10_shift', -2.831, 0.002],
    ['wlf-20', { temperature_c: 20, reference_temperature_c: 0 }, 'log10_shift', -4.872, 0.002],
    ['wlf-50', { temperature_c: 50, reference_temperature_c: 0 }, 'log10_shift', -8.583, 0.002],
  ]),
  ...rows({ model: 'viscosity.concentrated_syrup', kind: 'measured', source: 'crc-102-solutions', standing: 'found' }, [
    ['sucrose-viscosity-60-20', sucrose(0.6, 20), 'viscosity_pa_s', 0.0565, 0.012, 'Used in the fit.'],
    ['sucrose-viscosity-60-80', sucrose(0.6, 80), 'viscosity_pa_s', 0.0054, 0.0012, 'Used in the fit.'],
    ['sucrose-viscosity-70-20', sucrose(0.7, 20), 'viscosity_pa_s', 0.483, 0.1, 'Used in the fit.'],
    ['sucrose-viscosity-74-20', sucrose(0.74, 20), 'viscosity_pa_s', 1.636, 0.4, 'Used in the fit.'],
    [
      'maltose-viscosity-58-20',
      { water: 0.42, maltose: 0.58, temperature_c: 20 },
      'viscosity_pa_s',
      0.049298,
      0.012,
      'Not used in the fit.',
    ],
    ['glucose-viscosity-50-20', { water: 0.5, glucose: 0.5, temperature_c: 20 }, 'viscosity_pa_s', 0.011884, 0.005, 'Not used in the fit.'],
    [
      'fructose-viscosity-40-20',
      { water: 0.6, fructose: 0.4, temperature_c: 20 },
      'viscosity_pa_s',
      0.005046,
      0.0015,
      'Not used; outside the fitted water.',
    ],
  ]),
  ...rows({ model: 'viscosity.concentrated_syrup', kind: 'measured', source: 'telis-2007', standing: 'found' }, [
    [
      'glucose-viscosity-50-45',
      { water: 0.5, glucose: 0.5, temperature_c: 45 },
      'viscosity_pa_s',
      0.00365,
      0.0015,
      'Not used in the fit. The same series prints 10 % as thin as 0.67 mPa s, a tenth below any other work.',
    ],
  ]),
  ...rows({ model: 'viscosity.concentrated_syrup', kind: 'measured', source: 'honey-viscosity-table', standing: 'found' }, [
    ['honey-16-14', honey(0.16, 14), 'viscosity_pa_s', 60, 25, 'Used in the fit; honeys differ by a third.'],
    ['honey-16-20', honey(0.16, 20), 'viscosity_pa_s', 19, 9, 'Used in the fit; honeys differ by a third.'],
    ['honey-16-40', honey(0.16, 40), 'viscosity_pa_s', 2, 0.9, 'Used in the fit; honeys differ by a third.'],
    ['honey-16-70', honey(0.16, 70), 'viscosity_pa_s', 0.3, 0.14, 'Used in the fit; honeys differ by a third.'],
  ]),
  ...rows({ model: 'viscosity.concentrated_syrup', kind: 'measured', source: 'honey-viscosity-moisture', standing: 'found' }, [
    ['honey-14-25', honey(0.14, 25), 'viscosity_pa_s', 40, 18, 'Not used in the fit. Printed in round figures.'],
    ['honey-20-25', honey(0.2, 25), 'viscosity_pa_s', 2, 1, 'Not used in the fit. Printed in round figures.'],
  ]),
  ...rows({ model: 'viscosity.concentrated_syrup', kind: 'measured', source: 'corn-syrup-77-density', standing: 'found' }, [
    [
      'corn-syrup-viscosity-25',
      { water: 0.23, glucose_syrup_solids: 0.77, temperature_c: 25 },
      'viscosity_pa_s',
      6.06,
      3,
      'Not used. Dextrose equivalent not printed; 42 assumed.',
    ],
    [
      'corn-syrup-viscosity-45',
      { water: 0.23, glucose_syrup_solids: 0.77, temperature_c: 45 },
      'viscosity_pa_s',
      1.443,
      0.75,
      'Not used. Dextrose equivalent not printed; 42 assumed. Falls less with temperature than any other syrup.',
    ],
  ]),
  ...rows({ model: 'viscosity.concentrated_syrup', kind: 'published', source: 'corn-syrup-viscosities', standing: 'memory' }, [
    ['syrup-28-de', syrup(28, 0.78, 37.8), 'viscosity_pa_s', 31.5, 13, 'Used for the one constant of the chains.'],
    ['syrup-36-de', syrup(36, 0.799, 37.8), 'viscosity_pa_s', 30, 12, 'Used for the one constant of the chains.'],
    ['syrup-42-de-27', syrup(42, 0.803, 26.7), 'viscosity_pa_s', 56, 22, 'Slope with temperature is independent.'],
    ['syrup-42-de-38', syrup(42, 0.803, 37.8), 'viscosity_pa_s', 14.5, 6, 'Used for the one constant of the chains.'],
    ['syrup-42-de-60', syrup(42, 0.803, 60), 'viscosity_pa_s', 2, 0.8, 'Slope with temperature is independent.'],
    ['syrup-54-de', syrup(54, 0.81, 37.8), 'viscosity_pa_s', 8, 3.2, 'Used for the one constant of the chains.'],
    ['syrup-63-de', syrup(63, 0.817, 37.8), 'viscosity_pa_s', 5.5, 2.2, 'Used for the one constant of the chains.'],
  ]),
  ...rows({ model: 'viscosity.concentrated_syrup', kind: 'measured', source: 'honey-viscosity-table', standing: 'found' }, [
    ['honey-13.7-25', honey(0.137, 25), 'viscosity_pa_s', 42, 16, 'Not used.'],
  ]),
  ...rows(
    { model: 'viscosity.concentrated_syrup', kind: 'measured', source: 'honey-white', standing: 'memory' },
    (
      [
        [0.142, 26.9],
        [0.155, 13.8],
        [0.171, 6.9],
        [0.182, 4.81],
        [0.191, 3.49],
        [0.202, 2.04],
        [0.215, 1.36],
      ] as const
    ).map(([water, pascalSeconds]) => [
      `honey-white-${(100 * water).toFixed(1)}`,
      honey(water, 25),
      'viscosity_pa_s',
      pascalSeconds,
      0.4 * pascalSeconds,
      'Not used; honeys differ by a third.',
    ]),
  ),
  ...rows({ model: 'viscosity.concentrated_syrup', kind: 'published', source: 'fructose-syrup-viscosities', standing: 'memory' }, [
    [
      'fructose-syrup-42',
      { water: 0.29, fructose: 0.298, glucose: 0.376, maltose: 0.036, temperature_c: 26.7 },
      'viscosity_pa_s',
      0.16,
      0.056,
      'Not used.',
    ],
    [
      'fructose-syrup-55',
      { water: 0.23, fructose: 0.424, glucose: 0.316, maltose: 0.03, temperature_c: 26.7 },
      'viscosity_pa_s',
      0.76,
      0.27,
      'Not used.',
    ],
    ['dextrose-syrup-95', syrup(95, 0.71, 26.7), 'viscosity_pa_s', 0.25, 0.1, 'Not used.'],
  ]),
  ...rows({ model: 'viscosity.concentrated_syrup', kind: 'measured', source: 'crc-102-solutions', standing: 'memory' }, [
    ['glucose-60-20', { water: 0.4, glucose: 0.6, temperature_c: 20 }, 'viscosity_pa_s', 0.0337, 0.0067, 'Not used.'],
  ]),
  ...rows({ model: 'viscosity.vft', kind: 'code', source: 'wlf-1955', standing: 'found' }, [
    [
      'vft-is-wlf',
      { temperature_c: 50, a_pa_s: 1e12 * 10 ** -17.44, b_k: 17.44 * 51.6 * Math.LN10, t0_c: -51.6 },
      'viscosity_pa_s',
      10 ** (12 - 8.583),
      20,
      'The same curve in other letters, 50 K above the glass.',
    ],
  ]),
  ...rows({ model: 'viscosity.arrhenius', kind: 'code', source: 'rovedo-1991', standing: 'found' }, [
    [
      'dulce-de-leche-25-55',
      { temperature_c: 55, reference_temperature_c: 25, reference_viscosity_pa_s: 1, activation_energy_kj_mol: 9.9 * 4.184 },
      'viscosity_pa_s',
      1 / 4.61,
      0.01,
      'Printed 9.9 kcal/mol.',
    ],
  ]),
  ...rows({ model: 'suspension.viscosity_factor', kind: 'published', source: 'batchelor-1977', standing: 'memory' }, [
    ['suspension-dilute', { volume_fraction: 0.01 }, 'factor', 1.0256, 5e-4],
    ['suspension-tenth', { volume_fraction: 0.1 }, 'factor', 1.312, 0.03],
  ]),
  ...rows({ model: 'caramel.stretch', kind: 'published', source: 'trouton-1906', standing: 'memory' }, [
    ['trouton-newtonian', { viscosity_pa_s: 40 }, 'extensional_viscosity_pa_s', 120, 1e-9],
  ]),
  ...rows({ model: 'caramel.stretch', kind: 'code', source: 'mckinley-tripathi-2000', standing: 'memory' }, [
    [
      'strand-pinch-off',
      { viscosity_pa_s: 1, strand_radius_m: 0.001, surface_tension_n_m: 0.05 },
      'break_time_s',
      0.001 / (0.0709 * 0.05),
      1e-6,
    ],
  ]),
  ...rows({ model: 'caramel.viscosity', kind: 'measured', source: 'crc-102-solutions', standing: 'found' }, [
    [
      'caramel-without-fat-is-syrup',
      { water: 0.3, sucrose: 0.7, temperature_c: 20 },
      'viscosity_pa_s',
      0.483,
      0.1,
      'Nothing dispersed: sucrose of 70 %.',
    ],
  ]),
  ...rows({ model: 'caramel.slump', kind: 'code', source: 'barra-2004', standing: 'memory' }, [
    [
      'column-strain-rate-1e4',
      { height_m: 0.015, width_m: 0.1, viscosity_pa_s: 1e4, density_kg_m3: 1300, time_h: 0 },
      'strain_rate_per_s',
      0.0064,
      1e-4,
      'ρ g H/3η, printed 0.64 % per second.',
    ],
    [
      'column-strain-rate-1e7',
      { height_m: 0.015, width_m: 0.1, viscosity_pa_s: 1e7, density_kg_m3: 1300, time_h: 0 },
      'strain_rate_per_s',
      3.8e-4 / 60,
      1e-7,
      'Printed 0.038 % per minute.',
    ],
  ]),
  ...rows({ model: 'caramel.slump', kind: 'published', source: 'huppert-1982', standing: 'memory' }, [
    [
      'gravity-current-116-days',
      { height_m: 0.01, width_m: 0.04, viscosity_pa_s: 1e6, density_kg_m3: 1300, time_h: 1e7 / 3600 },
      'width_m',
      2 * 0.071749,
      0.0015,
      'Foot of the similarity solution 1.411 (ρ g A³ t/3η)^(1/5), once the start is forgotten.',
    ],
    [
      'gravity-current-3-years',
      { height_m: 0.01, width_m: 0.04, viscosity_pa_s: 1e6, density_kg_m3: 1300, time_h: 1e8 / 3600 },
      'width_m',
      2 * 0.113714,
      0.002,
      'As above.',
    ],
    [
      'gravity-current-centre',
      { height_m: 0.01, width_m: 0.04, viscosity_pa_s: 1e6, density_kg_m3: 1300, time_h: 1e8 / 3600 },
      'centre_height_m',
      (2e-4 / 0.113714 / 0.8413) * 1,
      3e-5,
      'Similarity shape (1 - ξ²)^(1/3), whose mean over the half is 0.8413 of the middle.',
    ],
  ]),
  ...rows({ model: 'caramel.slump', kind: 'published', source: 'liu-mei-1989', standing: 'memory' }, [
    [
      'bingham-at-rest',
      { height_m: 0.01, width_m: 0.04, viscosity_pa_s: 1e3, yield_stress_pa: 5, density_kg_m3: 1300, time_h: 1e8 / 3600 },
      'width_m',
      2 * 0.048592,
      0.0005,
      'Resting shape h² = 2τ(x_N - x)/ρg.',
    ],
  ]),
];
