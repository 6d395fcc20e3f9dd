import { BadTable } from './bad-table.js';
import { readClock, type Clock } from './clock.js';
import { readNumbers, textColumn, type Wanted } from './columns.js';
import { tableOf, type DataTable } from './table.js';

/** A log of cooks, one line for each batch; NaN where a cell is empty. °C, fractions, Pa·s. */
export interface CookTable {
  readonly names: readonly string[];
  /** End of each cook. */
  readonly clock: Clock;
  /** When the laboratory told its result, and from when to when the batch was laid, on clocks of their own. */
  readonly reported?: Clock;
  readonly laidFrom?: Clock;
  readonly laidTo?: Clock;
  readonly temperature?: Float64Array;
  readonly refractometer?: Float64Array;
  readonly moisture?: Float64Array;
  readonly viscosity?: Float64Array;
  readonly depositTemperature?: Float64Array;
  readonly density?: Float64Array;
  /** Of whipped mass: pressure in the whip, Pa absolute, as it is sheeted, °C, and how thick, m. */
  readonly whipPressure?: Float64Array;
  readonly sheetTemperature?: Float64Array;
  readonly sheetThickness?: Float64Array;
  /** Lot of what makes it foam, for each batch. */
  readonly foamerLots?: readonly string[];
  readonly said: readonly string[];
}

const wanted = {
  temperature: {
    what: 'cook temperature',
    match: /cook.*temp|end temp|temp.*cook/,
    not: /deposit|sheet/,
    dimension: 'temperature',
    unit: '°C',
  },
  refractometer: { what: 'refractometer', match: /refracto|brix|solids/, dimension: 'fraction', unit: '%' },
  moisture: { what: 'moisture', match: /moisture|water|\bkf\b|titration/, not: /activity|report|time/, dimension: 'fraction', unit: '%' },
  viscosity: { what: 'viscosity', match: /viscosity/, dimension: 'viscosity', unit: 'Pa·s' },
  depositTemperature: { what: 'deposit temperature', match: /deposit.*temp|laying temp/, dimension: 'temperature', unit: '°C' },
  density: { what: 'density', match: /density/, dimension: 'density', unit: 'g/cm³' },
  whipPressure: { what: 'whipping pressure', match: /(whip|beat).*press|press.*(whip|beat)/, dimension: 'pressure', unit: 'bar' },
  sheetTemperature: { what: 'sheet temperature', match: /(sheet|slab).*temp/, dimension: 'temperature', unit: '°C' },
  sheetThickness: { what: 'sheet thickness', match: /(sheet|layer|slab).*thick|^thickness/, dimension: 'length', unit: 'mm' },
} as const satisfies Readonly<Record<string, Wanted>>;

/** A log of cooks: a name and a time for each batch, and at least one of temperature, refractometer and moisture. @throws BadTable */
export function cookTable(rows: readonly (readonly string[])[], name: string): CookTable {
  const table = tableOf(rows, name);
  const said = [...table.said];
  const end = clockOf(table, /^(cook )?end|end of cook|^time|cooked at|timestamp/);
  if (!end)
    throw new BadTable(`${name} has the columns ${headers(table)}; a time for the end of each cook is expected, such as "cook end"`);
  const read = (key: keyof typeof wanted) => readNumbers(table, wanted[key], said)?.values;
  const found = {
    temperature: read('temperature'),
    refractometer: read('refractometer'),
    moisture: read('moisture'),
    viscosity: read('viscosity'),
    depositTemperature: read('depositTemperature'),
    density: read('density'),
    whipPressure: read('whipPressure'),
    sheetTemperature: read('sheetTemperature'),
    sheetThickness: read('sheetThickness'),
  };
  if (!found.temperature && !found.refractometer && !found.moisture && !found.density)
    throw new BadTable(
      `${name} has the columns ${headers(table)}; a cook temperature, a refractometer reading, a moisture or a density is expected`,
    );
  const names = textColumn(table, /^(batch|cook|lot|load|no|number)\b(?!.*(end|temp))/) ?? table.rowNumbers.map((row) => `line ${row}`);
  const foamerLots = textColumn(table, /albumen|foam(er|ing)|whipping agent|egg/);
  const clocks = {
    reported: clockOf(table, /reported|result at|told at/),
    laidFrom: clockOf(table, /use start|laid from|use from|start of use/),
    laidTo: clockOf(table, /use end|laid to|use to|end of use/),
  };
  const present = Object.fromEntries(Object.entries({ ...found, ...clocks, foamerLots }).filter(([, value]) => value !== undefined));
  return { names, clock: end, said: [...said, ...end.said], ...present };
}

function clockOf(table: DataTable, match: RegExp): Clock | undefined {
  const column = table.columns.find(({ words }) => match.test(words));
  return column && readClock(column.cells, `${table.name}, "${column.header}"`, column.unit, 'min');
}

function headers(table: DataTable): string {
  return table.columns.map(({ header }) => `"${header}"`).join(', ');
}
