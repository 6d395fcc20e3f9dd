import { BadTable } from './bad-table.js';
import { readClock } from './clock.js';
import { readNumbers, textColumn, timeCells, type Wanted } from './columns.js';
import { tableOf } from './table.js';

/** One round of weighing across the lanes: a centre and a finished bar of each. */
export interface LanesHour {
  /** As the log writes it; empty where it has no times. */
  readonly time: string;
  readonly lanes: readonly number[];
  /** kg; NaN where a cell is empty. */
  readonly centre: readonly number[];
  readonly finished: readonly number[];
  /** Machine behind each lane, where the log names it. */
  readonly machine?: readonly string[];
}

/** Weights lane by lane, one round for each time, lanes rising. @throws BadTable */
export function lanesTable(
  rows: readonly (readonly string[])[],
  name: string,
): { readonly rounds: readonly LanesHour[]; readonly said: readonly string[] } {
  const table = tableOf(rows, name);
  const said = [...table.said];
  const read = (wanted: Wanted) => readNumbers(table, wanted, said)?.values;
  const lane = read({ what: 'lane', match: /\blane\b/, dimension: 'plain', unit: '' });
  const centre = read({ what: 'centre', match: /cent(re|er)/, dimension: 'mass', unit: 'g' });
  const finished = read({ what: 'finished bar', match: /finished|enrobed|coated/, dimension: 'mass', unit: 'g' });
  if (!lane || !centre || !finished) {
    const names = table.columns.map(({ header }) => `"${header}"`).join(', ');
    throw new BadTable(`${name} has the columns ${names}; lane, centre and finished weight are expected`);
  }
  const machine = textColumn(table, /wrapper|machine/);
  const timed = table.columns.some(({ words }) => /\b(time|date|clock)\b/.test(words));
  const { cells, unit } = timed ? timeCells(table) : { cells: table.rowNumbers.map(() => ''), unit: undefined };
  const clock = timed ? readClock(cells, name, unit, 'min') : undefined;
  const byTime = new Map<string, number[]>();
  cells.forEach((cell, i) => byTime.set(cell, [...(byTime.get(cell) ?? []), i]));
  const rounds = [...byTime].map(([, at]): LanesHour => {
    const inOrder = at.filter((i) => Number.isFinite(lane[i])).sort((a, b) => lane[a]! - lane[b]!);
    const first = clock?.seconds[inOrder[0] ?? 0];
    return {
      time: clock && first !== undefined && Number.isFinite(first) ? clock.words(first) : '',
      lanes: inOrder.map((i) => lane[i]!),
      centre: inOrder.map((i) => centre[i]!),
      finished: inOrder.map((i) => finished[i]!),
      ...(machine ? { machine: inOrder.map((i) => machine[i]!) } : {}),
    };
  });
  return { rounds: rounds.filter(({ lanes }) => lanes.length > 0), said: [...said, ...(clock?.said ?? [])] };
}
