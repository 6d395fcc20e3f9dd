import { readClock, type Clock } from './clock.js';
import { readNumbers, timeCells } from './columns.js';
import { BadTable } from './bad-table.js';
import { tableOf } from './table.js';

/** Bars cut in intervals that begin at the times of the clock. */
export interface CountsTable {
  readonly clock: Clock;
  readonly bars: Float64Array;
}

/** Counts of the cutter. @throws BadTable */
export function countsTable(rows: readonly (readonly string[])[], name: string): CountsTable {
  const table = tableOf(rows, name);
  const { cells, unit } = timeCells(table);
  const found = readNumbers(table, { what: 'bars cut', match: /bars|cut/, dimension: 'count', unit: '' }, []);
  if (!found) throw new BadTable(`${name} has no column of bars cut; one headed "bars cut" is expected`);
  return { clock: readClock(cells, name, unit, 'min'), bars: found.values };
}
