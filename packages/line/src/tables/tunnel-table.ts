import { readClock, type Clock } from './clock.js';
import { readNumbers, timeCells, type Wanted } from './columns.js';
import { BadTable } from './bad-table.js';
import { tableOf } from './table.js';

/** Readings at the tunnel; NaN where a cell is empty. °C and fractions. */
export interface TunnelTable {
  readonly clock: Clock;
  /** Air of each zone, as many as the log has. */
  readonly zones: readonly Float64Array[];
  readonly exit?: Float64Array;
  readonly room?: Float64Array;
  readonly humidity?: Float64Array;
  readonly dewPoint?: Float64Array;
  /** Marks of the belt per 100 bars. */
  readonly marks?: Float64Array;
  readonly said: readonly string[];
}

const temperature = (what: string, match: RegExp, not?: RegExp): Wanted => ({
  what,
  match,
  ...(not ? { not } : {}),
  dimension: 'temperature',
  unit: '°C',
});

/** Readings of the tunnel and its room. @throws BadTable */
export function tunnelTable(rows: readonly (readonly string[])[], name: string): TunnelTable {
  const table = tableOf(rows, name);
  const { cells, unit } = timeCells(table);
  const clock = readClock(cells, name, unit, 'min');
  const said = [...table.said, ...clock.said];
  const read = (wanted: Wanted): Float64Array | undefined => readNumbers(table, wanted, said)?.values;
  const zones: Float64Array[] = [];
  for (let i = 1; i <= 12; i++) {
    const zone = read(temperature(`air of zone ${i}`, new RegExp(`zone ?${i}\\b`)));
    if (!zone) break;
    zones.push(zone);
  }
  const exit = read(temperature('exit temperature of bars', /exit|bar out|leaving/));
  const room = read(temperature('room temperature', /room|hall/, /dew|rh|humid/));
  const humidity = read({ what: 'humidity of the room', match: /\brh\b|humid/, dimension: 'fraction', unit: '%' });
  const dewPoint = read(temperature('dew point', /dew/));
  const marks = read({ what: 'belt marks', match: /mark/, dimension: 'plain', unit: '' });
  if (!exit && zones.length === 0) {
    const names = table.columns.map(({ header }) => `"${header}"`).join(', ');
    throw new BadTable(`${name} has the columns ${names}; zones or the exit temperature of bars are expected`);
  }
  return {
    clock,
    zones,
    ...(exit ? { exit } : {}),
    ...(room ? { room } : {}),
    ...(humidity ? { humidity } : {}),
    ...(dewPoint ? { dewPoint } : {}),
    ...(marks ? { marks } : {}),
    said,
  };
}
