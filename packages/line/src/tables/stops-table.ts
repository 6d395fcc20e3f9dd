import { readClock } from './clock.js';
import { textColumn } from './columns.js';
import { BadTable } from './bad-table.js';
import { tableOf } from './table.js';

/** One stop of one machine, s on the clock of its log. */
export interface Stop {
  readonly from: number;
  readonly to: number;
  readonly machine: string;
  readonly reason: string;
}

/** Stops of the line: start, end, machine, reason. @throws BadTable */
export function stopsTable(rows: readonly (readonly string[])[], name: string): readonly Stop[] {
  const table = tableOf(rows, name);
  const [start, end] = [textColumn(table, /^(start|from|begin)/), textColumn(table, /^(end|to|until)/)];
  if (!start || !end) throw new BadTable(`${name} has no start and end of stops; columns headed "start" and "end" are expected`);
  const [from, to] = [readClock(start, name, undefined, 'min'), readClock(end, name, undefined, 'min')];
  const machine = textColumn(table, /machine|station|where/) ?? [];
  const reason = textColumn(table, /reason|why|what/) ?? [];
  return start.flatMap((_, i) => {
    const stop = { from: from.seconds[i]!, to: to.seconds[i]!, machine: machine[i] ?? '', reason: reason[i] ?? '' };
    return Number.isNaN(stop.from) || Number.isNaN(stop.to) ? [] : [stop];
  });
}
