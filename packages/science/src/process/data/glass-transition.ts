import type { Table } from '../../sources.js';

/** Glass transition of the dry solid, °C, and Gordon-Taylor k against water at -135 °C. */
export const glassTable = {
  source: 'gordon-taylor-table-2016',
  standing: 'found',
  note:
    'Pairs [Tg °C, k]. Fructose, glucose, maltose, maltodextrins of DE 20 and 5, and starch as printed; sucrose, lactose, maltodextrins of ' +
    'DE 10, 25 and 36 as recalled from the same author (memory). Polyols: sorbitol, memory. Other tables differ by up to 10 K.',
  valid: { water: [0, 0.3] },
  values: {
    water: [-135, 1],
    sucrose: [62, 5.42],
    glucose: [31, 4.5],
    fructose: [5, 3.8],
    maltose: [87, 6.2],
    lactose: [101, 6.56],
    polyols: [-5, 3.5],
    maltodextrin_de36: [100, 6.2],
    maltodextrin_de25: [121, 6.5],
    maltodextrin_de20: [141, 6.8],
    maltodextrin_de10: [160, 7.2],
    maltodextrin_de5: [188, 7.7],
    starch: [250, 5.2],
  },
} as const satisfies Table;

/** The series of glucose chains by DE (100 x 180.16 / Mn): the rows of `glassTable` in order, and the limit of long chains. */
export const chainSeries = {
  source: 'gordon-taylor-table-2016',
  standing: 'secondhand',
  note: 'Dextrose equivalent taken as 18016/Mn, so maltose stands at 52.6. Limit 243 °C after Roos and Karel, from memory.',
  valid: { dextrose_equivalent: [0, 100] },
  values: {
    dextrose_equivalent: [0, 5, 10, 20, 25, 36, 52.6, 100],
    tg: [243, 188, 160, 141, 121, 100, 87, 31],
    k: [8.2, 7.7, 7.2, 6.8, 6.5, 6.2, 6.2, 4.5],
  },
} as const satisfies Table;

/** Glass formers that no constituent of a composition stands for, as pairs [Tg °C of the dry solid, k] like `glassTable`. */
export const otherGlassFormers = {
  source: 'roos-1993',
  standing: 'memory',
  note:
    'Trehalose, maltitol, xylitol, galactose as recalled from the paper, whose k follow 0.0293 Tg + 3.61. By that rule also: isomalt, lactitol ' +
    'and erythritol (Tg found in a data base of glycans), maltotriose (Orford), raffinose, citric acid (memory).',
  valid: { water: [0, 0.3] },
  values: {
    trehalose: [100, 6.54],
    maltitol: [39, 4.75],
    xylitol: [-29, 2.76],
    erythritol: [-53, 2.06],
    isomalt: [63.6, 5.47],
    lactitol: [52, 5.13],
    galactose: [30, 4.49],
    maltotriose: [134, 7.54],
    raffinose: [104, 6.66],
    citric_acid: [11, 3.93],
  },
} as const satisfies Table;
