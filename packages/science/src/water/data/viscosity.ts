import type { Table } from '../../sources.js';

/** log10 η (mPa s) = a x - b + φ (c + d x^e), x = W/(1900 - 18 W), φ = (30 - t)/(91 + t), W per cent of sucrose. */
export const sucroseViscosityEquation = {
  source: 'genotelle-bubnik',
  standing: 'found',
  note: 'Read in public code at purity 1; W is in per cent. Within 8 % of the handbook table from 10 to 100 °C and 20 to 74 %.',
  valid: { solids: [0, 0.8], temperature_c: [0, 100] },
  values: { a: 22.46, b: 0.114, c: 1.1, d: 43.1, e: 1.25 },
} as const satisfies Table;

/** Mass of sucrose that thickens water like one of the solute. */
export const thickeningPower = {
  source: 'crc-102-solutions',
  standing: 'secondhand',
  note:
    'Our reduction of viscosities at 20 °C: glucose 50 %, fructose 40 %, maltose 58 %, lactose 10 %, mannitol 15 %. Chains: a 77 % corn syrup at ' +
    '25 to 45 °C taken as 42 DE, rising with chain length; the refiners’ table (memory) lies 1.6 times above. Glycerol holds to 50 % only.',
  valid: { solids: [0, 0.8] },
  values: {
    sucrose: 1,
    glucose: 0.945,
    fructose: 0.922,
    maltose: 1.014,
    lactose: 1.05,
    polyols: 0.93,
    glycerol: 0.77,
    erythritol: 0.9,
    xylitol: 0.92,
    mannitol: 0.935,
    maltitol: 1,
    organicAcids: 0.95,
    salt: 0.7,
    potassiumChloride: 0.05,
    calciumChloride: 1,
    ash: 0.7,
    chainOfTwo: 1.014,
    perFurtherUnit: 0.0155,
  },
} as const satisfies Table;

/** Viscosity of a 77 % corn syrup, Pa s: a t^b, t in °C. */
export const cornSyrup77 = {
  source: 'corn-syrup-77-density',
  standing: 'found',
  note: 'Fit of the authors over 23.5 to 46 °C.',
  valid: { temperature_c: [23.5, 46] },
  values: { a: 15603, b: -2.44 },
} as const satisfies Table;
