import type { Table } from '../../sources.js';

/** Share of the gas of a whipped mass that is lost on the way to the slab. */
export const gasLosses = {
  source: 'common-practice',
  standing: 'memory',
  note: 'Common practice, no source: ranges that plants report. Measure your own with the density cup before and after.',
  valid: { air_fraction: [0.2, 0.6] },
  values: { fat_addition: [0.05, 0.15], pumping_and_sheeting: [0.02, 0.1] },
} as const satisfies Table;

/** Stiffness of aerated confectionery goes as (rho - rho_c)³, rho_c at an air fraction of 0.6. */
export const foamStiffness = {
  source: 'decker-ziegler-2003',
  standing: 'found',
  note: 'Abstract. The exponent is for mechanical modulus against density at one composition.',
  valid: { air_fraction: [0.1, 0.55] },
  values: { critical_air_fraction: 0.6, exponent: 3 },
} as const satisfies Table;
