import type { Table } from '../../sources.js';

/** Outgoing quality of US shelled runner peanuts, other than splits. */
export const usOutgoing = {
  source: 'cfr-7-996-31',
  standing: 'found',
  note: '7 CFR 996.31(a): damaged kernels and minor defects 3.50 %, fall-through of the 17/64 in round screen 6.00 %, foreign material 0.20 %, moisture 9.00 %.',
  valid: {},
  values: { damage: 0.035, fallThrough: 0.06, foreignMaterial: 0.002, moisture: 0.09 },
} as const satisfies Table;

/** What is asked of raw kernels for roasting. */
export const kernelPractice = {
  source: 'common-practice',
  standing: 'memory',
  note: 'Moisture 5 to 7 %, peroxide value at most 2 meq/kg oil (1 after roasting), free fatty acids at most 0.5 % of the oil as oleic.',
  valid: {},
  values: { moisture: [0.05, 0.07], peroxideRaw: 2, peroxideRoasted: 1, freeFattyAcids: 0.005 },
} as const satisfies Table;
