import type { Table } from '../../sources.js';

/** Cut-test limits, share of beans by count: mouldy, slaty, and insect-damaged, germinated or flat together. */
export const cutTestGrades = {
  source: 'cocoa-grade-standard',
  standing: 'secondhand',
  note: 'Two trade pages quoting the international cocoa standard. One of them prints 8 % mouldy in grade 2; 4 % (the other page) is taken.',
  valid: {},
  values: { mouldy: [0.03, 0.04], slaty: [0.03, 0.08], defective: [0.03, 0.06] },
} as const satisfies Table;

/** Limits by mass of the reference sample, edition 2016. */
export const iso2451of2016 = {
  source: 'iso-2451-2016',
  standing: 'found',
  note: 'Clauses 5.2.x as extracted on a page. Sieving: annex B. Moisture wet basis.',
  valid: {},
  values: { relatedMatter: 0.035, flatBeans: 0.015, sieving: 0.015, moistureLoading: 0.08, moistureDischarge: 0.075 },
} as const satisfies Table;

/** Bean size classes, beans per 100 g, and the moisture limit of edition 2014. */
export const iso2451of2014 = {
  source: 'iso-2451-2014',
  standing: 'found',
  note: 'Large up to 100, medium 101 to 120, small above 120. Older trade ladders with a class 111 to 120 are not of this edition.',
  valid: {},
  values: { largeUpTo: 100, mediumUpTo: 120, moisture: 0.075 },
} as const satisfies Table;

/** What makers ask of a bean lot. */
export const beanWishes = {
  source: 'cocoa-quality-guide',
  standing: 'secondhand',
  note: 'Bean at least 1.0 g; shell 10 to 14 % of the dry bean; free fatty acids at most 1.25 % of the fat (limit of the butter 1.75 %).',
  valid: {},
  values: { beanMass_g: 1, shell: [0.1, 0.14], freeFattyAcids: 0.0125, butterFreeFattyAcids: 0.0175 },
} as const satisfies Table;

/** Category B beans of Ghana at the ends of the moisture range tested; lengths in mm, masses in g, densities in kg/m³. */
export const ghanaBeans = {
  source: 'bart-plange-2003',
  standing: 'found',
  note: 'Abstract: end values only, straight lines between are ours. 1000-bean mass and shell are paired with 8.6 % and 24 %, sizes with 5 % and 24 %. The printed porosity does not follow from the two densities (0.41 would).',
  valid: { moisture: [0.05, 0.24] },
  values: {
    sizeMoisture: [0.05, 0.24],
    length: [22.41, 22.5],
    width: [12.2, 12.86],
    thickness: [7.36, 7.7],
    massMoisture: [0.086, 0.24],
    thousandBeans: [1125, 1247],
    shell: [0.107, 0.196],
    sphericity: [0.57, 0.58],
    density: [946, 991],
    bulkDensity: [560, 505],
    porosity: [0.2058, 0.3159],
  },
} as const satisfies Table;

/** Drag of non-spherical particles, coefficients of b1 to b4 in powers of the sphericity. */
export const dragOfShapes = {
  source: 'haider-levenspiel-1989',
  standing: 'secondhand',
  note: 'C_D = 24/Re (1 + b1 Re^b2) + b3 Re/(b4 + Re); read in a solver manual quoting the paper. The sphere set is the same with sphericity 1.',
  valid: { reynolds: [0, 2.6e5], sphericity: [0.5, 1] },
  values: {
    b1: [2.3288, -6.4581, 2.4486],
    b2: [0.0964, 0.5565],
    b3: [4.905, -13.8944, 18.4222, -10.2599],
    b4: [1.4681, 12.2584, -20.7322, 15.8855],
  },
} as const satisfies Table;

/** Shell in nib by weight of alkali-free nib, US standard of identity; action level 2 % of the defect list. */
export const nibShell = {
  source: 'cfr-21-163-110',
  standing: 'found',
  note: 'Not more than 1.75 % of shell, calculated on alkali-free nib.',
  valid: {},
  values: { limit: 0.0175 },
} as const satisfies Table;
