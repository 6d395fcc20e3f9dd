import type { Check } from '../../check.js';

const atmosphere = 101_325;

function sucrose(
  id: string,
  solids: number,
  expected: Check['expected'],
  tolerance: number,
  rest: Pick<Check, 'source' | 'standing' | 'kind' | 'note'>,
): Check {
  return {
    id: `sucrose.boiling_point.${id}`,
    model: 'sucrose.boiling_point',
    inputs: { solids, pressure_pa: atmosphere },
    output: 'boiling_point_c',
    expected,
    tolerance,
    ...rest,
  };
}

const browne = { source: 'browne-1912', standing: 'found', kind: 'measured' } as const;
const high = { ...browne, note: 'this old table lies above every other source from 70 % on; the tolerance was set after seeing that' };
const stages = { source: 'sugar-boiling-stages', standing: 'found', kind: 'published', note: 'band of a stage table' } as const;
const works = { source: 'thieme-1934', standing: 'memory', kind: 'published', note: 'sugar-works table as remembered' } as const;

/** A caramel with milk and fat: what is left when 12 % fat and 3 % protein stay out of the dissolved phase. */
function caramel(id: string, dextrose_equivalent: number, moisture: number, expected: number): Check {
  const sugars = 1 - moisture - 0.15;
  return {
    id: `syrup.boiling_point.caramel_${id}`,
    model: 'syrup.boiling_point',
    inputs: { water: moisture, sucrose: sugars / 2.25, glucose_syrup_solids: (sugars * 1.25) / 2.25, dextrose_equivalent },
    output: 'boiling_point_c',
    expected,
    tolerance: 3.5,
    kind: 'measured',
    source: 'caramel-cooks',
    standing: 'found',
    note: 'batch cooks; recipe assumed: 12 % fat and 3 % protein left out, sucrose to syrup solids 1 : 1.25, milk sugar counted with them',
  };
}

function single(solute: string, solids: number, expected: number, tolerance: number, note: string): Check {
  return {
    id: `solution.boiling_point.${solute}_${Math.round(100 * solids)}`,
    model: 'solution.boiling_point',
    inputs: { solute, solids, pressure_pa: atmosphere },
    output: 'boiling_point_c',
    expected,
    tolerance,
    kind: 'measured',
    source: 'miner-dalton-1953',
    standing: 'memory',
    note,
  };
}

export const boilingChecks: readonly Check[] = [
  sucrose('browne_20', 0.2, 100.6, 0.7, browne),
  sucrose('browne_40', 0.4, 101.5, 0.7, browne),
  sucrose('browne_60', 0.6, 103, 0.7, browne),
  sucrose('browne_70', 0.7, 106.5, 1.8, high),
  sucrose('browne_80', 0.8, 112, 2.9, high),
  sucrose('browne_86', 0.86, 119.3, 4.6, high),
  sucrose('browne_90', 0.9, 127.8, 6.2, high),
  sucrose('syrup_60', 0.6, 103, 0.5, {
    source: 'sugar-syrup-table',
    standing: 'found',
    kind: 'published',
    note: 'a second, independent table',
  }),
  sucrose('stage_85', 0.85, [112, 116], 2, stages),
  sucrose('stage_90', 0.9, [121, 130], 2, stages),
  sucrose('works_75', 0.75, 100 + 7, 1.3, works),
  sucrose('works_80', 0.8, 100 + 9.4, 1.3, works),
  sucrose('works_85', 0.85, 100 + 13, 1.3, works),
  sucrose('works_90', 0.9, 100 + 19.6, 3, works),
  caramel('12', 42, 0.12, 113.3),
  caramel('10', 42, 0.1, 116.7),
  {
    id: 'syrup.boiling_point.fructose_syrup_77',
    model: 'syrup.boiling_point',
    inputs: { water: 0.23, fructose: 0.55 * 0.77, glucose: 0.41 * 0.77, maltose: 0.04 * 0.77 },
    output: 'boiling_point_c',
    expected: 110,
    tolerance: 4,
    kind: 'published',
    source: 'fructose-syrup-pages',
    standing: 'found',
    note: 'a 55 % fructose syrup, 77 % solids; two trade pages with the same number',
  },
  {
    id: 'syrup.solids_from_boiling_point.caramel_10',
    model: 'syrup.solids_from_boiling_point',
    inputs: { sucrose: 0.75 / 2.25, glucose_syrup_solids: (0.75 * 1.25) / 2.25, temperature_c: 116.7, pressure_pa: atmosphere },
    output: 'moisture',
    expected: 0.1 / 0.85,
    tolerance: 0.014,
    kind: 'measured',
    source: 'caramel-cooks',
    standing: 'found',
    note: '10 % of the caramel is 11.8 % of its dissolved phase; tolerance of 3.5 K at 0.4 % per kelvin',
  },
  {
    id: 'solution.boiling_point.one_molal',
    model: 'solution.boiling_point',
    inputs: { solute: 'glucose', solids: 0.1527, pressure_pa: atmosphere },
    output: 'boiling_point_c',
    expected: 100.51 - 0.026,
    tolerance: 0.06,
    kind: 'published',
    source: 'de-nevers-2012',
    standing: 'found',
    note: 'worked example of an ideal 1 molal sugar solution, water at 100.00 °C; ours counts water as 99.974 °C',
  },
  single('glycerol', 0.6, 109, 1, 'not used in fitting'),
  single('glycerol', 0.7, 113.6, 1, 'not used in fitting'),
  single('glycerol', 0.8, 121, 1.5, 'not used in fitting'),
  single('glycerol', 0.95, 164, 4, 'not used in fitting'),
  single('glycerol', 0.5, 106, 0.5, 'used in fitting'),
];
