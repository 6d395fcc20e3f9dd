import type { Check } from '../../check.js';
import { rows } from './row.js';

const caramel = { water: 0.1, carbohydrate: 0.72, fat: 0.13, protein: 0.04, ash: 0.01 };
const syrup42 = { glucose: 0.19, maltose: 0.14, higher_saccharides: 0.67 };
const syrup = (solids: number, t: number) => ({
  water: 1 - solids,
  glucose: syrup42.glucose * solids,
  maltose: syrup42.maltose * solids,
  higher_saccharides: syrup42.higher_saccharides * solids,
  temperature_c: t,
});
/** A dark chocolate as trade tables describe it: half sugar, a third fat, the rest cocoa (common practice, no source). */
const chocolate = {
  water: 0.01,
  sucrose: 0.48,
  fat: 0.33,
  protein: 0.06,
  fibre: 0.06,
  starch: 0.04,
  ash: 0.02,
  crystalline_sucrose_share: 1,
  fat_continuous: true,
};
const cocoaMass = { water: 0.02, fat: 0.54, protein: 0.12, fibre: 0.16, starch: 0.12, ash: 0.04, fat_continuous: true };

const invert = { water: 0.555, glucose: 0.2225, fructose: 0.2225 };
/** Usual sugars of honey (memory). */
const honey = (water: number) => ({
  water,
  fructose: 0.46 * (1 - water),
  glucose: 0.375 * (1 - water),
  maltose: 0.12 * (1 - water),
  sucrose: 0.045 * (1 - water),
});

export const thermalChecks: readonly Check[] = [
  ...rows({ model: 'food.specific_heat', kind: 'code', source: 'choi-okos-1986', standing: 'secondhand' }, [
    ['choi-okos-cp-protein-20', { protein: 1, temperature_c: 20 }, 'specific_heat_j_kg_k', 2031.9, 0.5],
    ['choi-okos-cp-fat-60', { fat: 1, temperature_c: 60 }, 'specific_heat_j_kg_k', 2055.3, 0.5],
    ['choi-okos-cp-carbohydrate-60', { carbohydrate: 1, temperature_c: 60 }, 'specific_heat_j_kg_k', 1645.2, 0.5],
    ['choi-okos-cp-fibre-20', { fibre: 1, temperature_c: 20 }, 'specific_heat_j_kg_k', 1880.7, 0.5],
    ['choi-okos-cp-ash-60', { ash: 1, temperature_c: 60 }, 'specific_heat_j_kg_k', 1192.7, 0.5],
    ['choi-okos-cp-water-20', { water: 1, temperature_c: 20 }, 'specific_heat_j_kg_k', 4176.6, 0.5],
    ['choi-okos-cp-caramel-20', { ...caramel, temperature_c: 20 }, 'specific_heat_j_kg_k', 1913.4, 1],
    ['choi-okos-cp-caramel-100', { ...caramel, temperature_c: 100 }, 'specific_heat_j_kg_k', 2003.8, 1],
  ]),
  ...rows({ model: 'food.specific_heat', kind: 'measured', source: 'geankoplis-5', standing: 'found' }, [
    ['olive-oil-cp', { fat: 1, temperature_c: 20 }, 'specific_heat_j_kg_k', 2010, 150],
  ]),
  ...rows({ model: 'food.density', kind: 'code', source: 'choi-okos-1986', standing: 'secondhand' }, [
    ['choi-okos-rho-carbohydrate-20', { carbohydrate: 1, temperature_c: 20 }, 'density_kg_m3', 1592.89, 0.05],
    ['choi-okos-rho-fat-20', { fat: 1, temperature_c: 20 }, 'density_kg_m3', 917.24, 0.05],
    ['choi-okos-rho-water-20', { water: 1, temperature_c: 20 }, 'density_kg_m3', 995.74, 0.05],
    ['choi-okos-rho-protein-20', { protein: 1, temperature_c: 20 }, 'density_kg_m3', 1319.53, 0.05],
    ['choi-okos-rho-caramel-20', { ...caramel, temperature_c: 20 }, 'density_kg_m3', 1372.5, 0.3],
    ['choi-okos-rho-caramel-100', { ...caramel, temperature_c: 100 }, 'density_kg_m3', 1340.7, 0.3],
  ]),
  ...rows({ model: 'food.thermal_conductivity', kind: 'code', source: 'choi-okos-1986', standing: 'secondhand' }, [
    ['choi-okos-k-carbohydrate-20', { carbohydrate: 1, temperature_c: 20 }, 'thermal_conductivity_w_m_k', 0.2274, 3e-4],
    ['choi-okos-k-fat-20', { fat: 1, temperature_c: 20 }, 'thermal_conductivity_w_m_k', 0.1751, 3e-4],
    ['choi-okos-k-water-20', { water: 1, temperature_c: 20 }, 'thermal_conductivity_w_m_k', 0.6037, 3e-4],
    ['choi-okos-k-protein-20', { protein: 1, temperature_c: 20 }, 'thermal_conductivity_w_m_k', 0.2016, 3e-4],
    ['choi-okos-k-caramel-60', { ...caramel, temperature_c: 60 }, 'thermal_conductivity_w_m_k', 0.3009, 5e-4],
  ]),
  ...rows({ model: 'food.thermal_conductivity', kind: 'measured', source: 'beckett-appendix', standing: 'found' }, [
    [
      'cocoa-mass-k-60-food',
      { water: 0.02, fat: 0.54, protein: 0.12, fibre: 0.16, carbohydrate: 0.12, ash: 0.04, temperature_c: 60 },
      'thermal_conductivity_w_m_k',
      0.21,
      0.03,
      'The composition of the cocoa mass is the usual one, from memory.',
    ],
  ]),
  ...rows({ model: 'food.thermal_diffusivity', kind: 'code', source: 'choi-okos-1986', standing: 'secondhand' }, [
    ['choi-okos-diffusivity-caramel-20', { ...caramel, temperature_c: 20 }, 'thermal_diffusivity_m2_s', 0.2688 / (1372.5 * 1913.4), 3e-10],
    [
      'choi-okos-diffusivity-caramel-100',
      { ...caramel, temperature_c: 100 },
      'thermal_diffusivity_m2_s',
      0.3214 / (1340.7 * 2003.8),
      3e-10,
    ],
  ]),
  ...rows({ model: 'confectionery.density', kind: 'measured', source: 'crc-102-solutions', standing: 'found' }, [
    ['sucrose-rho-10', { water: 0.9, sucrose: 0.1 }, 'density_kg_m3', 1038.1, 0.3],
    ['sucrose-rho-40', { water: 0.6, sucrose: 0.4 }, 'density_kg_m3', 1176.5, 0.3],
    ['sucrose-rho-64', { water: 0.36, sucrose: 0.64 }, 'density_kg_m3', 1310.3, 0.5],
    ['sucrose-rho-70', { water: 0.3, sucrose: 0.7 }, 'density_kg_m3', 1347.2, 0.5],
    ['sucrose-rho-84', { water: 0.16, sucrose: 0.84 }, 'density_kg_m3', 1438.3, 1],
    ['glucose-rho-40', { water: 0.6, glucose: 0.4 }, 'density_kg_m3', 1172.4, 1.5, 'The ratio of glucose was taken from this value.'],
    ['fructose-rho-40', { water: 0.6, fructose: 0.4 }, 'density_kg_m3', 1176.9, 1.5, 'The ratio of fructose was taken from this value.'],
    ['maltose-rho-40', { water: 0.6, maltose: 0.4 }, 'density_kg_m3', 1176.9, 1.5, 'The ratio of maltose was taken from this value.'],
    ['lactose-rho-18', { water: 0.82, lactose: 0.18 }, 'density_kg_m3', 1074.6, 1.5, 'The ratio of lactose was taken from this value.'],
  ]),
  ...rows({ model: 'confectionery.density', kind: 'measured', source: 'corn-syrup-77-density', standing: 'found' }, [
    ['corn-syrup-rho-20', syrup(0.77, 20), 'density_kg_m3', 1404.6, 4, 'The ratio of the higher saccharides was taken from this value.'],
    ['corn-syrup-rho-40', syrup(0.77, 40), 'density_kg_m3', 1394.58, 4, 'Slope with temperature is independent.'],
  ]),
  ...rows({ model: 'confectionery.density', kind: 'measured', source: 'junk-pancoast', standing: 'found' }, [
    [
      'syrup-baume-40',
      syrup(0.7439, 37.8),
      'density_kg_m3',
      1.3786 * 999.0,
      4,
      'Independent of the fit. The table is read as specific gravity 100 °F/60 °F (our reading: it fits only there).',
    ],
  ]),
  ...rows({ model: 'confectionery.density', kind: 'measured', source: 'mohos-2010-app', standing: 'found' }, [
    ['sucrose-saturated-20', { water: 0.3291, sucrose: 0.6709, temperature_c: 15 }, 'density_kg_m3', 1332.7, 1.5],
    ['sucrose-saturated-80', { water: 0.2164, sucrose: 0.7836, temperature_c: 15 }, 'density_kg_m3', 1404.9, 1.5],
    ['cube-sugar-density', { sucrose: 1, crystalline_sucrose_share: 1, temperature_c: 15 }, 'density_kg_m3', 1600, 15],
  ]),
  ...rows({ model: 'confectionery.specific_heat', kind: 'measured', source: 'mohos-2010-app', standing: 'found' }, [
    [
      'sucrose-crystal-cp-0',
      { sucrose: 1, crystalline_sucrose_share: 1, temperature_c: 0 },
      'specific_heat_j_kg_k',
      1088.57,
      15,
      'The line passes through it.',
    ],
    [
      'sucrose-crystal-cp-40',
      { sucrose: 1, crystalline_sucrose_share: 1, temperature_c: 40 },
      'specific_heat_j_kg_k',
      1323.03,
      15,
      'The line passes through it.',
    ],
  ]),
  ...rows({ model: 'confectionery.specific_heat', kind: 'code', source: 'sugar-liquor-thermal', standing: 'found' }, [
    [
      'liquor-cp-70-80',
      { water: 0.3, sucrose: 0.7, temperature_c: 80 },
      'specific_heat_j_kg_k',
      2846.3,
      8,
      'Water here on its own line, 4.197 instead of 4.184 kJ/(kg K).',
    ],
  ]),
  ...rows({ model: 'confectionery.specific_heat', kind: 'measured', source: 'beckett-appendix', standing: 'found' }, [
    ['chocolate-cp', { ...chocolate, temperature_c: 27 }, 'specific_heat_j_kg_k', 1590, 90, 'Trade composition assumed.'],
    [
      'cocoa-mass-cp-liquid',
      { ...cocoaMass, temperature_c: 60 },
      'specific_heat_j_kg_k',
      1420,
      90,
      'The print gives 1420 for the liquid and 1970 for the solid mass; fat, protein and water alone need about 1900.',
    ],
  ]),
  ...rows({ model: 'confectionery.specific_heat', kind: 'measured', source: 'cashew-kernel-cp', standing: 'found' }, [
    [
      'nut-kernel-cp',
      { water: 0.07, fat: 0.44, protein: 0.19, starch: 0.22, sucrose: 0.05, ash: 0.03, crystalline_sucrose_share: 1, temperature_c: 25 },
      'specific_heat_j_kg_k',
      [1586, 1756],
      60,
      'Band of kernels of 5 to 9 % moisture; usual composition of the kernel, from memory.',
    ],
  ]),
  ...rows({ model: 'confectionery.thermal_conductivity', kind: 'measured', source: 'mohos-2010-app', standing: 'found' }, [
    [
      'invert-syrup-k-15',
      { ...invert, temperature_c: 15 },
      'thermal_conductivity_w_m_k',
      0.336,
      0.02,
      'Solids by the printed density, 44.5 %.',
    ],
    ['sucrose-crystal-k', { sucrose: 1, crystalline_sucrose_share: 1 }, 'thermal_conductivity_w_m_k', 0.58, 0.01, 'The value in use.'],
  ]),
  ...rows({ model: 'confectionery.specific_heat', kind: 'measured', source: 'mohos-2010-app', standing: 'found' }, [
    ['invert-syrup-cp-15', { ...invert, temperature_c: 15 }, 'specific_heat_j_kg_k', 3207, 120, 'Solids by the printed density, 44.5 %.'],
    [
      'sucrose-crystal-cp-90',
      { sucrose: 1, crystalline_sucrose_share: 1, temperature_c: 90 },
      'specific_heat_j_kg_k',
      1578.42,
      15,
      'Used in the fit.',
    ],
  ]),
  ...rows({ model: 'confectionery.thermal_diffusivity', kind: 'measured', source: 'mohos-2010-app', standing: 'found' }, [
    [
      'invert-syrup-diffusivity-15',
      { ...invert, temperature_c: 15 },
      'thermal_diffusivity_m2_s',
      0.0875e-6,
      0.005e-6,
      'k over rho cp of the same table.',
    ],
  ]),
  ...rows({ model: 'confectionery.density', kind: 'measured', source: 'honey-properties-table', standing: 'found' }, [
    ['honey-density-17', { ...honey(0.17), temperature_c: 20 }, 'density_kg_m3', 1425, 8],
  ]),
  ...rows({ model: 'confectionery.specific_heat', kind: 'measured', source: 'honey-properties-table', standing: 'found' }, [
    [
      'honey-cp-17',
      { ...honey(0.17), temperature_c: 20 },
      'specific_heat_j_kg_k',
      [2260, 2386],
      60,
      'Two sources: 2.26 kJ/(kg K) and 0.57 cal/(g K).',
    ],
  ]),
  ...rows({ model: 'confectionery.thermal_conductivity', kind: 'measured', source: 'honey-properties-table', standing: 'found' }, [
    ['honey-k-17', { ...honey(0.17), temperature_c: 20 }, 'thermal_conductivity_w_m_k', 0.544, 0.05, '130e-5 cal/(cm s K).'],
  ]),
  ...rows({ model: 'confectionery.thermal_conductivity', kind: 'measured', source: 'beckett-appendix', standing: 'found' }, [
    ['chocolate-k', { ...chocolate, temperature_c: 37 }, 'thermal_conductivity_w_m_k', 0.26, 0.03, 'Trade composition assumed.'],
    ['cocoa-mass-k-60', { ...cocoaMass, temperature_c: 60 }, 'thermal_conductivity_w_m_k', 0.21, 0.03, 'Trade composition assumed.'],
  ]),
  ...rows({ model: 'foam.thermal_conductivity', kind: 'published', source: 'maxwell-eucken', standing: 'secondhand' }, [
    [
      'foam-conducts-less',
      { gas_free_conductivity_w_m_k: 0.28, air_fraction: 0.3 },
      'thermal_conductivity_w_m_k',
      [0.168, 0.224],
      0,
      'A whipped layer conducts 20 to 40 % less than the dense mass.',
    ],
    [
      'foam-all-air',
      { gas_free_conductivity_w_m_k: 0.28, air_fraction: 1 },
      'thermal_conductivity_w_m_k',
      0.026,
      1e-6,
      'Limit of still air.',
    ],
  ]),
  ...rows({ model: 'foam.density_cup', kind: 'code', source: 'foam-volume-balance', standing: 'found' }, [
    [
      'cup-reading',
      { gross_mass_g: 196, tare_g: 104, cup_volume_ml: 100, gas_free_density_kg_m3: 1380 },
      'air_fraction',
      1 - 920 / 1380,
      1e-9,
    ],
  ]),
  ...rows({ model: 'foam.weak_albumen', kind: 'code', source: 'foam-volume-balance', standing: 'found' }, [
    [
      'albumen-at-full-power',
      { planned_density_kg_m3: 920, gas_free_density_kg_m3: 1380, foaming_power: 1, layer_mass_g: 14.2, layer_thickness_mm: 6.43 },
      'mass_at_constant_thickness_g',
      14.2,
      1e-9,
    ],
    [
      'albumen-without-power',
      { planned_density_kg_m3: 920, gas_free_density_kg_m3: 1380, foaming_power: 0, layer_mass_g: 14.2, layer_thickness_mm: 6.43 },
      'mass_at_constant_thickness_g',
      (14.2 * 1380) / 920,
      1e-9,
    ],
  ]),
  ...rows({ model: 'foam.overrun', kind: 'published', source: 'foam-volume-balance', standing: 'found' }, [
    ['overrun-worked', { density_kg_m3: 560, gas_free_density_kg_m3: 1090 }, 'overrun_percent', 94.6, 0.2],
  ]),
  ...rows({ model: 'foam.air_fraction', kind: 'code', source: 'foam-volume-balance', standing: 'found' }, [
    ['air-fraction-0.8', { density_kg_m3: 800, gas_free_density_kg_m3: 1380 }, 'air_fraction', 0.4203, 0.001],
    ['air-fraction-0.7', { density_kg_m3: 700, gas_free_density_kg_m3: 1380 }, 'air_fraction', 0.4928, 0.001],
  ]),
];
