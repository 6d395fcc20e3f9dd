import { readClock, type Clock } from './clock.js';
import { readNumbers, timeCells, type Wanted } from './columns.js';
import { BadTable } from './bad-table.js';
import { tableOf } from './table.js';

/** Series of a temperer, one value for each test; NaN where a cell is empty. SI, but the slope in K/min. */
export interface TemperSeries {
  readonly slope?: Float64Array;
  readonly index?: Float64Array;
  readonly chocolate?: Float64Array;
  readonly coolant?: Float64Array;
  readonly throughput?: Float64Array;
  readonly inlet?: Float64Array;
  readonly yieldValue?: Float64Array;
  readonly plasticViscosity?: Float64Array;
}

/** A log of temper tests, or one cooling curve of a sample. */
export type TemperTable =
  | { readonly kind: 'tests'; readonly clock: Clock; readonly series: TemperSeries; readonly said: readonly string[] }
  | { readonly kind: 'curve'; readonly time: Float64Array; readonly temperature: Float64Array; readonly said: readonly string[] };

const wanted: Readonly<Record<keyof TemperSeries, Wanted>> = {
  slope: { what: 'slope', match: /slope/, dimension: 'temperature rate', unit: 'K/min' },
  index: { what: 'temper index', match: /index|temper (unit|value)|\bctu\b/, dimension: 'plain', unit: '' },
  chocolate: {
    what: 'chocolate temperature',
    match: /choc|temperature|enrober|mass temp/,
    not: /coolant|water|room|inlet|jacket|kettle|tank|slope/,
    dimension: 'temperature',
    unit: '°C',
  },
  coolant: {
    what: 'coolant temperature',
    match: /coolant|cooling water|chilled|water in/,
    not: /\bout\b|return/,
    dimension: 'temperature',
    unit: '°C',
  },
  throughput: { what: 'throughput', match: /through|flow|pump/, not: /coolant|water/, dimension: 'mass rate', unit: 'kg/h' },
  inlet: { what: 'inlet temperature', match: /inlet|tank|kettle temp/, not: /coolant|water|level/, dimension: 'temperature', unit: '°C' },
  yieldValue: { what: 'yield value', match: /yield/, dimension: 'pressure', unit: 'Pa' },
  plasticViscosity: { what: 'plastic viscosity', match: /viscosity/, dimension: 'viscosity', unit: 'Pa·s' },
};

/**
 * Temper tests over the shift (time, slope, index, coolant …), or a single cooling curve (time and temperature alone).
 * @throws BadTable
 */
export function temperTable(rows: readonly (readonly string[])[], name: string): TemperTable {
  const table = tableOf(rows, name);
  const { cells, unit } = timeCells(table);
  const series: { -readonly [K in keyof TemperSeries]: TemperSeries[K] } = {};
  const said = [...table.said];
  for (const key of Object.keys(wanted) as (keyof TemperSeries)[]) {
    const found = readNumbers(table, wanted[key], said);
    if (!found) continue;
    // Slopes are spoken of per minute.
    series[key] = key === 'slope' ? found.values.map((perSecond) => 60 * perSecond) : found.values;
  }
  if (series.slope || series.index) {
    const clock = readClock(cells, name, unit, 'min');
    return { kind: 'tests', clock, series, said: [...said, ...clock.said] };
  }
  if (!series.chocolate) {
    const names = table.columns.map(({ header }) => `"${header}"`).join(', ');
    throw new BadTable(
      `${name} has the columns ${names}; a slope or an index for tests, or time and temperature for a cooling curve, are expected`,
    );
  }
  const clock = readClock(cells, name, unit, 's');
  return { kind: 'curve', time: clock.seconds, temperature: series.chocolate, said: [...said, ...clock.said] };
}
