import type { Table } from '../../sources.js';

/** rho(b, T) = rho_w(T) + sum_k sum_j c[k][j] b^(j+1) t^k, b mass fraction, t = (T - 20)/100. */
export const icumsaDensity = {
  source: 'icumsa-sucrose-density',
  standing: 'found',
  note: 'Coefficients read in public code; agrees with the handbook table within 0.3 kg/m³ to 70 % and 0.8 at 84 %.',
  valid: { sucrose: [0, 0.95], temperature_c: [0, 100] },
  values: {
    t0: [385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.289],
    t1: [-46.272, -7.172, 1.1597, 5.1126, 17.5254],
    t2: [59.7712, 7.2491, 12.363, -35.4791],
    t3: [-47.2207, -21.6977, 27.6301],
    t4: [18.3184, 12.3081],
  },
} as const satisfies Table;

/** Density of liquid water: polynomial over 1 + d T. */
export const kellDensity = {
  source: 'kell-1975',
  standing: 'found',
  note: 'Coefficients read with the sucrose polynomial in public code.',
  valid: { temperature_c: [0, 150] },
  values: {
    numerator: [999.83952, 16.952577, -7.9905127e-3, -46.241757e-6, 105.84601e-9, -281.03006e-12],
    denominator: 16.887236e-3,
  },
} as const satisfies Table;

/** Apparent specific volume in water over that of sucrose at the same concentration and temperature. */
export const partialVolumeRatio = {
  source: 'crc-102-solutions',
  standing: 'found',
  note:
    'Our ratios from densities at 20 °C: glucose, fructose, maltose at 40 %, lactose at 18 %. Higher saccharides from a 42 DE syrup ' +
    '(77 % solids, 1404.6 kg/m³ at 20 °C) less its glucose and maltose. Polyols: 70 % sorbitol at 1.29 g/mL, from memory.',
  valid: { solids: [0, 0.8] },
  values: { sucrose: 1, glucose: 1.012, fructose: 0.998, maltose: 0.998, lactose: 0.984, higher_saccharides: 0.978, polyols: 1.07 },
} as const satisfies Table;

/** Specific heat of sugar liquor: water + B (purity 1: -2511 + 7.5 T) J/(kg K); here as the share of the sugar alone. */
export const liquorSpecificHeat = {
  source: 'sugar-liquor-thermal',
  standing: 'found',
  note: 'cp = 4184 - 2971 B + 460 B P + 7.5 B T at P = 1, less the water: 1673 + 7.5 T per kg of dissolved sugar.',
  valid: { solids: [0, 0.9], temperature_c: [0, 100] },
  values: { sugar: [1673, 7.5] },
} as const satisfies Table;

/** Conductivity of sugar liquor: w(T) + B s(T). */
export const liquorConductivity = {
  source: 'sugar-liquor-thermal',
  standing: 'found',
  note: 'k = B (5.466e-6 T² - 1.176e-3 T - 0.3024) - 7.847e-6 T² + 1.976e-3 T + 0.563.',
  valid: { solids: [0, 0.9], temperature_c: [0, 100] },
  values: { water: [0.563, 1.976e-3, -7.847e-6], sugar: [-0.3024, -1.176e-3, 5.466e-6] },
} as const satisfies Table;

/** Crystalline sucrose. */
export const crystallineSucrose = {
  source: 'mohos-2010-app',
  standing: 'found',
  note: 'Specific heat 1088.57 at 0 °C and 1323.03 at 40 °C, straight line. Conductivity 0.58 W/(m K) from table A1.2, castor sugar among crystalline sugars (bulk sugar in table A1.1: 0.139). Density 1588 kg/m³ is from memory.',
  valid: { temperature_c: [0, 90] },
  values: { specific_heat: [1096.6, 5.383], density: 1588, conductivity: 0.58 },
} as const satisfies Table;
