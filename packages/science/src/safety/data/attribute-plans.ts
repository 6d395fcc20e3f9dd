import type { Table } from '../../sources.js';

/** Code letters of lot sizes: upper end of each lot size class, then the letter index (A 0 … R 15; I and O are not used). */
export const codeLetters = {
  source: 'mil-std-105e',
  standing: 'secondhand',
  note: 'Table I, general levels; the same table stands in ISO 2859-1. Levels I and III of lots below 16 from memory.',
  valid: { lot: [2, Infinity] },
  values: {
    upTo: [8, 15, 25, 50, 90, 150, 280, 500, 1200, 3200, 10000, 35000, 150000, 500000, Infinity],
    levelI: [0, 0, 1, 2, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12],
    levelII: [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14],
    levelIII: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15],
  },
} as const satisfies Table;

/** Sample sizes by letter, acceptable quality levels in per cent, and acceptance numbers along the diagonals of the table. */
export const singleNormal = {
  source: 'mil-std-105e',
  standing: 'secondhand',
  note: 'Table II-A, single sampling, normal inspection, read as diagonals: -1 stands for the arrow up, -2 for the arrow down.',
  valid: { aql: [0.01, 10] },
  values: {
    n: [2, 3, 5, 8, 13, 20, 32, 50, 80, 125, 200, 315, 500, 800, 1250, 2000],
    aql: [0.01, 0.015, 0.025, 0.04, 0.065, 0.1, 0.15, 0.25, 0.4, 0.65, 1, 1.5, 2.5, 4, 6.5, 10],
    diagonal: [0, -1, -2, 1, 2, 3, 5, 7, 10, 14, 21],
  },
} as const satisfies Table;
