import type { Table } from '../../sources.js';

/** Saturation line of liquid water: n1 … n10 of the region-4 equation. */
export const saturationLine = {
  source: 'iapws-if97',
  standing: 'memory',
  note: 'Region 4, table 34; checked against the printed verification values of the same release.',
  valid: { temperature_c: [0, 373.946], pressure_pa: [611.213, 22_064_000] },
  values: {
    n: [
      1167.0521452767, -724213.16703206, -17.073846940092, 12020.82470247, -3232555.0322333, 14.91510861353, -4823.2657361591,
      405113.40542057, -0.23855557567849, 650.17534844798,
    ],
  },
} as const satisfies Table;

/** Sublimation line of ice Ih: ln(p/p_t) = 1/θ Σ a θ^b with θ = T/273.16 K, p_t = 611.657 Pa. */
export const sublimationLine = {
  source: 'iapws-r14-08',
  standing: 'memory',
  note: 'Equation 6, table 1; checked against the printed value at 230 K (8.94735 Pa).',
  valid: { temperature_c: [-223.15, 0.01] },
  values: {
    triplePressure: 611.657,
    tripleTemperature: 273.16,
    a: [-0.212144006e2, 0.273203819e2, -0.61059813e1],
    b: [0.333333333e-2, 0.120666667e1, 0.170333333e1],
  },
} as const satisfies Table;

/** Vapour pressure and densities of saturated water, powers of 1 - T/647.096 K. */
export const saturatedWater = {
  source: 'iapws-sr1-86',
  standing: 'memory',
  note: 'Equations 1 to 3 (Wagner and Pruss 1993); checked against steam tables at 100 and 150 °C.',
  valid: { temperature_c: [0, 373.9] },
  values: {
    criticalTemperature: 647.096,
    criticalPressure: 22_064_000,
    criticalDensity: 322,
    pressure: [-7.85951783, 1.84408259, -11.7866497, 22.6807411, -15.9618719, 1.80122502],
    liquid: [1.99274064, 1.09965342, -0.510839303, -1.75493479, -45.5170352, -6.7469445e5],
    vapour: [-2.0315024, -2.6830294, -5.38626492, -17.2991605, -44.7586581, -63.9201063],
  },
} as const satisfies Table;

/** Vapour pressure of supercooled water, ln p in Pa; T in K. */
export const supercooledWater = {
  source: 'murphy-koop-2005',
  standing: 'memory',
  note: 'Equation 10: a0 + a1/T + a2 ln T + a3 T + tanh(k (T - Tm)) (b0 + b1/T + b2 ln T + b3 T).',
  valid: { temperature_c: [-150, 58.85] },
  values: {
    a: [54.842763, -6763.22, -4.21, 0.000367],
    b: [53.878, -1331.22, -9.44523, 0.014025],
    k: 0.0415,
    middle: 218.8,
  },
} as const satisfies Table;
