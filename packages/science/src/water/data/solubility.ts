import type { Table } from '../../sources.js';

/** Sucrose in water, mass per cent: c0 + c1 t + … to 90 °C. */
export const sucroseSolubilityPolynomial = {
  source: 'vavrinecz-1962',
  standing: 'memory',
  note: 'Agrees within 0.6 % with the handbook tables below 100 °C; tables differ by 0.3 to 0.5 % at 20 °C (66.5, 66.7, 67.1).',
  valid: { temperature_c: [0, 90] },
  values: { percent: [64.447, 0.08222, 1.6169e-3, -1.558e-6, -4.63e-8] },
} as const satisfies Table;

/** Sucrose under pressure above 100 °C, kg per kg of water. */
export const sucroseSolubilityTable = {
  source: 'sucrose-properties-page',
  standing: 'found',
  note: 'Table of 0 to 140 °C in steps of 20; used from 80 °C. At 120 °C its two columns differ (6.669 and 86.89 %), the mean is taken.',
  valid: { temperature_c: [80, 140] },
  values: { temperature_c: [100, 120, 140], kilogramPerKilogram: [4.844, 6.65, 10.71] },
} as const satisfies Table;

/** Final solubility (after mutarotation) of lactose, g per 100 g of water. */
export const lactoseSolubility = {
  source: 'hudson-1908',
  standing: 'found',
  note: '0, 25, 49, 74, 89 °C found; 15, 39, 64 °C from memory.',
  valid: { temperature_c: [0, 89] },
  values: { temperature_c: [0, 15, 25, 39, 49, 64, 74, 89], grams: [11.9, 16.9, 21.6, 31.5, 42.4, 65.8, 86.2, 139.2] },
} as const satisfies Table;

/** Ratio of beta to alpha lactose at equilibrium: 1.64 - 0.0027 t. */
export const lactoseAnomers = {
  source: 'walstra-2006',
  standing: 'found',
  note: 'Read in a dairy text.',
  valid: { temperature_c: [0, 100] },
  values: { atZero: 1.64, perKelvin: -0.0027 },
} as const satisfies Table;

/** Maltose (as anhydrous), mass per cent. */
export const maltoseSolubility = {
  source: 'gillis-1920',
  standing: 'found',
  note: 'Measured points; 50 °C from a review table.',
  valid: { temperature_c: [0.6, 96.5] },
  values: { temperature_c: [0.6, 21, 50, 59.8, 96.5], percent: [36.1, 44.1, 58.3, 63.7, 85.1] },
} as const satisfies Table;

/** Glucose (monohydrate below 50 °C, anhydrous above), fructose, sorbitol: mass per cent of anhydrous solid. */
export const otherSolubilities = {
  source: 'hartel-2011',
  standing: 'memory',
  note: 'Fructose 20 °C, sorbitol 20 and 50 °C found in the review table; the rest from memory of the same literature.',
  valid: { temperature_c: [0, 90] },
  values: {
    glucose_t: [0, 20, 25, 30, 40, 50, 60, 70, 80, 90],
    glucose: [35, 47.8, 51.2, 54.6, 61.8, 70.9, 74.7, 78.2, 81.3, 84.7],
    fructose_t: [20, 25, 30, 40, 50, 55],
    fructose: [78.9, 80.3, 81.5, 84.3, 86.9, 88.1],
    sorbitol_t: [20, 50],
    sorbitol: [73, 83],
  },
} as const satisfies Table;

/** Polyols and trehalose (as anhydrous), mass per cent. */
export const polyolSolubilities = {
  source: 'polyol-solubilities',
  standing: 'memory',
  note: 'Usual tables of polyol texts, recalled; erythritol 37 % at 20 °C and 75 % at 80 °C found. They differ by 2 to 3 points.',
  valid: { temperature_c: [20, 80] },
  values: {
    xylitol_t: [10, 20, 25, 30, 40, 50, 60],
    xylitol: [58, 62.7, 64, 67.5, 74.5, 80, 85],
    erythritol_t: [20, 25, 40, 60, 80],
    erythritol: [35.5, 37.5, 48.5, 62, 75],
    mannitol_t: [0, 20, 25, 40, 60, 80],
    mannitol: [9.4, 15.5, 17.8, 25.5, 37, 50],
    maltitol_t: [20, 25, 40, 60, 80],
    maltitol: [58, 60, 66, 75, 84],
    isomalt_t: [10, 20, 25, 40, 60, 80],
    isomalt: [20, 24.5, 27, 36, 52, 66],
    lactitol_t: [20, 25, 40, 60],
    lactitol: [55, 57, 64, 73],
    trehalose_t: [10, 20, 30, 40, 50, 60, 70, 80, 90],
    trehalose: [35.6, 40.8, 46.3, 52.2, 58.4, 64.8, 71.5, 78.5, 85.8],
  },
} as const satisfies Table;

/** Sucrose beside other solids: y = m q + b + (1 - b) exp(c q), q = other solids per water. */
export const saturationFunction = {
  source: 'wiklund-vavrinecz',
  standing: 'found',
  note:
    'Beet molasses (salts: rises above 1). share: what of the activity model’s lowering is taken, so that sucrose beside invert at 20 °C comes to ' +
    'y = 0.83 at q = 0.93 (46.6 % sucrose, 25.8 % invert, from memory).',
  valid: { nonsugar_per_water: [0, 3] },
  values: { beet: [0.194, 0.771, -1.8], share: 0.61 },
} as const satisfies Table;

/** Crystal, for the Kelvin effect. */
export const sucroseCrystal = {
  source: 'coulson-richardson-2',
  standing: 'found',
  note: 'Worked example of chapter 15; the size printed there is the diameter.',
  valid: {},
  values: { surfaceTension: 0.01, density: 1590, molarMass: 0.3423 },
} as const satisfies Table;
