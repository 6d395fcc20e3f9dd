import type { Check } from '../../check.js';
import { rows } from './row.js';

const bar = {
  thickness_a_m: 0.005,
  diffusivity_a_m2_s: 2e-12,
  capacity_a_kg_m3: 220,
  water_activity_a: 0.55,
  thickness_b_m: 0.005,
  diffusivity_b_m2_s: 4e-12,
  capacity_b_kg_m3: 60,
  water_activity_b: 0.2,
};
const cake = {
  thickness_a_m: 0.01,
  diffusivity_a_m2_s: 5e-10,
  capacity_a_kg_m3: 900,
  water_activity_a: 0.99,
  thickness_b_m: 0.015,
  diffusivity_b_m2_s: 2e-10,
  capacity_b_kg_m3: 180,
  water_activity_b: 0.75,
};
const contact = ({
  capacity_a_kg_m3,
  capacity_b_kg_m3,
  diffusivity_a_m2_s,
  diffusivity_b_m2_s,
  water_activity_a,
  water_activity_b,
}: typeof bar) => ({
  capacity_a_kg_m3,
  capacity_b_kg_m3,
  diffusivity_a_m2_s,
  diffusivity_b_m2_s,
  water_activity_a,
  water_activity_b,
});
const layers = (of: typeof bar, days: number) => ({
  thicknesses_m: [of.thickness_a_m, of.thickness_b_m],
  dry_densities_kg_m3: [1000, 1000],
  water_activities: [of.water_activity_a, of.water_activity_b],
  isotherm: 'linear',
  isotherm_slopes: [of.capacity_a_kg_m3 / 1000, of.capacity_b_kg_m3 / 1000],
  diffusivities_m2_s: [of.diffusivity_a_m2_s, of.diffusivity_b_m2_s],
  times_d: [days],
});
/** Urea out of an agar slab, both faces at 0: activity stands for concentration. */
const agar = { shape: 'slab', biot: 1e9, fourier: 0.65844 };

export const migrationChecks: readonly Check[] = [
  ...rows({ model: 'migration.two_layer', kind: 'code', source: 'two-layer-reference', standing: 'found' }, [
    ['bar-5-days-a', { ...bar, time_d: 5 }, 'mean_water_activity_a', 0.5296, 0.001],
    ['bar-5-days-b', { ...bar, time_d: 5 }, 'mean_water_activity_b', 0.2749, 0.001],
    ['bar-30-days-a', { ...bar, time_d: 30 }, 'mean_water_activity_a', 0.5009, 0.001],
    ['bar-30-days-b', { ...bar, time_d: 30 }, 'mean_water_activity_b', 0.3802, 0.001],
    ['bar-120-days-a', { ...bar, time_d: 120 }, 'mean_water_activity_a', 0.4772, 0.001],
    ['bar-120-days-b', { ...bar, time_d: 120 }, 'mean_water_activity_b', 0.4669, 0.001],
    ['bar-equilibrium', { ...bar, time_d: 1 }, 'equilibrium_water_activity', 0.475, 1e-4],
    ['cake-quarter-day-a', { ...cake, time_d: 0.25 }, 'mean_water_activity_a', 0.98, 0.001],
    ['cake-quarter-day-b', { ...cake, time_d: 0.25 }, 'mean_water_activity_b', 0.7833, 0.001],
    ['cake-1-day-b', { ...cake, time_d: 1 }, 'mean_water_activity_b', 0.8164, 0.001],
    ['cake-5-days-a', { ...cake, time_d: 5 }, 'mean_water_activity_a', 0.9485, 0.001],
    ['cake-5-days-b', { ...cake, time_d: 5 }, 'mean_water_activity_b', 0.8883, 0.001],
    ['cake-equilibrium', { ...cake, time_d: 1 }, 'equilibrium_water_activity', 0.93462, 1e-4],
  ]),
  ...rows({ model: 'migration.layers', kind: 'code', source: 'two-layer-reference', standing: 'found' }, [
    ['layers-equilibrium', layers(bar, 30), 'equilibrium_water_activity', 0.475, 1e-4],
    ['layers-cake-equilibrium', layers(cake, 1), 'equilibrium_water_activity', 0.93462, 1e-4],
  ]),
  ...rows({ model: 'migration.equilibrium', kind: 'code', source: 'two-layer-reference', standing: 'found' }, [
    [
      'equilibrium-of-tables',
      {
        dry_mass_a_kg: 5,
        dry_mass_b_kg: 5,
        water_activity_a: 0.55,
        water_activity_b: 0.2,
        activities_a: [0, 1],
        moistures_a: [0, 0.22],
        activities_b: [0, 1],
        moistures_b: [0, 0.06],
      },
      'water_activity',
      0.475,
      1e-4,
    ],
  ]),
  ...rows({ model: 'migration.contact_water_activity', kind: 'code', source: 'two-layer-reference', standing: 'found' }, [
    ['contact-bar', contact(bar), 'contact_water_activity', 0.4526, 0.002],
    ['contact-cake', contact(cake), 'contact_water_activity', 0.9631, 0.002],
  ]),
  ...rows({ model: 'migration.two_layer', kind: 'code', source: 'two-layer-reference', standing: 'found' }, [
    [
      'solver-contact-bar',
      { ...bar, time_d: 0.5 },
      'contact_water_activity',
      0.4526,
      0.002,
      'The solver against the half-space while the layers are thick.',
    ],
    [
      'solver-contact-cake',
      { ...cake, time_d: 0.01 },
      'contact_water_activity',
      0.9631,
      0.002,
      'The solver against the half-space while the layers are thick.',
    ],
  ]),
  ...rows({ model: 'conduction.dimensionless', kind: 'published', source: 'geankoplis-7', standing: 'found' }, [
    ['agar-middle', { ...agar, position: 0 }, 'ratio', 0.275, 0.03, 'Example 7.1-1, concentration over 0.1; chart reading. Exact 0.2508.'],
    ['agar-quarter', { ...agar, position: 0.5 }, 'ratio', 0.172, 0.025, 'As above; exact 0.1773.'],
    ['agar-middle-exact', { ...agar, position: 0 }, 'ratio', 0.2508, 2e-4],
  ]),
  ...rows({ model: 'migration.plane_sheet', kind: 'code', source: 'crank-1975', standing: 'memory' }, [
    ['plane-uptake-0.05', { thickness_m: 0.002, diffusivity_m2_s: 1e-11, time_s: 5000 }, 'uptake', 0.2523, 5e-4],
    ['peanut-time-scale', { thickness_m: 0.0025, diffusivity_m2_s: 3.8e-12, time_s: 0 }, 'relaxation_time_s', 1.93 * 86_400, 0.02 * 86_400],
    [
      'plane-half-time',
      { thickness_m: 0.002, diffusivity_m2_s: 1e-11, time_s: 19_674 },
      'uptake',
      0.5,
      1e-3,
      'Half-time 0.1967 L²/D of Crank.',
    ],
  ]),
  ...rows({ model: 'package.permeance', kind: 'code', source: 'iso-15106', standing: 'memory' }, [
    ['permeance-0.5', { wvtr_g_m2_d: 0.5 }, 'permeance_kg_m2_s_pa', 9.694893481e-13, 1e-16],
  ]),
  ...rows({ model: 'package.wvtr', kind: 'code', source: 'iso-15106', standing: 'memory' }, [
    [
      'wvtr-23-75-35',
      { wvtr_g_m2_d: 0.5, temperature_c: 23, relative_humidity: 0.75, water_activity: 0.35, activation_energy_kj_mol: 0 },
      'wvtr_g_m2_d',
      0.09416400298,
      1e-4,
    ],
    [
      'driving-force-25-75-50',
      { wvtr_g_m2_d: 1, temperature_c: 25, relative_humidity: 0.75, water_activity: 0.5 },
      'driving_force_pa',
      790,
      5,
    ],
    [
      'driving-force-share',
      { wvtr_g_m2_d: 1, temperature_c: 25, relative_humidity: 0.75, water_activity: 0.5 },
      'driving_force_ratio',
      0.13,
      0.005,
      '13 % of the test.',
    ],
  ]),
  ...rows({ model: 'package.water_gain', kind: 'published', source: 'labuza-packaging', standing: 'found' }, [
    [
      'pack-life-simple',
      {
        permeance_kg_m2_s_pa: 0.00418e-3 / 86_400 / 100,
        film_area_m2: 0.05,
        dry_mass_kg: 0.1,
        isotherm_slope: 0.002 / 0.35 / 0.1,
        start_water_activity: 0.1,
        critical_water_activity: 0.45,
        relative_humidity: 0.75,
        temperature_c: 23.02,
      },
      'life_simple_d',
      716,
      3,
      'Slide 48: 2 g of water, 0.05 m², 0.00418 g/(m² d mbar), vapour pressure 28.14 mbar.',
    ],
  ]),
  ...rows({ model: 'package.film_wvtr', kind: 'published', source: 'film-maker-table', standing: 'found' }, [
    ['film-opp-25', { film: 'opp', thickness_um: 25 }, 'wvtr_g_m2_d', 5.1, 0.76, 'A row of the table.'],
    ['film-ldpe-25', { film: 'ldpe', thickness_um: 25 }, 'wvtr_g_m2_d', 13.9, 2.08, 'A row of the table.'],
  ]),
  ...rows({ model: 'package.film_wvtr', kind: 'measured', source: 'ldpe-packaging-study', standing: 'found' }, [
    ['film-ldpe-60', { film: 'ldpe', thickness_um: 60 }, 'wvtr_g_m2_d', 9.54, 1.14],
  ]),
  ...rows({ model: 'package.permeability_units', kind: 'code', source: 'us-5130150', standing: 'found' }, [
    ['fat-wax-limit', { permeability: 7e-11, printed_unit: 'g cm/(cm2 s cmHg)' }, 'permeability_kg_m_s_pa', 5.25045e-15, 5.3e-17],
  ]),
  ...rows({ model: 'package.permeability_units', kind: 'code', source: 'hagenmaier-shaw-1990', standing: 'found' }, [
    ['hpmc-stearic', { permeability: 0.17, printed_unit: 'g mil/(m2 d mmHg)' }, 'permeability_kg_m_s_pa', 3.75e-16, 8.8e-17],
  ]),
  ...rows({ model: 'package.chocolate_barrier', kind: 'measured', source: 'biquet-labuza-1988', standing: 'found' }, [
    [
      'chocolate-beats-ldpe',
      { thickness_m: 0.0006 },
      'wvtr_38_90_g_m2_d',
      [0, 13.9],
      0,
      '0.6 mm of dark chocolate is a better barrier than 25 µm of LDPE (13.9). A bound only.',
    ],
  ]),
];

const butterSlab = {
  thicknesses_m: [0.0462],
  densities_kg_m3: [998],
  specific_heats_j_kg_k: [2300],
  thermal_conductivities_w_m_k: [0.197],
  start_temperatures_c: [4.45],
  section_times_s: [18_000],
  top_temperatures_c: [23.95],
  top_coefficients_w_m2_k: [8.52],
  bottom_temperatures_c: [0],
  bottom_coefficients_w_m2_k: [0],
};
const steelWall = {
  thicknesses_m: [0.04],
  densities_kg_m3: [7832],
  specific_heats_j_kg_k: [434],
  thermal_conductivities_w_m_k: [63.9],
  start_temperatures_c: [-20],
  section_times_s: [480],
  top_temperatures_c: [60],
  top_coefficients_w_m2_k: [500],
  bottom_temperatures_c: [0],
  bottom_coefficients_w_m2_k: [0],
};
/** Schmidt's slab: α 2e-5 m²/s, 100 °C, one face at 0, the other insulated, 6000 s. */
const schmidt = {
  thicknesses_m: [1],
  densities_kg_m3: [1],
  specific_heats_j_kg_k: [1],
  thermal_conductivities_w_m_k: [2e-5],
  start_temperatures_c: [100],
  section_times_s: [6000],
  top_temperatures_c: [0],
  top_coefficients_w_m2_k: [0],
  bottom_temperatures_c: [0],
  bottom_coefficients_w_m2_k: [1e5],
};

export const slabChecks: readonly Check[] = [
  ...rows({ model: 'slab.cooling', kind: 'published', source: 'geankoplis-5', standing: 'found' }, [
    ['slab-butter-top', butterSlab, 'top_temperature_c', 19.05, 0.5, 'Chart reading.'],
    ['slab-butter-top-exact', butterSlab, 'top_temperature_c', 23.95 - 19.5 * 0.2416, 0.02, 'Exact series.'],
    ['slab-butter-bottom-exact', butterSlab, 'bottom_temperature_c', 23.95 - 19.5 * 0.5093, 0.02, 'Exact series.'],
    ['slab-schmidt-insulated', schmidt, 'hottest_c', 93.75, 4, 'Hand calculation with five slices; the exact answer is 91.8.'],
  ]),
  ...rows({ model: 'slab.cooling', kind: 'published', source: 'incropera-5', standing: 'found' }, [
    ['slab-pipeline-wall', steelWall, 'bottom_temperature_c', 42.92, 0.3],
  ]),
  ...rows({ model: 'slab.cooling', kind: 'code', source: 'carslaw-jaeger-1959', standing: 'memory' }, [
    [
      'two-layers-contact-temperature',
      {
        thicknesses_m: [0.05, 0.05],
        densities_kg_m3: [900, 1330],
        specific_heats_j_kg_k: [2000, 2100],
        thermal_conductivities_w_m_k: [0.18, 0.28],
        start_temperatures_c: [30, 70],
        section_times_s: [60],
        top_temperatures_c: [0],
        top_coefficients_w_m2_k: [0],
        bottom_temperatures_c: [0],
        bottom_coefficients_w_m2_k: [0],
        cells: 400,
      },
      'mean_temperature_c',
      (900 * 2000 * 30 + 1330 * 2100 * 70) / (900 * 2000 + 1330 * 2100),
      1e-6,
      'Insulated: the mean does not move.',
    ],
  ]),
];
