import type { Table } from '../../sources.js';

/** Specific refraction (n² - 1)/(n² + 2)/ρ, cm³/g, at 589 nm and 20 °C. */
export const specificRefraction = {
  source: 'icumsa-sps-3',
  standing: 'memory',
  note:
    'Our reduction of the sucrose table (n of 5 to 85 % at 20 °C) with the density polynomial: r = r0 + r1 w + r2 w², which returns the table ' +
    'within 0.00005. Water: r at 20 °C and its drift from the 0 % row of the glucose syrup table at 20, 30, 45, 60 °C.',
  valid: { solids: [0, 0.85], temperature_c: [15, 60] },
  values: { sucrose: [0.20663, -0.00135, -0.0013125], water: [0.20606, -6e-6, 6.6e-8], perKelvin: 8.5e-5 },
} as const satisfies Table;

/** Specific refraction of a solute over that of sucrose at the same concentration. */
export const refractionRatio = {
  source: 'iso-1743',
  standing: 'secondhand',
  note:
    'Chains: so that a 42 DE syrup returns the table of glucose syrup (found; its dextrose equivalent is not named there). Glucose and fructose: ' +
    'from the rule that a sucrose refractometer reads 0.022 low per per cent of invert sugar (memory). Polyols: ' +
    'sums of atomic refractions (carbon 2.418, hydrogen 1.100, oxygen 1.525 and 1.643 cm³/mol) over that of sucrose. Glycerol, salts, acids: from handbook n of 10 and 50 % solutions (memory).',
  valid: { solids: [0, 0.85] },
  values: {
    sucrose: 1,
    maltose: 1,
    lactose: 1,
    glucose: 0.9943,
    fructose: 0.9943,
    higherSaccharides: 1.0146,
    polyols: 1.043,
    glycerol: 1.083,
    erythritol: 1.067,
    xylitol: 1.0525,
    mannitol: 1.043,
    maltitol: 1.023,
    organicAcids: 0.945,
    salt: 0.768,
    potassiumChloride: 0.741,
    calciumChloride: 0.822,
    ash: 0.76,
  },
} as const satisfies Table;

/** Apparent specific volume in water over that of sucrose; those of `partialVolumeRatio` and these. */
export const volumeRatio = {
  source: 'crc-102-solutions',
  standing: 'memory',
  note: 'From densities of 10 to 50 % solutions at 20 °C, from memory; salts from those of 10 and 20 %. Sodium chloride takes more room the more of it there is: saltCrowded times its share of the brine is added.',
  valid: { solids: [0, 0.8] },
  values: {
    glycerol: 1.235,
    erythritol: 1.11,
    xylitol: 1.085,
    mannitol: 1.07,
    maltitol: 1.03,
    organicAcids: 0.97,
    salt: 0.49,
    saltCrowded: 0.35,
    potassiumChloride: 0.64,
    calciumChloride: 0.36,
    ash: 0.49,
  },
} as const satisfies Table;
