import type { Table } from '../../sources.js';

/** A published series of decimal reduction times: `temperature` °C rising, `d` min, `sd` of d where printed. */
export interface DStudy extends Table {
  readonly organism: string;
  readonly matrix: string;
  readonly values: { readonly temperature: readonly number[]; readonly d: readonly number[]; readonly sd?: readonly number[] };
}

/** Heat resistance measured in low-moisture foods. Conditions belong to each study; none proves a plant's step. */
export const dStudies = {
  'salmonella cocoa bean': {
    organism: 'Salmonella Oranienburg',
    matrix: 'whole cocoa beans, roasted',
    source: 'yan-2021',
    standing: 'found',
    note: 'Log-linear D of the abstract. Its Weibull fits were better with a shape below 1 (tailing), so more than 5 log may not be read from D. Roaster temperature, not that of the bean.',
    valid: { temperature: [100, 140], logReduction: [0, 5] },
    values: { temperature: [100, 110, 115, 120, 130, 140], d: [33.34, 18.57, 12.92, 10.5, 4.2, 1.9] },
  },
  'salmonella cocoa powder': {
    organism: 'Salmonella, three strains',
    matrix: 'cocoa powder, water activity 0.30 at 25 °C',
    source: 'tsai-2019',
    standing: 'found',
    note: 'Journal abstract. The conference abstract of the same group prints 46.0, 22.1 and 13.3 min.',
    valid: { temperature: [70, 80], waterActivity: [0.3, 0.3] },
    values: { temperature: [70, 75, 80], d: [46.2, 20.5, 11.5], sd: [4.7, 1.7, 0.9] },
  },
  'enterococcus cocoa powder': {
    organism: 'Enterococcus faecium NRRL B-2354 (surrogate)',
    matrix: 'cocoa powder, water activity 0.30 at 25 °C',
    source: 'iafp-2017-cocoa-powder',
    standing: 'found',
    note: 'Conference abstract; the journal abstract prints 59.9 at 70 and 28.9 at 75 °C, 1.8 and 1.4 times lower, so the spread printed (4.4, 3.3 and 0.1 min) is widened to a factor of 1.8. The margin over Salmonella shrinks with temperature.',
    valid: { temperature: [70, 80], waterActivity: [0.3, 0.3] },
    values: { temperature: [70, 75, 80], d: [105.4, 40.7, 18.3], sd: [23, 9, 4] },
  },
  'salmonella peanut butter dry': {
    organism: 'Salmonella enterica, five strains',
    matrix: 'peanut butter, equilibrated to 25 % relative humidity',
    source: 'iafp-2017-peanut-butter',
    standing: 'found',
    note: 'D at 90 °C printed with z of 14.9 and 15.5 K of two laboratories; the ends are carried by 15.2 K. Far slower and steeper than the flowing peanut butter of the other study: water activity rules.',
    valid: { temperature: [85, 100], waterActivity: [0.25, 0.25] },
    values: { temperature: [85, 90, 100], d: [26.9, 12.62, 2.77], sd: [3, 0.8, 0.4] },
  },
  'enterococcus peanut butter dry': {
    organism: 'Enterococcus faecium NRRL B-2354 (surrogate)',
    matrix: 'peanut butter, equilibrated to 25 % relative humidity',
    source: 'iafp-2017-peanut-butter',
    standing: 'found',
    note: 'D at 90 °C printed with z of 13.0 and 12.2 K of two laboratories; the ends are carried by 12.6 K.',
    valid: { temperature: [85, 100], waterActivity: [0.25, 0.25] },
    values: { temperature: [85, 90, 100], d: [53.2, 21.35, 3.43], sd: [6, 1.3, 0.5] },
  },
  'salmonella whole milk powder': {
    organism: 'Salmonella, five serotypes',
    matrix: 'whole milk powder, water activity 0.10, stored 30 days',
    source: 'milk-powder-storage',
    standing: 'found',
    note: 'Abstract; a Weibull law fitted better than the log-linear one. Nonfat powder slightly slower.',
    valid: { temperature: [85, 95], waterActivity: [0.1, 0.1] },
    values: { temperature: [85, 90, 95], d: [7.98, 3.35, 1.68] },
  },
  'enterococcus whole milk powder': {
    organism: 'Enterococcus faecium NRRL B-2354 (surrogate)',
    matrix: 'whole milk powder, water activity 0.10, stored 30 days',
    source: 'milk-powder-storage',
    standing: 'found',
    note: 'Abstract; a Weibull law fitted better than the log-linear one.',
    valid: { temperature: [85, 95], waterActivity: [0.1, 0.1] },
    values: { temperature: [85, 90, 95], d: [16.96, 7.9, 4.16] },
  },
  'enterococcus peanut butter dough': {
    organism: 'Enterococcus faecium NRRL B-2354 (surrogate)',
    matrix: 'peanut butter cookie dough, moisture 8 %, water activity 0.421',
    source: 'cookie-dough-stec',
    standing: 'found',
    note: 'Abstract.',
    valid: { temperature: [75, 85], waterActivity: [0.421, 0.421] },
    values: { temperature: [75, 80, 85], d: [15.5, 5.02, 2.02] },
  },
  'salmonella peanut butter': {
    organism: 'Salmonella enterica',
    matrix: 'flowing peanut butter',
    source: 'pelaez-2020',
    standing: 'found',
    note: 'Printed z 44.5 °C; a straight line through the five values gives 43.8 °C.',
    valid: { temperature: [60, 80] },
    values: { temperature: [60, 65, 70, 75, 80], d: [47.98, 40.07, 31.23, 25.54, 16.15] },
  },
  'salmonella peanut butter dough': {
    organism: 'Salmonella',
    matrix: 'peanut butter cookie dough, moisture 8 %, water activity 0.421',
    source: 'cookie-dough-stec',
    standing: 'found',
    note: 'Abstract.',
    valid: { temperature: [75, 85], waterActivity: [0.421, 0.421] },
    values: { temperature: [75, 85], d: [4.97, 1.23] },
  },
  'salmonella dark chocolate': {
    organism: 'Salmonella',
    matrix: 'dark chocolate, conching',
    source: 'krapf-2010',
    standing: 'found',
    note: 'One temperature only; most probable number, about 20 %. No z is usable from this abstract.',
    valid: { temperature: [50, 50] },
    values: { temperature: [50], d: [1574] },
  },
  'salmonella cocoa liquor': {
    organism: 'Salmonella',
    matrix: 'cocoa liquor, conching',
    source: 'krapf-2010',
    standing: 'found',
    note: 'One temperature only. The printed z of 20 °C does not connect the printed end points.',
    valid: { temperature: [50, 50] },
    values: { temperature: [50], d: [999] },
  },
  'salmonella cocoa butter': {
    organism: 'Salmonella',
    matrix: 'cocoa butter, conching',
    source: 'krapf-2010',
    standing: 'found',
    note: 'The abstract prints a larger D at 60 °C (306) than at 50 °C: no z in cocoa butter.',
    valid: { temperature: [50, 60] },
    values: { temperature: [50, 60], d: [245, 306] },
  },
} as const satisfies Record<string, DStudy>;
export type DStudyKey = keyof typeof dStudies;

/** Milk chocolate: log10 D = log10 47.4 - (T - 70)/18.5 - (aw - 0.23)/0.44, D in min, water activity set at 21 °C. */
export const milkChocolateD = {
  source: 'sun-2022',
  standing: 'secondhand',
  note: 'D at 70 °C, aw 0.23 and the water-activity z (0.42 at 70, 0.46 at 80 °C) found; the temperature z of 18.5 is borrowed from cocoa powder. Older work in chocolate is 9 to 29 times slower.',
  valid: { temperature: [70, 80], waterActivity: [0.23, 0.43] },
  values: { reference: 47.4, temperature: 70, waterActivity: 0.23, zTemperature: 18.5, zWaterActivity: 0.44 },
} as const satisfies Table;

/** Older, slower heat resistance in chocolate as it is. */
export const chocolateHistoric = {
  source: 'barrile-cone-1970',
  standing: 'secondhand',
  note: 'D 20 h at 71 °C in chocolate as it is. For a safety argument the slowest set counts: conching and tempering are never a kill step.',
  valid: { temperature: [71, 71] },
  values: { temperature: 71, d: 1200 },
} as const satisfies Table;

/** Spores of Bacillus cereus on cocoa nibs: Weibull log reduction (t/δ)^p; δ and the time of 4 log, min. */
export const cereusNibs = {
  source: 'iafp-2016-bacillus',
  standing: 'found',
  note: 'δ at 110 and 140 °C, 4-log time at 110 and 125 °C; straight lines of the logarithms between. Roasting does not kill spores.',
  valid: { temperature: [110, 140] },
  values: { deltaTemperature: [110, 140], delta: [79.2, 24.1], fourTemperature: [110, 125], four: [281.1, 107.2] },
} as const satisfies Table;

/** Decline of Salmonella in a dry protein powder in store, log10 per day: 0.0069 × 10^((T - 36)/12.4 + 1.92 (aw - 0.33)). */
export const storeDecline = {
  source: 'farakos-2013',
  standing: 'secondhand',
  note: 'Our fit to mean decline rates at 36 and 50 °C. At 20 °C it is below 0.001 per day: storage controls nothing.',
  valid: { temperature: [36, 50], waterActivity: [0.17, 0.58] },
  values: { reference: 0.0069, temperature: 36, zTemperature: 12.4, waterActivity: 0.33, slope: 1.92 },
} as const satisfies Table;

/** Air-blown dry roasting of peanuts, surrogate at the middle of the bed: minutes at which more than 5 log had gone. */
export const peanutBedStudy = {
  source: 'poirier-2014',
  standing: 'found',
  note: 'Only at 75 mm and 1.3 m/s. At 1.0 m/s and 16 min at most 3 log. Process figures of that roaster, no D values.',
  valid: { airTemperature: [149, 177], bedDepth: [0.075, 0.075], airVelocity: [1.3, 1.3] },
  values: {
    airTemperature: [149, 163, 177],
    minutes: [21, 15, 11],
    velocity: 1.3,
    depth: 0.075,
    slowVelocity: 1,
    slowMinutes: 16,
    slowLog: 3,
  },
} as const satisfies Table;

/** Laboratory dry roasting of peanuts with Salmonella. */
export const peanutLabStudy = {
  source: 'sanders-calhoun-2014',
  standing: 'found',
  note: '4.6 to 4.7 log at 154 °C for 10 min, above 5.4 after 15 min; every test of 129 to 163 °C at least 2.7 log. Oil at 150 °C: above 6.0 log in 1.5 min.',
  valid: { airTemperature: [129, 163] },
  values: { airTemperature: 154, minutes: [10, 15], log: [4.65, 5.4], leastOfAll: 2.7, oilTemperature: 150, oilMinutes: 1.5, oilLog: 6 },
} as const satisfies Table;

/** Log reductions that are asked for; what a plant must reach is set by its own hazard analysis and its law. */
export const targets = {
  source: 'fr-74-50681',
  standing: 'found',
  note: 'US almonds 4 log (74 FR 50681). Cocoa 6 log and peanuts 5 log are industry practice, second hand.',
  valid: {},
  values: { almond: 4, cocoa: 6, peanut: 5 },
} as const satisfies Table;
