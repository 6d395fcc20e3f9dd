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
    ['glucose-viscosity-50-45', { water: 0.5, glucose: 0.5, temperature_c: 45 }, 'viscosity_pa_s', 0.00365, 0.0015, 'Not used in the fit.'],
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
