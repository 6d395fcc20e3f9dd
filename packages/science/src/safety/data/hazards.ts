import type { Table } from '../../sources.js';

/** Dust explosion figures of one sample each: Pmax bar, Kst bar m/s, MEC g/m³, MIE mJ, median µm. Test your own dust. */
export const dusts = {
  'sugar 28 µm': {
    source: 'food-dust-2017',
    standing: 'found',
    note: '20 L sphere; median 27.56 µm.',
    valid: {},
    values: { median: 27.56, pmax: 7.6, kst: 153 },
  },
  'flour 139 µm': {
    source: 'food-dust-2017',
    standing: 'found',
    note: '20 L sphere; median 138.5 µm.',
    valid: {},
    values: { median: 138.5, pmax: 6.1, kst: 61 },
  },
  'sugar ignition': {
    source: 'sucrose-dust-2022',
    standing: 'found',
    note: 'Least ignition energy 58.9 mJ at 417 g/m³ (62.6 mJ at 90 ms delay); cloud ignites at 340 °C. Strongest at about 625 g/m³ (another study).',
    valid: {},
    values: { mie: 58.9, mieConcentration: 417, cloudIgnition: 340, strongestConcentration: 625 },
  },
  'sugar 30 µm': {
    source: 'nfpa-68',
    standing: 'memory',
    note: 'Table of agricultural dusts, unverified.',
    valid: {},
    values: { median: 30, pmax: 8.5, kst: 138, mec: 200 },
  },
  'milk powder 83 µm': {
    source: 'nfpa-68',
    standing: 'memory',
    note: 'Table of agricultural dusts, unverified.',
    valid: {},
    values: { median: 83, pmax: 5.8, kst: 28, mec: 60 },
  },
  'lactose 27 µm': {
    source: 'nfpa-68',
    standing: 'memory',
    note: 'Table of agricultural dusts, unverified.',
    valid: {},
    values: { median: 27, pmax: 8.3, kst: 82, mec: 60 },
  },
  'cocoa powder 19 % fat': {
    source: 'usbm-ri-5753',
    standing: 'memory',
    note: 'Natural cocoa, through 74 µm sieve; 1.2 L Hartmann tube, whose pressures lie below those of the 20 L sphere and give no Kst. Layer glows from 240 °C.',
    valid: {},
    values: { pmax: 4.7, mec: 75, mie: 100, cloudIgnition: 510 },
  },
  'cocoa bean shell': {
    source: 'usbm-ri-5753',
    standing: 'memory',
    note: 'Through 74 µm sieve; Hartmann tube, no Kst. Layer glows from 370 °C.',
    valid: {},
    values: { pmax: 5.3, mec: 40, mie: 25, cloudIgnition: 470 },
  },
  'icing sugar': {
    source: 'usbm-ri-5753',
    standing: 'memory',
    note: 'Powdered sugar through 74 µm sieve; Hartmann tube, no Kst. A low ignition energy: earth the plant.',
    valid: {},
    values: { pmax: 7.5, mec: 45, mie: 30, cloudIgnition: 370 },
  },
  'skim milk powder': {
    source: 'usbm-ri-5753',
    standing: 'memory',
    note: 'Through 74 µm sieve; Hartmann tube, no Kst. Layer glows from 200 °C.',
    valid: {},
    values: { pmax: 6.6, mec: 50, mie: 50, cloudIgnition: 490 },
  },
  'milk powder 60 µm, nonfat': {
    source: 'nfpa-68',
    standing: 'memory',
    note: 'Table of agricultural dusts, unverified.',
    valid: {},
    values: { median: 60, pmax: 8.8, kst: 125 },
  },
  'peanut hull': {
    source: 'usbm-ri-5753',
    standing: 'memory',
    note: 'Through 74 µm sieve; Hartmann tube, no Kst. Layer glows from 210 °C.',
    valid: {},
    values: { pmax: 8, mec: 45, mie: 50, cloudIgnition: 460 },
  },
} as const satisfies Record<string, Table>;
export type DustKey = keyof typeof dusts;

/** Dust explosion classes by Kst, bar m/s: St 1 to 200, St 2 to 300, St 3 above. */
export const dustClasses = {
  source: 'iso-6184-1',
  standing: 'memory',
  note: 'Classes by the cubic law Kst = (dP/dt)max V^(1/3).',
  valid: {},
  values: { st1: 200, st2: 300, layer: 0.8, cloudShare: 0.25 },
} as const satisfies Table;

/** Contact of skin with hot water, mass or surface: temperature °C and seconds to full-thickness or irreversible injury. */
export const burns = {
  source: 'moritz-henriques-1947',
  standing: 'secondhand',
  note: '30 s at 54 °C and 6 h at 44 °C read on a page; 5 min at 49, 6 s at 60 and 2 s at 66 °C from memory of the scald tables. About a second at 70 °C. Sticking masses go on burning.',
  valid: { temperature: [44, 70] },
  values: { temperature: [44, 48.9, 54, 60, 65.6, 70], seconds: [21_600, 300, 30, 6, 2, 1], instant: 70 },
} as const satisfies Table;

/** Burn thresholds of touchable surfaces: temperature, °C, at and above which unprotected healthy adult skin burns after a contact time. */
export const surfaceThresholds = {
  source: 'iso-13732-1',
  standing: 'memory',
  note: 'From 1 min on as tabled (51, 56, 60 °C; 48 °C from 10 min; 43 °C from 8 h); at 1 s the lower end of the printed band. Between them log time is straight (ours). Children: shorter times do not help them, they let go late.',
  valid: { contact: [1, 28_800] },
  values: {
    contact: [1, 60, 600, 28_800],
    'bare metal': [65, 51, 48, 43],
    'coated metal': [65, 51, 48, 43],
    'ceramic, glass, stone': [80, 56, 48, 43],
    plastic: [85, 60, 48, 43],
    wood: [110, 60, 48, 43],
  },
} as const satisfies Table;

/** Roaster fire practice. */
export const roasterFire = {
  source: 'common-practice',
  standing: 'memory',
  note: 'Alarm when the exhaust is 15 K above its set point; chaff collector emptied every batch; water quench, tested.',
  valid: {},
  values: { exhaustAlarm: 15 },
} as const satisfies Table;

/** Hard or sharp objects: length in mm that makes food unfit, ready to eat. */
export const hardObjects = {
  source: 'fda-cpg-555-425',
  standing: 'found',
  note: 'From 7 mm (found) to 25 mm (memory) in length; below 7 mm only for special risk groups.',
  valid: {},
  values: { from: 7, to: 25 },
} as const satisfies Table;

/** Sphere diameters of test pieces, mm: typical critical limits, not law. */
export const testPieces = {
  source: 'common-practice',
  standing: 'secondhand',
  note: 'Conveyor detector on chocolate bars: iron 1.5, non-iron 2.0, stainless 2.5; tested each 30 to 60 min. A small aperture (125 mm) on dry bars can do 1.0, 1.5 and 2.0 (memory).',
  valid: {},
  values: { iron: 1.5, nonIron: 2, stainless: 2.5, intervalMinutes: [30, 60] },
} as const satisfies Table;

/** Reference doses of allergens, mg of total protein. */
export const referenceDoses = {
  source: 'fao-who-2022-allergens',
  standing: 'found',
  note: 'Expert consultation part 2. Milk and hazelnut from memory. Not law.',
  valid: {},
  values: { peanut: 2, egg: 2, almond: 1, wheat: 5, milk: 2, hazelnut: 3 },
} as const satisfies Table;
export type Allergen = keyof (typeof referenceDoses)['values'];

/** Milk chocolate left in a valve and 30 cm of 1.5 in pipe, pushed out by dark chocolate. */
export const pushThrough = {
  source: 'zhang-2024',
  standing: 'found',
  note: 'First chocolate 4500 to 6070 µg/g milk without cleaning, 45 to 180 after a pig; below 2.5 µg/g only after 16.2 kg or more (most treatments above 14 kg). All are bounds.',
  valid: {},
  values: { first: [4500, 6070], pig: [45, 180], quantified: 2.5, mass: 16.2, holdup: 0.368, ratio: 5.6 },
} as const satisfies Table;
