import type { Table } from '../../sources.js';

/** Page model of cocoa bean drying in a rotary roaster: X = X0 exp(-K t^n), K Arrhenius about 140 °C, t in min. */
export const cocoaPage = {
  source: 'garcia-alamilla-2017',
  standing: 'secondhand',
  note: 'Our fit to runs 1, 2, 4, 6 and 8 of the design (order of runs inferred). All five centre runs at 140 °C, 35 min miss: 0.005 or 0.024 printed, 0.0134 computed.',
  valid: { temperature: [110, 170], time: [5, 65], moistureDry: [0.004, 0.044] },
  values: { k140: 0.1233, exponent: 0.6378, activationEnergy: 7020, rawMoistureDry: 0.044 },
} as const satisfies Table;

/** Titratable acid of the nib, mL NaOH per g: falls to a level within a quarter of an hour. */
export const cocoaAcidity = {
  source: 'garcia-alamilla-2017',
  standing: 'secondhand',
  note: 'Level: mean of runs 4, 6, 8 and of the centre runs. Rate from runs 1 and 2. No effect of temperature can be told from the table.',
  valid: { temperature: [110, 170], time: [5, 65] },
  values: { raw: 6.24, level: 2.1, rate: 0.135 },
} as const satisfies Table;

/** Runner peanuts: two first-order stages in dry-basis moisture, time in min. */
export const peanutDrying = {
  source: 'weissburg-2024',
  standing: 'found',
  note: '6.5 % to the critical 2.41 % at 6 min, 0.4 % at 24 min; rates are ours from these three points. The abstract gives no roaster temperature.',
  valid: { time: [0, 24], moistureDry: [0.004, 0.065] },
  values: { raw: 0.065, critical: 0.0241, criticalTime: 6, last: 0.004, lastTime: 24 },
} as const satisfies Table;

/** Temperature the peanut rates are taken to belong to and their activation energy: both assumed. */
export const peanutRate = {
  source: 'common-practice',
  standing: 'memory',
  note: 'Usual roast at 163 °C; Arrhenius 45 kJ/mol, between 40 and 50.',
  valid: { temperature: [130, 180] },
  values: { referenceTemperature: 163, activationEnergy: 45_000 },
} as const satisfies Table;

/** Final moisture of peanuts roasted at 163 °C to Hunter L 49 to 51, from 5.7 to 9.4 % raw. */
export const peanutRoastEnd = {
  source: 'sanders-1998',
  standing: 'found',
  note: 'End moisture 1.13 to 1.43 %, nearly independent of the raw moisture: the roast is ended on colour.',
  valid: { hunterL: [49, 51], rawMoisture: [0.057, 0.094] },
  values: { moisture: [0.0113, 0.0143] },
} as const satisfies Table;

/** Moisture diffusivity of cocoa beans, m²/s, printed end points. */
export const cocoaDiffusivity = {
  source: 'ndukwu-2010',
  standing: 'found',
  note: 'Abstract: 6.137e-10 at 55 °C, 2.1855e-9 at 81 °C. The printed constants (8.64e-4 m²/s, 39.94 kJ/mol) do not give these; the end points are used (47 kJ/mol).',
  valid: { temperature: [55, 81] },
  values: { temperatures: [55, 81], diffusivity: [6.137e-10, 2.1855e-9] },
} as const satisfies Table;

/** Heat of the roast. */
export const roastHeat = {
  source: 'common-practice',
  standing: 'memory',
  note: 'Heat capacity of dry cocoa or peanut 1.9 to 2.1 kJ/(kg K); gas efficiency of roasters 0.35 to 0.6. Water 4.19, evaporation 2257 kJ/kg at 100 °C.',
  valid: {},
  values: { dry: 1900, water: 4190, evaporation: 2_257_000, efficiency: [0.35, 0.6] },
} as const satisfies Table;

/** Browning rates: activation energies in J/mol. */
export const browning = {
  source: 'furan-hazelnut-2020',
  standing: 'secondhand',
  note: '62 kJ/mol is that of furan in roasted hazelnut (zero order, found); browning of nuts and cocoa is usually put at 60 to 125 (memory). 90 taken in the middle.',
  valid: { temperature: [100, 180] },
  values: { low: 62_000, middle: 90_000, high: 125_000 },
} as const satisfies Table;
