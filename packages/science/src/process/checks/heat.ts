import type { Check } from '../../check.js';
import { rows } from './row.js';

/** A milk caramel of equal parts sucrose and 1.25 parts of syrup solids, 12 % fat, 3 % protein on the finished mass: shares of dry matter. */
const caramel = { sucrose: 0.355, glucose_syrup_solids: 0.444, fat: 0.133, protein: 0.033, lactose: 0.028, ash: 0.007, water: 0.25 };

/** Example of an evaporator: 1 % to 1.5 % solids at 1 atm, feed at 37.8 °C. */
const thinSolution = { water: 0.99, sucrose: 0.01, feed_temperature_c: 37.8, pressure_pa: 101_325 };

export const heatChecks: readonly Check[] = [
  ...rows({ model: 'heat_exchanger.log_mean_difference', kind: 'published', source: 'heat-transfer-tests', standing: 'found' }, [
    [
      'lmtd-parallel',
      { arrangement: 'parallel', hot_in_c: 100, hot_out_c: 60, cold_in_c: 30, cold_out_c: 40.2 },
      'log_mean_difference_k',
      39.75251118,
      1e-7,
    ],
    ['lmtd-equal', { hot_in_c: 100, hot_out_c: 60, cold_in_c: 20, cold_out_c: 60 }, 'log_mean_difference_k', 40, 1e-7],
  ]),
  ...rows({ model: 'heat_exchanger.log_mean_difference', kind: 'published', source: 'cengel-11', standing: 'found' }, [
    ['lmtd-water-heater', { hot_in_c: 160, hot_out_c: 125.081206497, cold_in_c: 20, cold_out_c: 80 }, 'log_mean_difference_k', 91.97, 0.02],
    [
      'condenser-heat',
      { hot_in_c: 30, hot_out_c: 30, cold_in_c: 14, cold_out_c: 22, conductance_w_k: 2100 * 45 },
      'heat_w',
      1_090_677.451,
      0.1,
      'Example of a steam condenser; temperatures recalled, heat found.',
    ],
  ]),
  ...rows({ model: 'heat_exchanger.effectiveness', kind: 'published', source: 'heat-transfer-tests', standing: 'found' }, [
    ['effectiveness-parallel', { arrangement: 'parallel', transfer_units: 5, capacity_ratio: 0.7 }, 'effectiveness', 0.5881156068, 1e-9],
    ['effectiveness-counter', { transfer_units: 4, capacity_ratio: 0.1 }, 'effectiveness', 0.975341273, 1e-9],
  ]),
  ...rows({ model: 'heat_exchanger.effectiveness', kind: 'code', source: 'cengel-11', standing: 'memory' }, [
    ['effectiveness-counter-5', { transfer_units: 5, capacity_ratio: 0.7 }, 'effectiveness', 0.9206703686, 1e-9],
  ]),
  ...rows({ model: 'convection.flat_plate', kind: 'code', source: 'incropera-7', standing: 'memory' }, [
    ['plate-5e4', { reynolds: 5e4, prandtl: 0.7 }, 'nusselt', 131.83147, 1e-4],
    ['plate-2e5', { reynolds: 2e5, prandtl: 0.71 }, 'nusselt', 264.9125461, 1e-4],
    ['plate-3e6', { reynolds: 3e6, prandtl: 0.71 }, 'nusselt', 4238.515858, 1e-3],
  ]),
  ...rows({ model: 'convection.cylinder_in_cross_flow', kind: 'published', source: 'heat-transfer-tests', standing: 'found' }, [
    ['cylinder-6071', { reynolds: 6071, prandtl: 0.7 }, 'nusselt', 40.63708594, 1e-6],
  ]),
  ...rows({ model: 'convection.free_horizontal_cylinder', kind: 'published', source: 'heat-transfer-tests', standing: 'found' }, [
    ['free-cylinder-2.63e9', { rayleigh: 2.63e9 * 0.69, prandtl: 0.69 }, 'nusselt', 139.1349397, 1e-5],
  ]),
  ...rows({ model: 'convection.free_horizontal_cylinder', kind: 'published', source: 'cengel-9', standing: 'found' }, [
    ['free-cylinder-pipe', { rayleigh: 1_867_257.8883, prandtl: 0.7241 }, 'nusselt', 17.394, 0.01],
  ]),
  ...rows({ model: 'steam.requirement', kind: 'code', source: 'iapws-if97', standing: 'found' }, [
    [
      'steam-500-kg',
      { mass_kg: 500, specific_heat_j_kg_k: 2400, temperature_rise_k: 95, steam_pressure_pa: 700_000 },
      'steam_kg',
      55.18962248,
      0.02,
    ],
  ]),
  ...rows({ model: 'cooker.end_moisture', kind: 'measured', source: 'miller-hartel-2015', standing: 'found' }, [
    [
      'caramel-cook-113',
      { ...caramel, temperature_c: 113.3 },
      'moisture',
      0.12,
      0.018,
      'Cook of 12 % moisture at 113.3 °C; recipe recalled, split of fat and protein assumed; 0.018 is 3.5 K of the source’s spread.',
    ],
    ['caramel-cook-117', { ...caramel, temperature_c: 116.7 }, 'moisture', 0.1, 0.016, 'As above, 10 % at 116.7 °C.'],
    ['caramel-cook-121', { ...caramel, temperature_c: 121.1 }, 'moisture', 0.08, 0.014, 'As above, 8 % at 121.1 °C.'],
    ['caramel-probe', { ...caramel, temperature_c: 118 }, 'moisture_per_k', -0.006, 0.0015, 'A kelvin at 118 °C is about 0.6 % moisture.'],
  ]),
  ...rows({ model: 'cooker.evaporation', kind: 'code', source: 'heat-balance', standing: 'memory' }, [
    ['evaporated-by-balance', { ...caramel, feed_mass_kg: 500, end_moisture: 0.1 }, 'evaporated_kg', 500 - 500 / 1.25 / 0.9, 1e-6],
  ]),
  ...rows({ model: 'cooker.evaporation', kind: 'published', source: 'geankoplis-8', standing: 'memory' }, [
    [
      'evaporator-heat',
      { ...thinSolution, feed_mass_kg: 9072, end_moisture: 0.985 },
      'heat_mj',
      9158,
      95,
      'Example 8.4-1: 4108 kg of steam of 2230 kJ/kg.',
    ],
    ['evaporator-vapour', { ...thinSolution, feed_mass_kg: 9072, end_moisture: 0.985 }, 'evaporated_kg', 3024, 1],
  ]),
  ...rows({ model: 'cooker.conductance', kind: 'published', source: 'geankoplis-8', standing: 'memory' }, [
    [
      'evaporator-steam',
      { ...thinSolution, feed_kg_h: 9072, end_moisture: 0.985, steam_pressure_pa: 143_270 },
      'steam_kg_h',
      4108,
      45,
      'Example 8.4-1.',
    ],
  ]),
  ...rows({ model: 'cooker.batch', kind: 'published', source: 'geankoplis-8', standing: 'memory' }, [
    [
      'evaporator-as-batch',
      { ...thinSolution, feed_mass_kg: 9072, end_moisture: 0.985, steam_pressure_pa: 143_270, conductance_w_k: 254_000 },
      'steam_kg',
      4108,
      45,
      'The same hour of feed as one batch.',
    ],
  ]),
  ...rows({ model: 'cooker.batch', kind: 'measured', source: 'miller-hartel-2015', standing: 'found' }, [
    [
      'caramel-batch-117',
      { ...caramel, feed_mass_kg: 500, end_temperature_c: 116.7, conductance_w_k: 3000 },
      'end_moisture',
      0.1,
      0.016,
      'Cook of 10 % moisture at 116.7 °C; recipe recalled.',
    ],
  ]),
  ...rows({ model: 'convection.free_vertical_plate', kind: 'published', source: 'incropera-9', standing: 'memory' }, [
    ['fireplace-screen', { rayleigh: 1.813e9, prandtl: 0.69 }, 'nusselt', 147, 1],
  ]),
  ...rows({ model: 'convection.flat_plate', kind: 'published', source: 'incropera-7', standing: 'memory' }, [
    ['heated-plate', { reynolds: 9597, prandtl: 0.687 }, 'nusselt', 57.4, 0.2, 'Example 7.1.'],
  ]),
  ...rows({ model: 'pipe.laminar_pressure_drop', kind: 'published', source: 'geankoplis-2', standing: 'memory' }, [
    [
      'capillary-meter',
      { viscosity_pa_s: 1.13e-3, flow_kg_h: 1.066e-6 * 875 * 3600, density_kg_m3: 875, diameter_m: 2.222e-3, length_m: 0.3175 },
      'pressure_drop_pa',
      642,
      7,
    ],
  ]),
  ...rows({ model: 'mixing.temperature', kind: 'code', source: 'heat-balance', standing: 'memory' }, [
    ['mix-of-two', { masses_kg: [1, 3], specific_heats_j_kg_k: [2000, 2000], temperatures_c: [60, 20] }, 'temperature_c', 30, 1e-9],
  ]),
  ...rows({ model: 'mixing.mechanical_heating', kind: 'code', source: 'heat-balance', standing: 'memory' }, [
    ['stirrer', { power_w: 5000, time_s: 600, mass_kg: 500, specific_heat_j_kg_k: 2000 }, 'temperature_rise_k', 3, 1e-9],
    ['pump-ten-bar', { pressure_drop_pa: 1e6, density_kg_m3: 1000, specific_heat_j_kg_k: 2000 }, 'temperature_rise_k', 0.5, 1e-9],
  ]),
  ...rows({ model: 'foam.inclusions', kind: 'published', source: 'foam-volume-balance', standing: 'found' }, [
    [
      'inclusions-volume',
      { foam_density_kg_m3: 550, inclusion_density_kg_m3: 748, inclusion_share: 0.09 },
      'volume_l_per_100_kg',
      177.4,
      0.6,
    ],
    ['inclusions-density', { foam_density_kg_m3: 550, inclusion_density_kg_m3: 748, inclusion_share: 0.09 }, 'density_kg_m3', 564, 2],
  ]),
  ...rows({ model: 'foam.stiffness', kind: 'code', source: 'decker-ziegler-2003', standing: 'found' }, [
    [
      'critical-density',
      { density_kg_m3: 900, reference_density_kg_m3: 900, gas_free_density_kg_m3: 1400 },
      'critical_density_kg_m3',
      560,
      1,
    ],
  ]),
  ...rows({ model: 'foam.whipping', kind: 'code', source: 'ideal-gas', standing: 'memory' }, [
    [
      'boyle',
      {
        gas_free_density_kg_m3: 1400,
        hold_up: 0.1,
        whipping_pressure_pa: 450_000,
        whipping_temperature_c: 42,
        pressure_pa: 100_000,
        temperature_c: 42,
        water_activity: 0,
      },
      'overrun',
      0.5,
      1e-9,
      'Dry gas at one temperature: volume by Boyle alone, 0.1/0.9 · 4.5.',
    ],
  ]),
];
