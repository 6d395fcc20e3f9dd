import type { Table } from '../../sources.js';

/** Relative humidity over saturated salts, per cent: a0 + a1 t + a2 t² + a3 t³. */
export const saturatedSalts = {
  source: 'greenspan-1977',
  standing: 'found',
  note:
    'Coefficients read in public code, sodium bromide and magnesium nitrate from memory. Two codes print the second term of lithium chloride with a ' +
    'minus, which misses the printed 11.30 % at 25 °C; a plus meets it.',
  valid: { temperature_c: [0, 80] },
  values: {
    lithium_chloride: [11.2323, 0.00824245, -0.21489e-3, 0],
    potassium_acetate: [22.4388, 0.156288, -0.612868e-2, 0],
    magnesium_chloride: [33.6686, -0.00797397, -0.108988e-2, 0],
    potassium_carbonate: [43.1315, -0.00147523, 0, 0],
    magnesium_nitrate: [60.3514, -0.29516, 0, 0],
    sodium_bromide: [65.9721, -0.346858, 0.100929e-2, 0],
    sodium_chloride: [75.5164, 0.0398321, -0.265459e-2, 0.2848e-4],
    potassium_chloride: [88.619, -0.19334, 0.899706e-3, 0],
    potassium_nitrate: [96.3361, 0.0112371, -0.484514e-2, 0],
    potassium_sulfate: [98.7792, -0.0590502, 0, 0],
  },
} as const satisfies Table;

/** Temperatures over which each was fitted, °C. */
export const saltRanges = {
  lithium_chloride: [0, 80],
  potassium_acetate: [0, 30],
  magnesium_chloride: [0, 80],
  potassium_carbonate: [0, 30],
  magnesium_nitrate: [0, 50],
  sodium_bromide: [0, 80],
  sodium_chloride: [0, 80],
  potassium_chloride: [0, 80],
  potassium_nitrate: [0, 50],
  potassium_sulfate: [0, 50],
} as const;
