import type { Source } from '../source.js';

/** Works behind water, air, atmosphere and conduction. */
export const coreSources = {
  'iapws-if97': { title: 'IAPWS R7-97(2012): Revised Release on the IAPWS Industrial Formulation 1997, region 4' },
  'iapws-r14-08': {
    title: 'IAPWS R14-08(2011): Revised Release on the Pressure along the Melting and Sublimation Curves of Ordinary Water Substance',
  },
  'iapws-sr1-86': { title: 'IAPWS SR1-86(1992): Revised Supplementary Release on Saturation Properties of Ordinary Water Substance' },
  'murphy-koop-2005': {
    title: 'D. M. Murphy, T. Koop: Review of the vapour pressures of ice and supercooled water, Q. J. R. Meteorol. Soc. 131 (2005) 1539',
  },
  'iso-2533-1975': { title: 'ISO 2533:1975 Standard Atmosphere' },
  'ashrae-2017-ch1': { title: 'ASHRAE Handbook: Fundamentals (2017), ch. 1, Psychrometrics, tables 1 to 3' },
  'wmo-8': { title: 'WMO-No. 8, Guide to Meteorological Instruments: saturation vapour pressures over water and ice' },
  'steam-tables': { title: 'Saturated water and steam tables (values common to the IAPWS-IF97 based tables)' },
} as const satisfies Record<string, Source>;
