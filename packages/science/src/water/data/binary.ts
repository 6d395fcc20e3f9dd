import type { Table } from '../../sources.js';

/** Sucrose in water: ln γw = (Q/RT) x² (1 + a x + b x²), x mole fraction of sucrose. */
export const sucroseActivity = {
  source: 'starzak-peacock-1997',
  standing: 'found',
  note: 'Constants read on a page of the sugar trade; Q in J/mol. The later paper of the same school states -15 to 150 °C up to 98 %.',
  valid: { sucrose: [0, 0.95], temperature_c: [-15, 150] },
  values: { Q: -17638, a: -1.0038, b: -0.24653 },
} as const satisfies Table;

/**
 * The other solutes: ln γw = -k g(T) x² (1 + a x), k at 25 °C, g in data of `excessOverTemperature`.
 * k and a per solute are our reading of several works, each named here.
 */
export const soluteActivity = {
  source: 'norrish-1966',
  standing: 'memory',
  note:
    'k near the published constants at 25 °C: glucose 2.25 (2.35 and rising, because honeys bind more than fructose alone); fructose 2.25, lowered to 1.5 because a saturated solution (80 % at 25 °C) stands at ' +
    'activity 0.63 and a frozen one of 20 % asks for 1.6; maltose 4.54 (as a mean over 0 to 60 %; 5.8 with a = -0.8 gives the same mean), sorbitol 1.65, xylitol 1.66, ' +
    'erythritol 1.34, mannitol 0.906, citric acid 6.17. Lactose 10.2 comes from dilute solutions only and is replaced by the sucrose equation.',
  valid: { water_activity: [0.3, 1], temperature_c: [-15, 130] },
  values: {
    glucose: [2.35, 0.4],
    fructose: [1.5, 0],
    maltose: [5.8, -0.8],
    sorbitol: [1.65, 0],
    xylitol: [1.66, 0],
    erythritol: [1.34, 0],
    mannitol: [0.906, 0],
    maltitol: [5.8, -0.8],
    organic_acids: [6.17, -0.8],
  },
} as const satisfies Table;

/**
 * g(T) = 1 + s (T0/T - 1) + r (ln(T/T0) + T0/T - 1): excess enthalpy at 25 °C and a constant heat capacity of dilution.
 * s from the heat of dilution of sucrose at 25 °C (576 J/mol per molal), r so that its boiling points come out.
 */
export const excessOverTemperature = {
  source: 'robinson-stokes-1959',
  standing: 'memory',
  note: 'Heat of dilution of sucrose from memory; taken for all sugars and polyols. Glycerol has its own pair.',
  valid: { temperature_c: [-15, 130] },
  values: { reference: 298.15, sugars: [1.7, 5.3] },
} as const satisfies Table;

/** Glycerol: ln γw = -k g(T) x² exp(-c x). */
export const glycerolActivity = {
  source: 'miner-dalton-1953',
  standing: 'memory',
  note: 'k and c from relative humidities at 25 °C (33 % stands at 0.90, 72 % at 0.60, 84 % at 0.40); s, r from boiling points at 1 atm (50 % 106 °C, 90 % 138 °C) and the freezing point of 40 %.',
  valid: { solids: [0, 0.95], temperature_c: [-20, 165] },
  values: { k: 1.75, c: 2, s: 2.23, r: 17.8 },
} as const satisfies Table;

/** Sodium chloride at 25 °C: osmotic coefficient up to 13 mol/kg, far beyond saturation. */
export const saltActivity = {
  source: 'tang-1986',
  standing: 'memory',
  note: 'Extended Debye-Hückel with A = 0.5108 (decimal logarithm); form read in public code.',
  valid: { molality: [0, 13], temperature_c: [20, 30] },
  values: { A: 0.5108, B: 1.37, C: 4.803e-3, D: -2.736e-4, beta: 2.796e-2 },
} as const satisfies Table;

/** What leaves 25 °C: φ gains -(s x + r (ln(T/T0) + x)) m/(1 + b m), x = T0/T - 1. */
export const saltOverTemperature = {
  source: 'crc-102-solutions',
  standing: 'memory',
  note:
    'Our three constants from the freezing points of 5, 10 and 20 % (3.05, 6.56, 16.46 K) and the boiling point of the saturated solution ' +
    '(28.4 %, 108.7 °C), all from memory. Between them φ has its weak maximum near 50 °C, as measured. Beyond saturation nothing is known of it: ' +
    'it is faded out from 7 to 10 mol/kg.',
  valid: { molality: [0, 7], temperature_c: [-17, 110] },
  values: { reference: 298.15, s: 0.269, r: 4.72, b: 0.764, gone: 10 },
} as const satisfies Table;

/** Osmotic coefficients at 25 °C against mol/kg, to saturation; ions per formula. */
export const electrolyteTables = {
  source: 'robinson-stokes-1959',
  standing: 'memory',
  note: 'Isopiestic tables; taken at every temperature. Beyond the last row the coefficient stays.',
  valid: { molality: [0, 8], temperature_c: [20, 30] },
  values: {
    potassium_chloride_m: [0, 0.1, 0.2, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 4.8],
    potassium_chloride: [1, 0.927, 0.913, 0.899, 0.897, 0.904, 0.912, 0.924, 0.937, 0.95, 0.965, 0.98, 0.988],
    calcium_chloride_m: [0, 0.1, 0.2, 0.4, 0.6, 0.8, 1, 1.2, 1.4, 1.6, 1.8, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6, 7, 8],
    calcium_chloride: [
      1, 0.854, 0.862, 0.894, 0.94, 0.988, 1.046, 1.107, 1.171, 1.237, 1.305, 1.376, 1.568, 1.779, 1.981, 2.182, 2.383, 2.574, 2.743, 2.891,
      3.081, 3.151,
    ],
  },
} as const satisfies Table;

/** Milk salts by the sodium chloride that lowers the freezing point alike. */
export const milkSalts = {
  source: 'walstra-2006',
  standing: 'memory',
  note:
    'Milk freezes at -0.53 °C; its lactose accounts for half, so 7.2 g of ash per kg act like 0.134 osmol. Per gram that is half of sodium ' +
    'chloride; the rest is colloidal phosphate.',
  valid: {},
  values: { chlorideEquivalent: 0.5 },
} as const satisfies Table;

/** Bound water of a glucose chain of n units: that of maltose times 1 + f (n - 2). */
export const chainHydration = {
  source: 'maltodextrin-isotherms',
  standing: 'memory',
  note: 'f so that a maltodextrin of 10 DE holds 8 to 9 g per 100 g at activity 0.5 and 12 to 15 g at 0.7; lies with the step from glucose to maltose.',
  valid: { units: [3, 40] },
  values: { perUnit: 0.45 },
} as const satisfies Table;

/** g/mol. */
export const molarMasses = {
  source: 'iupac-atomic-weights',
  standing: 'memory',
  note: 'Anhydrous; anhydroglucose is the unit that a saccharide grows by. Organic acids as citric acid.',
  valid: {},
  values: {
    water: 18.015,
    sucrose: 342.3,
    glucose: 180.16,
    fructose: 180.16,
    maltose: 342.3,
    lactose: 342.3,
    glycerol: 92.09,
    erythritol: 122.12,
    xylitol: 152.15,
    sorbitol: 182.17,
    mannitol: 182.17,
    maltitol: 344.31,
    organic_acids: 192.12,
    sodiumChloride: 58.44,
    potassiumChloride: 74.55,
    calciumChloride: 110.98,
    anhydroglucose: 162.14,
  },
} as const satisfies Table;
