import { BadTable } from './bad-table.js';

/** Times of the readings as seconds on one clock, and back to words. */
export interface Clock {
  /** s; NaN where a cell is no time. */
  readonly seconds: Float64Array;
  /** A time of this clock as the log writes it: '13:05', '17 Mar 13:05', '12.5 min'. */
  readonly words: (seconds: number) => string;
  /** Sentences on what was assumed or cannot be read. */
  readonly said: readonly string[];
  /** Whether times stand on a calendar, so that another log can be laid beside. */
  readonly calendar: boolean;
}

type Bare = 's' | 'min' | 'refuse';

const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})(?:[T ]+(\d{1,2}):(\d{2})(?::(\d{2}(?:\.\d+)?))?)?(?:Z|[+-]\d{2}:?\d{2})?$/;
const dotted = /^(\d{1,2})[./](\d{1,2})[./](\d{4}|\d{2})(?:[T ,]+(\d{1,2}):(\d{2})(?::(\d{2}(?:\.\d+)?))?\s*([ap]m)?)?$/i;
const hours = /^(\d{1,2}):(\d{2})(?::(\d{2}(?:\.\d+)?))?\s*([ap]m)?$/i;
const day = 86_400;

/** Whether a cell looks like a date or a time of day. */
export function isClockLike(cell: string): boolean {
  return iso.test(cell) || dotted.test(cell) || hours.test(cell);
}

/**
 * Reads a column of times: ISO, day.month.year, a time of day that may pass midnight, or minutes, seconds and hours from a start.
 * Local times are taken as written: a change of the clock shows as a jump, which the judge of the log then sees.
 *
 * @param unit - unit of a column of plain numbers, from its header; undefined: none there
 * @param bare - what plain numbers without a unit mean; 'refuse': nothing may rest on an assumed unit
 * @throws BadTable for plain numbers without a unit where they are refused
 */
export function readClock(cells: readonly string[], name: string, unit: string | undefined, bare: Bare): Clock {
  const said: string[] = [];
  const seconds = new Float64Array(cells.length).fill(NaN);
  /** Places of the cells that are not empty. */
  const filled: number[] = [];
  for (let i = 0; i < cells.length; i++) if (cells[i] !== '') filled.push(i);
  const share = (test: RegExp) => filled.filter((i) => test.test(cells[i]!)).length / Math.max(1, filled.length);
  let kind: 'calendar' | 'day' | 'run';
  let written = 0;
  const stamped = isoStamps();
  for (const i of filled) {
    const at = stamped(cells[i]!);
    if (at === undefined) continue;
    written++;
    seconds[i] = at;
  }
  const dated = 2 * written > filled.length;
  if (!dated) seconds.fill(NaN);
  if (dated) kind = 'calendar';
  else if (share(dotted) > 0.5) {
    kind = 'calendar';
    const parts = filled.map((i) => ({ m: dotted.exec(cells[i]!), i }));
    const dayFirst = parts.some(({ m }) => m && +m[1]! > 12);
    const monthFirst = parts.some(({ m }) => m && +m[2]! > 12);
    if (dayFirst && monthFirst) said.push(`The dates of ${name} are written both day first and month first; day first is taken.`);
    else if (!dayFirst && !monthFirst)
      said.push(`Whether the dates of ${name} begin with the day or the month cannot be told; day first is taken.`);
    const swap = monthFirst && !dayFirst;
    for (const { m, i } of parts) {
      if (!m) continue;
      const year = +m[3]! < 100 ? 2000 + +m[3]! : +m[3]!;
      const [d, month] = swap ? [+m[2]!, +m[1]!] : [+m[1]!, +m[2]!];
      seconds[i] = stamp(year, month, d, m[4] && twelve(m[4], m[7]), m[5], m[6]);
    }
  } else if (share(hours) > 0.5) {
    kind = 'day';
    let days = 0;
    let before = NaN;
    for (const i of filled) {
      const m = hours.exec(cells[i]!);
      if (!m) continue;
      const t = 3600 * +twelve(m[1]!, m[4]) + 60 * +m[2]! + +(m[3] ?? 0);
      // Back by more than half a day is midnight; by less it is a clock set back, which the judge must see.
      if (before - t > day / 2) days++;
      before = t;
      seconds[i] = days * day + t;
    }
    if (days > 0) said.push(`The times of ${name} pass midnight ${days === 1 ? 'once' : `${days} times`}.`);
  } else {
    kind = 'run';
    readRun(cells, filled, seconds, name, unit, bare, said);
    if ([...seconds].some((s) => s > 1e9 / 2)) kind = 'calendar';
  }
  const lost = filled.filter((i) => Number.isNaN(seconds[i]!));
  if (lost.length > 0)
    said.push(`${lost.length === 1 ? 'One time' : `${lost.length} times`} of ${name} cannot be read, the first "${cells[lost[0]!]!}".`);
  return { seconds, words: wordsFor(kind, seconds), said, calendar: kind === 'calendar' };
}

/** Reads ISO times, s; NaN for one that no clock shows, undefined for what is none. Of most cells only the time of day is new. */
function isoStamps(): (cell: string) => number | undefined {
  let date = '';
  let midnight = NaN;
  return (cell) => {
    const { length } = cell;
    const from = length === 19 || length === 16 ? cell.charCodeAt(10) : 0;
    if (
      (from === 84 || from === 32) &&
      cell.charCodeAt(13) === 58 &&
      (length === 16 || cell.charCodeAt(16) === 58) &&
      cell.startsWith(date)
    ) {
      const hour = two(cell, 11);
      const minute = two(cell, 14);
      const second = length === 16 ? 0 : two(cell, 17);
      if (date !== '' && hour >= 0 && hour <= 24 && minute >= 0 && minute <= 59 && second >= 0)
        return midnight + 3600 * hour + 60 * minute + second;
    }
    const m = iso.exec(cell);
    if (!m) return undefined;
    const at = stamp(+m[1]!, +m[2]!, +m[3]!, m[4], m[5], m[6]);
    // A date of ten letters, as stamped, is kept for the lines below.
    if (cell.charCodeAt(4) === 45 && cell.charCodeAt(7) === 45 && m[4] !== undefined && !(at !== at)) {
      date = cell.slice(0, 10);
      midnight = stamp(+m[1]!, +m[2]!, +m[3]!);
    }
    return at;
  };
}

/** Two digits as a number; negative where they are none. */
function two(cell: string, at: number): number {
  const [tens, ones] = [cell.charCodeAt(at) - 48, cell.charCodeAt(at + 1) - 48];
  return tens >= 0 && tens <= 9 && ones >= 0 && ones <= 9 ? 10 * tens + ones : -1;
}

function readRun(
  cells: readonly string[],
  filled: readonly number[],
  seconds: Float64Array,
  name: string,
  unit: string | undefined,
  bare: Bare,
  said: string[],
): void {
  const numbers = filled.map((i) => ({ value: Number(cells[i]!.replace(',', '.')), i }));
  // Serial days of a spreadsheet: 25569 is 1 January 1970.
  if (unit === undefined && numbers.some(({ value }) => value > 30_000) && numbers.every(({ value }) => !(value > 80_000))) {
    for (const { value, i } of numbers) if (value > 30_000) seconds[i] = Math.round((value - 25_569) * day * 10) / 10;
    said.push(`The times of ${name} are read as serial days of a spreadsheet.`);
    return;
  }
  if (unit === undefined && bare === 'refuse')
    throw new BadTable(`The times of ${name} are numbers without a unit; write it into the header, such as "time (min)" or "time (s)"`);
  const factor = { s: 1, min: 60, h: 3600, d: day }[unit ?? bare] ?? NaN;
  if (unit === undefined) said.push(`The times of ${name} have no unit; ${bare === 's' ? 'seconds' : 'minutes'} are assumed.`);
  for (const { value, i } of numbers) if (Number.isFinite(value)) seconds[i] = value * factor;
}

function stamp(year: number, month: number, date: number, hour = '0', minute = '0', second = '0'): number {
  if (month < 1 || month > 12 || date < 1 || date > 31 || +hour > 24 || +minute > 59) return NaN;
  return Date.UTC(year, month - 1, date, +hour, +minute) / 1000 + +second;
}

function twelve(hour: string, half: string | undefined): string {
  if (!half) return hour;
  return String((+hour % 12) + (half.toLowerCase() === 'pm' ? 12 : 0));
}

const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

function wordsFor(kind: 'calendar' | 'day' | 'run', seconds: Float64Array): (s: number) => string {
  let [least, most] = [Infinity, -Infinity];
  for (const s of seconds) {
    if (s < least) least = s;
    if (s > most) most = s;
  }
  const several = most >= least && Math.floor(least / day) !== Math.floor(most / day);
  const padded = (x: number) => String(x).padStart(2, '0');
  const time = (s: number) => {
    const within = ((Math.round(s) % day) + day) % day;
    const rest = within % 60;
    return `${padded(Math.floor(within / 3600))}:${padded(Math.floor((within % 3600) / 60))}${rest === 0 ? '' : `:${padded(rest)}`}`;
  };
  if (kind === 'run') return (s) => `${+(s / 60).toFixed(2)} min`;
  if (kind === 'day' || !several) return time;
  return (s) => {
    const date = new Date(1000 * s);
    return `${date.getUTCDate()} ${months[date.getUTCMonth()]} ${time(s)}`;
  };
}
