import type { Table } from '../../sources.js';

/** Solid fat of well-tempered cocoa butter, West African, against temperature; stabilised (26 °C, 40 h) before pulsed NMR. */
export const cocoaButterSolids = {
  source: 'cocoa-butter-sfc',
  standing: 'memory',
  note: 'Common figures of the trade for West African butter, spread of about 5 points; 5 and 10 °C and above 32.5 °C by shape. No printed table could be read.',
  valid: { temperature_c: [5, 36] },
  values: {
    temperature: [0, 5, 10, 15, 20, 25, 28, 30, 32.5, 34, 35, 36.5],
    solids: [0.93, 0.915, 0.89, 0.85, 0.76, 0.71, 0.59, 0.45, 0.14, 0.04, 0.01, 0],
  },
} as const satisfies Table;

/** Solid fat at 20, 25, 30, 35 °C by origin. */
export const cocoaButterOrigins = {
  source: 'cocoa-butter-sfc',
  standing: 'memory',
  note: 'Table of the 1990s literature on tempered butters, from memory: use as the spread between origins.',
  valid: { temperature_c: [20, 35] },
  values: {
    temperature: [20, 25, 30, 35],
    brazil: [0.626, 0.533, 0.233, 0.01],
    'ivory-coast': [0.751, 0.667, 0.428, 0],
    ghana: [0.76, 0.696, 0.45, 0],
    malaysia: [0.826, 0.771, 0.577, 0.026],
  },
} as const satisfies Table;

/** Solid fat of anhydrous milk fat by itself, by pulsed NMR. */
export const milkFatSolids = {
  source: 'milk-fat-sfc',
  standing: 'memory',
  note: 'Usual figures of bovine milk fat, spread of 5 to 8 points with season and feed.',
  valid: { temperature_c: [0, 40] },
  values: { temperature: [-10, 0, 5, 10, 15, 20, 25, 30, 35, 40], solids: [0.8, 0.65, 0.57, 0.5, 0.35, 0.19, 0.1, 0.05, 0.01, 0] },
} as const satisfies Table;

/** How fats soften each other: each fat is read at a temperature shifted up by k times the share of the other, and weighs by its own share. */
export const softening = {
  source: 'cocoa-butter-sfc',
  standing: 'memory',
  note: 'K per unit share of total fat. Milk fat in cocoa butter and the other way: 1.5 K per 10 %. Oil that is liquid: 2 K per 10 %. Equivalent fats: none. Calibrate on own NMR.',
  valid: { milk_fat_share: [0, 0.35], oil_share: [0, 0.2] },
  values: { milkFat: 15, oil: 20 },
} as const satisfies Table;

/** Melting points of the six forms. */
export const polymorphs = {
  source: 'wille-lutton-1966',
  standing: 'secondhand',
  note: 'Melting points as quoted in an encyclopaedia. Range of melting points over six laboratories, and heats of melting, J/kg, from memory; heats ±10 %, form I ±20 %.',
  valid: {},
  values: {
    melting: [17.3, 23.3, 25.5, 27.5, 33.8, 36.3],
    lowest: [13, 17.7, 22.4, 25, 30, 33.5],
    highest: [18, 24.4, 28, 28.5, 34.9, 36.5],
    heat: [75_000, 88_000, 113_000, 118_000, 137_000, 148_000],
    heatSpread: [0.2, 0.1, 0.1, 0.1, 0.1, 0.1],
  },
} as const satisfies Table;

/** Thermal constants of chocolate and its parts. */
export const thermal = {
  source: 'beckett-constants-2009',
  standing: 'found',
  note: 'Useful Physical Constants, pp. 667-668.',
  valid: { temperature_c: [15, 40] },
  values: {
    chocolateHeat: 1590,
    butterSolidHeat: 2010,
    butterLiquidHeat: 2090,
    massSolidHeat: 1970,
    butterLatent: 157_000,
    milkChocolateLatent: 44_000,
  },
} as const satisfies Table;

/** Thermal conductivity of what a chocolate is made of, W/(m K). */
export const conductivities = {
  source: 'choi-okos-1986',
  standing: 'secondhand',
  note: 'Liquid fat on the Choi-Okos line; crystalline fat 0.21 and non-sugar solids 0.22 from memory; crystalline sugar 0.58 (Mohos, table A1.2). The print of liquid butter, 0.12, lies below every other oil.',
  valid: { temperature_c: [0, 80] },
  values: { liquidFat: [0.18071, -2.7604e-4], solidFat: 0.21, sugar: 0.58, rest: 0.22 },
} as const satisfies Table;

/** Specific heat of crystalline sucrose, cp = a + b T, J/(kg K), T in °C. */
export const sugarHeat = {
  source: 'mohos-2010-app',
  standing: 'secondhand',
  note: 'Line through table A1.3 (0 to 80 °C), within 10 J/(kg K) of its values. The rest of a chocolate at 1600, between cocoa solids (about 1750) and milk solids (about 1500) on the Choi-Okos lines.',
  valid: { temperature_c: [0, 90] },
  values: { a: 1097.1, b: 5.391, rest: 1600 },
} as const satisfies Table;
