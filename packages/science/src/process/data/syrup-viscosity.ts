import type { Table } from '../../sources.js';

/** log10(eta / 1e12 Pa s) = -C1 x / (C2 + x), x = T - Tg; C2 = c2[0] + c2[1] w, w water in the syrup phase. */
export const syrupWlf = {
  source: 'crc-102-solutions',
  standing: 'found',
  note:
    'Our fit to sucrose solutions of 56 to 76 % at 20 to 100 °C (handbook table and the sugar-works polynomial that follows it) and to honey of ' +
    '16 % water at 14 to 70 °C, with our glass transition of the mixture. Residual 0.07 decades; other sugars and honeys were not used.',
  valid: { water: [0.13, 0.45], temperature_c: [10, 100] },
  values: { c1: 16.83, c2: [45.8, -37], glass_viscosity: 1e12 },
} as const satisfies Table;

/** log10 of what chains add beyond their glass transition: perDoubling × share of chains in the syrup phase × log2(mean length / 2). */
export const chainThickening = {
  source: 'corn-syrup-viscosities',
  standing: 'memory',
  note:
    'Our reading of the usual table of corn syrups, recalled: 28 DE 78 % 31.5 Pa s, 36 DE 79.9 % 30, 42 DE 80.3 % 14.5, 54 DE 81 % 8, 63 DE ' +
    '81.7 % 5.5, all at 37.8 °C; 42 DE also 56 at 26.7 and 2 at 60 °C. One constant fits them within 0.15 decades, at every temperature alike.',
  valid: { dextrose_equivalent: [28, 63] },
  values: { per_doubling: 1 },
} as const satisfies Table;

/** What thickens a syrup when it becomes a caramel. */
export const caramelSuspension = {
  source: 'krieger-dougherty-1959',
  standing: 'memory',
  note:
    'Krieger-Dougherty with intrinsic viscosity 2.5 and densest packing 0.71 (many sizes). Milk protein swollen to 2.5 mL/g (memory). ' +
    'Real caramels are thicker still, for their protein network: calibrate with the plant factor.',
  valid: { volume_fraction: [0, 0.6] },
  values: { intrinsic: 2.5, packing: 0.71, protein_volume: 2.5e-3 },
} as const satisfies Table;
