import { BadTable, readClock, readNumbers, tableOf, timeCells, type Clock } from '@barwright/line';

/** Counts of a day in intervals: bars at the cutter, packs at each wrapper. NaN where a cell is missing. */
export interface FlowLog {
  readonly name: string;
  readonly clock: Clock;
  /** Start and length of each interval in the order of time, s. */
  readonly start: Float64Array;
  readonly length: Float64Array;
  /** Length that most intervals have, s: the resolution. */
  readonly usual: number;
  readonly cut?: Float64Array;
  /** One entry for each wrapper that has a column, by the name that follows `packs` in its heading. */
  readonly packs: readonly { readonly wrapper: string; readonly packs: Float64Array }[];
  readonly said: readonly string[];
}

/**
 * Reads a table of counts: a time (the start of each interval), `bars cut`, and one column `packs <wrapper>` for each wrapper, any number of them.
 * @throws BadTable where times or every count is missing
 */
export function flowLog(rows: readonly (readonly string[])[], name: string): FlowLog {
  const table = tableOf(rows, name);
  const said = [...table.said];
  const { cells, unit } = timeCells(table);
  const clock = readClock(cells, name, unit, 'min');
  said.push(...clock.said);
  const order = Array.from(clock.seconds.keys())
    .filter((i) => Number.isFinite(clock.seconds[i]))
    .sort((a, b) => clock.seconds[a]! - clock.seconds[b]! || a - b);
  const inOrder = (values: Float64Array) => Float64Array.from(order, (i) => values[i]!);
  const start = inOrder(clock.seconds);
  const cut = readNumbers(table, { what: 'bars cut', match: /bars? cut|cut bars?/, dimension: 'count', unit: '' }, said);
  const names = table.columns.flatMap(({ header }) => packsOf(header) ?? []);
  const totals = names.length > 1 ? names.filter((name) => /^(total|sum|all)$/i.test(name)) : [];
  if (totals.length > 0) said.push(`"packs ${totals[0]}" of ${name} is left out: it counts the others again.`);
  const packs = table.columns.flatMap((column) => {
    const wrapper = packsOf(column.header);
    if (wrapper === undefined || totals.includes(wrapper)) return [];
    // What follows 'packs' names a wrapper, even where it reads like a unit.
    const alone = { ...table, columns: [{ ...column, unit: undefined }] };
    const found = readNumbers(alone, { what: column.header, match: /./, dimension: 'count', unit: '' }, said);
    return found ? [{ wrapper, packs: inOrder(found.values) }] : [];
  });
  if (!cut && packs.length === 0) {
    const headers = table.columns.map(({ header }) => `"${header}"`).join(', ');
    throw new BadTable(`${name} has the columns ${headers}; counts headed "bars cut" or "packs <wrapper>" are expected`);
  }
  if (start.length < 2)
    throw new BadTable(`${name} has ${start.length === 1 ? 'one interval' : 'no interval with a time'}; two at least tell how long one is`);
  const usual = usualStep(start);
  const length = start.map((from, i) => Math.min(usual, i + 1 < start.length && start[i + 1]! > from ? start[i + 1]! - from : usual));
  const twice = Array.from(start.keys()).filter((i) => i > 0 && start[i] === start[i - 1]);
  if (twice.length > 0)
    said.push(
      `${twice.length === 1 ? 'One interval' : `${twice.length} intervals`} of ${name} stand${twice.length === 1 ? 's' : ''} there twice, the first at ${clock.words(start[twice[0]!]!)} (a clock set back?): both are counted.`,
    );
  return { name, clock, start, length, usual, ...(cut ? { cut: inOrder(cut.values) } : {}), packs, said };
}

/** The wrapper that a heading names: 'packs_w1', 'packs on 2'; packs that were thrown out are no bars on pallets. */
function packsOf(header: string): string | undefined {
  if (/reject|waste|scrap|lost|bad/i.test(header)) return undefined;
  return /^packs?(?:[\s_.:-]+(?:on\b|of\b)?[\s_]*)(.+)$/i.exec(header)?.[1];
}

/** The commonest step between times, s. */
function usualStep(start: Float64Array): number {
  const counts = new Map<number, number>();
  for (let i = 1; i < start.length; i++) {
    const step = start[i]! - start[i - 1]!;
    if (step > 0) counts.set(step, (counts.get(step) ?? 0) + 1);
  }
  const [first] = [...counts].sort((a, b) => b[1] - a[1] || a[0] - b[0]);
  return first?.[0] ?? 60;
}
