import type { Source } from '../sources.js';

/** Works behind the safety models and the statistics they use. */
export const safetySources = {
  'abramowitz-stegun-1964': { title: 'M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions (1964), ch. 6, 7 and 26' },
  'wichura-1988': {
    title: 'M. J. Wichura, Algorithm AS 241: The percentage points of the normal distribution, Applied Statistics 37 (1988) 477',
  },
  'clopper-pearson-1934': { title: 'C. J. Clopper, E. S. Pearson, The use of confidence or fiducial limits, Biometrika 26 (1934) 404' },
} as const satisfies Record<string, Source>;
