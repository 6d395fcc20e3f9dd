import type { Table } from '../../sources.js';

const valid = { temperature_c: [-40, 150] } as const;
const note = 'y = a + b T + c T², T in °C. SI: specific heat J/(kg K), conductivity W/(m K), density kg/m³.';

/** Specific heat, conductivity and density of the main constituents of food against temperature. */
export const choiOkosSpecificHeat = {
  source: 'choi-okos-1986',
  standing: 'secondhand',
  note: `${note} kJ to J; typing errors of one public copy (fat slope, water constant, signs) corrected.`,
  valid,
  values: {
    water: [4176.2, -0.090864, 5.4731e-3],
    protein: [2008.2, 1.2089, -1.3129e-3],
    fat: [1984.2, 1.4733, -4.8008e-3],
    carbohydrate: [1548.8, 1.9625, -5.9399e-3],
    fibre: [1845.9, 1.8306, -4.6509e-3],
    ash: [1092.6, 1.8896, -3.6817e-3],
  },
} as const satisfies Table;

export const choiOkosConductivity = {
  source: 'choi-okos-1986',
  standing: 'secondhand',
  note,
  valid,
  values: {
    water: [0.57109, 1.7625e-3, -6.7036e-6],
    protein: [0.17881, 1.1958e-3, -2.7178e-6],
    fat: [0.18071, -2.7604e-4, -1.7749e-7],
    carbohydrate: [0.20141, 1.3874e-3, -4.3312e-6],
    fibre: [0.18331, 1.2497e-3, -3.1683e-6],
    ash: [0.32962, 1.4011e-3, -2.9069e-6],
  },
} as const satisfies Table;

export const choiOkosDensity = {
  source: 'choi-okos-1986',
  standing: 'secondhand',
  note: `${note} The water line holds from 0 °C up.`,
  valid,
  values: {
    water: [997.18, 3.1439e-3, -3.7574e-3],
    protein: [1329.9, -0.5184, 0],
    fat: [925.59, -0.41757, 0],
    carbohydrate: [1599.1, -0.31046, 0],
    fibre: [1311.5, -0.36589, 0],
    ash: [2423.8, -0.28063, 0],
  },
} as const satisfies Table;
