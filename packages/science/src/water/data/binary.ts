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
  note: 'Extended Debye-Hückel with A = 0.5108 (decimal logarithm); form read in public code. Taken at every temperature.',
  valid: { molality: [0, 13], temperature_c: [0, 130] },
  values: { A: 0.5108, B: 1.37, C: 4.803e-3, D: -2.736e-4, beta: 2.796e-2 },
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
    anhydroglucose: 162.14,
  },
} as const satisfies Table;
