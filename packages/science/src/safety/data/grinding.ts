import type { Table } from '../../sources.js';

/** Ball-mill refiner of 13 runs: quadratic in time (min) and agitator speed (rpm), fitted by us to nine of them. */
export const ballMill = {
  source: 'alamprese-2007',
  standing: 'secondhand',
  note: 'b0 + b1 t + b2 a + b3 t² + b4 a² + b5 t a on nine runs: three degrees of freedom. Units of time, speed and energy are not stated in the data set; min and rpm assumed. Repeats spread (2 sd): 4.5 µm, 0.12 Pa·s, 2.4 Pa.',
  valid: { time: [33.7, 76.2], speed: [41.7, 98.3] },
  values: {
    energy: [-6.95097, 0.0972034, 0.150986, -2.95299e-4, -8.54747e-4, -1.9009e-4],
    d90: [28.0583, -0.505514, 0.182185, 7.96854e-3, 2.52537e-3, -8.14157e-3],
    viscosity: [3.62161, -0.0362401, -0.0227149, 1.96833e-4, 7.3674e-5, 1.58467e-4],
    yieldValue: [-3.30529, 0.117541, 0.112227, 1.1128e-3, 2.66565e-4, -2.28259e-3],
    rateTime: 55,
    rate: 109,
    optimum: [58, 38.5],
  },
} as const satisfies Table;

/** When a panel feels grit. */
export const grit = {
  source: 'breen-2019',
  standing: 'found',
  note: 'Just noticeable difference about 5 µm over the range of commercial chocolate; acute tasters told 19 from 26 µm in 17 of 20 trials.',
  valid: { size: [19, 26] },
  values: { difference: 5, acuteSizes: [19, 26], acuteShare: 0.85 },
} as const satisfies Table;

/** Size above which the palate feels particles. */
export const palate = {
  source: 'talbot-2008',
  standing: 'secondhand',
  note: 'About 25 µm; another panel told a d90 of 60 from 40 and 30 but not 40 from 30 µm (de-pelsmaeker-2020): a slope, no wall.',
  valid: {},
  values: { threshold: 25, notTold: [30, 40], told: 60 },
} as const satisfies Table;

/** Fat that clothes and fills between particles. */
export const fatFilm = {
  source: 'common-practice',
  standing: 'memory',
  note: 'Film of about 10 nm of fat bound on a particle, random close packing 0.64; densities 1590 (sugar) and 900 kg/m³ (fat at 40 °C). To be fitted to the plant’s own masses.',
  valid: {},
  values: { film: 1e-8, packing: 0.64, particleDensity: 1500, fatDensity: 900 },
} as const satisfies Table;
