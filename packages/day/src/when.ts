import { readClock } from '@barwright/line';
import { NoWindow } from './affected.js';
import { covered, hasDates, type DayLogs } from './day-logs.js';

const day = 86_400;

/**
 * A time as a person writes it on the clock of the logs: '13:05' is the first moment of the logs at which a clock shows it, '2026-03-18T00:10'
 * that very moment.
 * @throws NoWindow where it is no time, or where the logs show it on several days
 */
export function timeIn(logs: DayLogs, text: string): number {
  const tidy = text.trim();
  const reach = covered(logs);
  if (/\d{4}-\d/.test(tidy)) {
    const [at] = readClock([tidy], text, undefined, 'min').seconds;
    if (Number.isFinite(at)) return at!;
  }
  const clock = /^(\d{1,2}):(\d{2})(?::(\d{2}))?$/.exec(tidy);
  if (!clock || +clock[1]! > 24 || +clock[2]! > 59)
    throw new NoWindow(`"${text}" is no time; write it as 13:05, or with its date as 2026-03-17T13:05`);
  const time = 3600 * +clock[1]! + 60 * +clock[2]! + +(clock[3] ?? 0);
  if (!reach) return time;
  const midnight = Math.floor(reach.from / day) * day;
  const first = midnight + time < reach.from ? midnight + day + time : midnight + time;
  if (first + day < reach.to && hasDates(first))
    throw new NoWindow(
      `The logs show ${tidy} on several days; write the date too, such as ${new Date(1000 * first).toISOString().slice(0, 16)}`,
    );
  return first;
}

/** A window between two times; an end that reads earlier than the start is of the next day. @throws NoWindow */
export function windowIn(logs: DayLogs, from: string, to: string): { readonly from: number; readonly to: number } {
  const [start, end] = [timeIn(logs, from), timeIn(logs, to)];
  const dated = (text: string) => /\d{4}-\d/.test(text);
  if (end >= start || dated(to)) return { from: start, to: end };
  return { from: start, to: end + day };
}
