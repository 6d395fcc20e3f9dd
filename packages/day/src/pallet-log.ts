import { BadTable, readClock, readNumbers, tableOf, textColumn } from '@barwright/line';

/** One pallet in the order of packing. */
export interface Pallet {
  readonly name: string;
  /** Time of its first and of its last pack, s; NaN where the log does not tell. */
  readonly first: number;
  readonly last: number;
  /** Bars on it; NaN where the log does not tell. */
  readonly bars: number;
  readonly status: string;
}

export interface PalletLog {
  readonly name: string;
  readonly pallets: readonly Pallet[];
  /** Words of a time on its clock. */
  readonly words: (seconds: number) => string;
  readonly calendar: boolean;
  readonly said: readonly string[];
}

/** Pallets with the times of their first and last pack; bars or cases and a status where they are there. @throws BadTable */
export function palletLog(rows: readonly (readonly string[])[], name: string): PalletLog {
  const table = tableOf(rows, name);
  const said = [...table.said];
  const names = textColumn(table, /\bpallet\b/);
  const timeOf = (match: RegExp): readonly string[] | undefined =>
    table.columns.find(({ words }) => match.test(words) && !/bars|cases|status/.test(words))?.cells;
  const [first, last] = [timeOf(/\b(first|from|start)\b/), timeOf(/\b(last|to|end)\b/)];
  if (!names || !first || !last) {
    const headers = table.columns.map(({ header }) => `"${header}"`).join(', ');
    throw new BadTable(`${name} has the columns ${headers}; a pallet, its "first pack" and its "last pack" are expected`);
  }
  // Both columns on one clock: a time of day alone must pass midnight in the same place.
  const both = readClock(
    names.flatMap((_, i) => [first[i]!, last[i]!]),
    name,
    undefined,
    'min',
  );
  said.push(...both.said);
  const bars = readNumbers(table, { what: 'bars', match: /\bbars\b/, dimension: 'count', unit: '' }, said)?.values;
  const status = textColumn(table, /status|place|where/);
  const pallets = names.map((pallet, i) => {
    const [from, to] = [both.seconds[2 * i]!, both.seconds[2 * i + 1]!];
    const turned = to < from;
    if (turned) said.push(`${pallet} ends before it begins in ${name}: its times count as missing.`);
    return { name: pallet, first: turned ? NaN : from, last: turned ? NaN : to, bars: bars?.[i] ?? NaN, status: status?.[i] ?? '' };
  });
  return { name, pallets, words: both.words, calendar: both.calendar, said };
}
