import type { Table } from '../../sources.js';

/** Densities that turn mass into volume for the packing of particles in melted fat at 40 °C, and the packing itself. */
export const packing = {
  source: 'krieger-dougherty-1959',
  standing: 'memory',
  note: 'η = η_f (1 - φ/φm)^(-2.5 φm). Densities of liquid fat and of the solids and φm from memory; φm of refined chocolate is quoted 0.64 to 0.70.',
  valid: { fat: [0.24, 0.45], maximum: [0.62, 0.72] },
  values: { fatDensity: 890, solidsDensity: 1530, maximum: 0.66, maximumRange: [0.64, 0.7], intrinsic: 2.5, fatViscosity: 0.048 },
} as const satisfies Table;

/**
 * How yield value and plastic viscosity answer to recipe and process: middle, low and high of published trends or trade rules.
 * Signs and order are published; sizes are not reliable across plants, so a plant's own ladder should replace them.
 */
export const trends = {
  source: 'chocolate-flow-trends',
  standing: 'memory',
  note: 'Exponent of the packing factor in the yield value; equivalent butter of lecithin up to its optimum (10 found); yield per 0.1 % lecithin below and above the optimum; E476 floor and scale (0.2 % halves the yield value); share of a point of fat per 0.1 % water above 1 % (0.3 % water = 1 % fat found); exponents of d90.',
  valid: { fat: [0.24, 0.45], lecithin: [0, 0.012], pgpr: [0, 0.01], moisture: [0.003, 0.02], d90: [15, 60] },
  values: {
    yieldPower: [0.42, 0.3, 0.8],
    lecithinButter: [10, 6, 14],
    lecithinOptimum: [0.005, 0.003, 0.006],
    lecithinYieldBelow: [-0.04, -0.1, 0.05],
    lecithinYieldAbove: [0.06, 0, 0.15],
    pgprFloor: [0.25, 0.15, 0.5],
    pgprScale: [0.00182, 0.0012, 0.0035],
    pgprPlastic: [-0.03, -0.1, 0.05],
    waterPerFat: [0.003, 0.002, 0.005],
    dryWaterShare: [0.25, 0, 0.5],
    finenessYield: [0.8, 0.3, 1.6],
    finenessPlastic: [0.3, 0.1, 0.8],
  },
} as const satisfies Table;

/** Measured and quoted orders that the trends must keep. */
export const emulsifierLimits = {
  source: 'eu-1333-2008',
  standing: 'memory',
  note: 'E476 in cocoa-based confectionery, 5000 mg/kg; lecithin E322 without a numerical limit (quantum satis).',
  valid: {},
  values: { pgpr: 0.005 },
} as const satisfies Table;
