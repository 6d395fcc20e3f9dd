import type { Source } from '../sources.js';

/** Works behind water, air, atmosphere and conduction. */
export const coreSources = {
  'iapws-if97': { title: 'IAPWS R7-97(2012): Revised Release on the IAPWS Industrial Formulation 1997, region 4' },
  'iso-2533-1975': { title: 'ISO 2533:1975 Standard Atmosphere' },
} as const satisfies Record<string, Source>;
