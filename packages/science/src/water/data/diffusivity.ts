import type { Table } from '../../sources.js';

/** log10 D (m²/s) as a polynomial of the water activity, near 23 °C. */
export const diffusivityPolynomials = {
  source: 'price-2014',
  standing: 'found',
  note: 'Cubic for sucrose and raffinose as coded; the quintic is a second published fit for sucrose; sucroseSelf (Price 2016) moves the sugar itself.',
  valid: { water_activity: [0.2, 1], temperature_c: [20, 26] },
  values: {
    sucrose: [-20.89, 25.92, -26.97, 13.35],
    raffinose: [-17.21, 24, -32.5, 17.02],
    sucroseQuintic: [-15.613, 1.262, -3.476, 46.468, -60.03, 22.691],
    sucroseSelf: [-30.97, 54.89, -62.34, 29.12],
  },
} as const satisfies Table;

/** log10 D (m²/s) = -(a + b/(T - T0)) with a, b, T0 functions of u = 1 - aw. */
export const zobristDiffusivity = {
  source: 'zobrist-2011',
  standing: 'found',
  note: 'The last exponent term of T0 is 0.5 in two codes and 0.51 in a third; 0.5 taken.',
  valid: { water_activity: [0, 1], temperature_c: [-100, 40] },
  values: { a: [7, 0.175, 46.46], b: [262.867, 10.53, -0.3], T0: [127.9, 0.4514, -0.5, 1.7] },
} as const satisfies Table;

/** Water in sucrose by water MOLE fraction: dry-glass Arrhenius end, pure-water end, composition exponent. */
export const lienhardDiffusivity = {
  source: 'lienhard-2015',
  standing: 'found',
  note:
    'Constants as coded. That code weights twice by x α; weighted once, as the Vignes rule says, the values lie within a factor of three of the fits ' +
    'by water activity, weighted twice a decade below them.',
  valid: { water_mole_fraction: [0, 1], temperature_c: [-60, 25] },
  values: {
    lnAtGlass: -18.22,
    activation: 190_300,
    glass: 335.7,
    a: [-16.65, 0.05, 253],
    b: [-14.65, 0.05, 253],
    water: [3.06e-3, 892, 118],
    R: 8.314,
  },
} as const satisfies Table;

/** Sugars at infinite dilution in water, 1e-9 m²/s, at the temperatures given (K). */
export const sugarDiffusivity = {
  source: 'ribeiro-2006',
  standing: 'found',
  note: 'Table 5, limit of Taylor dispersion at 0.001 to 0.1 mol/L. Outside: Stokes and Einstein from the nearest row, with the viscosity of water.',
  valid: { temperature_c: [25, 55] },
  values: {
    sucrose_k: [298.15, 303.15, 308.15, 312.15, 318.15],
    sucrose: [0.523, 0.609, 0.708, 0.8, 0.915],
    lactose_k: [298.15, 303.15, 308.15, 312.15, 318.15, 328.15],
    lactose: [0.566, 0.64, 0.719, 0.785, 0.858, 1.056],
    glucose_k: [298.15, 303.15, 308.15, 312.15],
    glucose: [0.679, 0.767, 0.855, 0.975],
    fructose_k: [298.15, 303.15, 308.15, 312.15],
    fructose: [0.686, 0.769, 0.852, 0.941],
  },
} as const satisfies Table;
