import type { Table } from '../../sources.js';

/** GAB constants at 25 °C: monolayer kg/kg dry, C, K, highest water activity they were fitted to. */
export const cocoaIsotherms = {
  source: 'cocoa-isotherm-study',
  standing: 'found',
  note: 'Fits of the authors at 25 °C, monolayer given in g per 100 g dry.',
  valid: { water_activity: [0.1, 0.9], temperature_c: [20, 30] },
  values: { cocoa_bean: [0.036, 21.63, 0.871], cocoa_shell: [0.085, 83.56, 0.942] },
} as const satisfies Table;

export const biopolymerIsotherms = {
  source: 'bull-1944',
  standing: 'memory',
  note:
    'Our GAB reading of remembered isotherms at 25 °C: egg albumen 6.0, 11.3, 20.5 g/100 g at 0.2, 0.5, 0.8; casein and whey a little less; wheat ' +
    'starch 12 at 0.5 and 24 at 0.9; cellulose-rich fibre 8.5 at 0.5. Held water falls by 0.3 % per kelvin.',
  valid: { water_activity: [0.05, 0.92], temperature_c: [5, 60] },
  values: {
    egg_protein: [0.07, 12, 0.85],
    milk_protein: [0.068, 11, 0.86],
    nut_protein: [0.065, 10, 0.85],
    cocoa_protein: [0.065, 10, 0.85],
    cereal_protein: [0.064, 12, 0.85],
    starch: [0.088, 15, 0.72],
    fibre: [0.055, 10, 0.85],
    perKelvin: 0.003,
  },
} as const satisfies Table;

export const amorphousLactose = {
  source: 'lactose-isotherms',
  standing: 'memory',
  note: 'Gives 6.7 g/100 g at 0.37 against 6.8 found; crystallises above 0.40 within a day at 24 °C and then holds far less.',
  valid: { water_activity: [0.05, 0.45], temperature_c: [20, 30] },
  values: { amorphous_lactose: [0.0491, 4.33, 1.18] },
} as const satisfies Table;

/** GAB with constants that follow exp(d/T): m0, dm, C0, dC, K0, dK. */
export const flourIsotherms = {
  source: 'material-data-pasta',
  standing: 'found',
  note: 'Andrieu 1985 (pasta), Erbas 2005 (semolina), Xiong 1991 (pasta, Oswin: k0 + k1 t, n0 + n1 t) as coded; nearest to wafer and biscuit flour.',
  valid: { water_activity: [0.1, 0.9], temperature_c: [20, 60] },
  values: {
    pasta: [0.0017, 1135.3, 2.8339e-8, 6545.8, 1.832, -238.4933],
    semolina: [1.3841e-5, 2642.8, 1.2762e12, -7864.2, 2.1566, -348.9801],
    pastaOswin: [0.176, -0.001748, 0.182, 0.006946],
  },
} as const satisfies Table;

/** Modified Chung and Pfost: M (% dry basis) = -ln(-(t + C) ln(aw)/A)/B. */
export const wheatIsotherm = {
  source: 'cereal-grains-storage',
  standing: 'found',
  note: 'Constants as coded from the handbook, 5th ed., p. 272.',
  valid: { water_activity: [0.2, 0.9], temperature_c: [5, 50] },
  values: { A: 610.34, B: 0.15526, C: 93.213 },
} as const satisfies Table;

/** Modified Henderson: 1 - aw = exp(-A (t + B) M^C), M per cent dry basis. */
export const peanutIsotherm = {
  source: 'asae-d245',
  standing: 'memory',
  note: 'Peanut kernel; reproduces stored kernels (7.6 % at 13 °C, 65 %) roughly.',
  valid: { water_activity: [0.1, 0.9], temperature_c: [10, 40] },
  values: { A: 6.50413e-4, B: 50.561, C: 1.4984 },
} as const satisfies Table;

/** Oily seeds: 1 - aw = exp(-(M (1.1 + t/90)/(1 - D))²/440), M per cent dry basis, D oil of the dry matter. */
export const oilySeedIsotherm = {
  source: 'cromarty-1982',
  standing: 'found',
  note: 'As documented in an open package; raw seed, roasted nuts hold less.',
  valid: { water_activity: [0.1, 0.9], temperature_c: [0, 45] },
  values: { offset: 1.1, scale: 90, denominator: 440 },
} as const satisfies Table;

/** Fresh biscuit: BET monolayer kg/kg dry; the constant C was not printed. */
export const biscuitIsotherm = {
  source: 'biscuit-isotherm-2016',
  standing: 'found',
  note: 'Monolayer 1.473 g/100 g dry, fresh; C = 12 is our assumption, common for starch foods.',
  valid: { water_activity: [0.05, 0.5], temperature_c: [20, 35] },
  values: { biscuit: [0.01473, 12] },
} as const satisfies Table;
