import type { Table } from '../../sources.js';

/** Norrish constants at 25 °C as commonly printed: ln(aw/xw) = -(Σ √k x)². */
export const norrishConstants = {
  source: 'norrish-1966',
  standing: 'memory',
  note: 'Glycerol, erythritol, xylitol and mannitol found in a printed table; the sugars and sorbitol from memory.',
  valid: { water_activity: [0.75, 1] },
  values: {
    sucrose: 6.47,
    lactose: 10.2,
    glucose: 2.25,
    fructose: 2.25,
    maltose: 4.54,
    glycerol: 1.16,
    erythritol: 1.34,
    xylitol: 1.66,
    sorbitol: 1.65,
    mannitol: 0.906,
    maltitol: 4.54,
    organic_acids: 6.17,
    higherSaccharides: 7.9,
    sodiumChloride: -7.578,
  },
} as const satisfies Table;

/** Grover's conversion factors per gram and gram of water: aw = 1.04 - 0.10 E + 0.0045 E². */
export const groverFactors = {
  source: 'grover-1947',
  standing: 'memory',
  note: 'Sucrose and lactose 1.0, invert 1.3, 42 DE syrup solids 0.8, protein as gelatin 1.3, polyols as glycerol 4.0, salt 9.0.',
  valid: { water_activity: [0.65, 0.9] },
  values: {
    sucrose: 1,
    lactose: 1,
    maltose: 1,
    maltitol: 1,
    glucose: 1.3,
    fructose: 1.3,
    higherSaccharides: 0.6,
    glycerol: 4,
    erythritol: 2,
    xylitol: 2,
    sorbitol: 2,
    mannitol: 2,
    organic_acids: 2.5,
    salt: 9,
    protein: 1.3,
  },
} as const satisfies Table;

/** Money and Born: aw = 1 / (1 + 0.27 n), n mol of sugars per 100 g of water. */
export const moneyBorn = {
  source: 'money-born-1951',
  standing: 'memory',
  note: 'For jams and fondant syrups near their set.',
  valid: { water_activity: [0.75, 0.95] },
  values: { factor: 0.27 },
} as const satisfies Table;
