import type { KillStepQuantity, RoastLog } from '@barwright/science';
import { readClock, type Clock } from './clock.js';
import { readNumbers, textColumn, timeCells, type Wanted } from './columns.js';
import { tableOf, type DataTable } from './table.js';

/** A roast log as it was read: the log itself, its clock, the lots, and one sentence on each thing assumed or found. */
export interface RoastTable {
  readonly log: RoastLog;
  readonly clock: Clock;
  /** Raw lot of each reading, where the log names it. */
  readonly lots?: readonly string[];
  /** Which columns were taken for what. */
  readonly columns: readonly { readonly quantity: KillStepQuantity | 'colour'; readonly headers: readonly string[] }[];
  readonly unused: readonly string[];
  readonly said: readonly string[];
  /** Line of each reading in the file, from 1. */
  readonly rowNumbers: readonly number[];
}

/** What is set, wished or alarmed is no reading. */
const noReading = /\bset( ?points?)?\b|\bsp\b|target|alarm|limit|nominal/;

const wanted: Readonly<Record<KillStepQuantity, Omit<Wanted, 'strict'>>> = {
  airTemperature: {
    what: 'air temperature',
    match: /\b(air|zone|inlet|supply|oven|roaster)\b/,
    not: /veloc|speed|flow|humid|product|bed|core|nib|bean|kernel|exit|out(let)?|cool|drum|ambient|room|moist/,
    dimension: 'temperature',
    unit: '°C',
    several: 'least',
  },
  airVelocity: { what: 'air velocity', match: /veloc|air speed|air flow/, not: /belt/, dimension: 'speed', unit: 'm/s', several: 'least' },
  bedDepth: {
    what: 'bed depth',
    match: /bed (depth|height)|depth|layer (depth|height)/,
    dimension: 'length',
    unit: 'mm',
    several: 'greatest',
  },
  residence: {
    what: 'residence time',
    match: /residence|dwell|time in|roast(ing)? time|\bhold\b/,
    dimension: 'time',
    unit: 'min',
    several: 'least',
  },
  rawMoisture: {
    what: 'raw moisture',
    match: /(raw|feed|incoming|green).*moist|moist.*(raw|feed|incoming|green)/,
    dimension: 'fraction',
    unit: '%',
  },
  productTemperature: {
    what: 'product temperature',
    match: /\b(bed|nib|nibs|core|middle|product|bean|beans|kernel|kernels|mass|coldest)\b/,
    not: /depth|height|exit|out(let)?\b|cool|air|moist|colou?r|roast l\b|velocity/,
    dimension: 'temperature',
    unit: '°C',
    several: 'least',
  },
};

/**
 * A roast log from any logger or spreadsheet: columns by the words and units of their headers.
 * A column without a unit counts as missing, times without one are refused: a kill step is not judged on an assumed unit.
 * Several zones or probes count with the coldest, the slowest, the deepest of each line: there is no credit for a mean.
 *
 * @param rows - cells as text
 * @param roaster - name of the roaster, as in its validation
 * @throws BadTable with one sentence
 */
export function roastTable(rows: readonly (readonly string[])[], name: string, roaster: string): RoastTable {
  const whole = tableOf(rows, name);
  const set = whole.columns.filter(({ words }) => noReading.test(words));
  const table = { ...whole, columns: whole.columns.filter((column) => !set.includes(column)) };
  const { cells, unit } = timeCells(table);
  const clock = readClock(cells, name, unit, 'refuse');
  const said = [...table.said, ...clock.said];
  if (set.length > 0) said.push(`Set points and limits are no readings: ${set.map(({ header }) => `"${header}"`).join(', ')} left out.`);
  const columns: RoastTable['columns'][number][] = [];
  const log: { -readonly [K in keyof RoastLog]: RoastLog[K] } = { roaster, time: clock.seconds };
  for (const quantity of Object.keys(wanted) as KillStepQuantity[]) {
    const found = readNumbers(table, { ...wanted[quantity], strict: true }, said);
    if (!found) continue;
    log[quantity] = found.values;
    columns.push({ quantity, headers: found.headers });
  }
  const colour = colourOf(table);
  if (colour) {
    log.colour = colour.values;
    columns.push({ quantity: 'colour', headers: [colour.header] });
  }
  const lots = textColumn(table, /\b(raw )?lot\b|batch/);
  const used = new Set(columns.flatMap(({ headers }) => headers));
  const unused = table.columns.map(({ header }) => header).filter((header) => !used.has(header) && !/time|date|lot|batch/i.test(header));
  return { log, clock, ...(lots ? { lots } : {}), columns, unused, said, rowNumbers: table.rowNumbers };
}

/** Hunter L or the like, by its header alone; never used in a verdict. */
function colourOf(table: DataTable): { readonly values: Float64Array; readonly header: string } | undefined {
  const column = table.columns.find(({ header }) => /colou?r|hunter|roast[_ ]?L$|\bL\*?$/.test(header));
  if (!column) return undefined;
  const values = Float64Array.from(column.cells, (cell) => (cell === '' ? NaN : Number(cell.replace(',', '.'))));
  return { values, header: column.header };
}
