import type { KillStepQuantity, RoastLog } from './roast-record.js';
import { columnOf, scales } from './roast-record.js';

export interface Gap {
  /** Rows on both sides. */ readonly before: number;
  readonly after: number;
  /** s, may be negative where the clock ran back. */ readonly length: number;
}

export interface ClockFaults {
  /** Stretches longer than the longest interval allowed. */ readonly gaps: readonly Gap[];
  /** Places where the clock ran back. */ readonly back: readonly Gap[];
  /** Rows with the time of the row before but other values. */ readonly doubled: readonly number[];
  /** Rows without a time. */ readonly timeless: number;
  /** Median interval, s; NaN with a single reading. */ readonly interval: number;
  /** Longest interval allowed, s. */ readonly allowed: number;
}

/** Gaps shorter than this never matter to a roast of many minutes, s. Common practice, no source. */
const SHORTEST_GAP = 30;

/**
 * What is wrong with the clock of a log.
 *
 * @param longest - longest interval allowed between readings, s; left out: one and a half times the median, at least 30 s
 */
export function clockFaults(log: RoastLog, longest?: number): ClockFaults {
  const n = log.time.length;
  const time = log.time instanceof Float64Array ? log.time : new Float64Array(log.time);
  // About a thousand steps spread over the log give its usual interval.
  const every = Math.max(1, Math.floor(n / 1000));
  const steps: number[] = [];
  let timeless = 0;
  for (let i = 0; i < n; i++) {
    if (!Number.isFinite(time[i]!)) timeless++;
    else if (i > 0 && i % every === 0 && time[i]! > time[i - 1]!) steps.push(time[i]! - time[i - 1]!);
  }
  const interval = medianOf(steps);
  const allowed = longest ?? (Number.isNaN(interval) ? Infinity : Math.max(SHORTEST_GAP, 1.5 * interval));
  let known: Float64Array[] | undefined;
  const columns = (): Float64Array[] =>
    (known ??= (Object.keys(scales) as KillStepQuantity[])
      .map((quantity) => columnOf(log, quantity))
      .filter((column) => column !== undefined));
  const gaps: Gap[] = [];
  const back: Gap[] = [];
  const doubled: number[] = [];
  for (let i = 1; i < n; i++) {
    const length = time[i]! - time[i - 1]!;
    if (length > allowed) gaps.push({ before: i - 1, after: i, length });
    else if (length < 0) back.push({ before: i - 1, after: i, length });
    else if (length === 0 && !columns().every((column) => Object.is(column[i], column[i - 1]))) doubled.push(i);
  }
  return { gaps, back, doubled, timeless, interval, allowed };
}

function medianOf(values: readonly number[]): number {
  if (values.length === 0) return NaN;
  const sorted = Float64Array.from(values).sort();
  return sorted[sorted.length >> 1]!;
}

export interface Run {
  readonly from: number;
  readonly to: number;
}

/**
 * Stretches in which a sensor seems stuck: the same value again and again, longer than the repeats elsewhere in the log make
 * credible (once in a million logs). Where nothing else is known, as in a log that never changes, half of the readings may repeat.
 */
export function stuckRuns(column: Float64Array): readonly Run[] {
  const n = column.length;
  if (n < 10) return [];
  const runs: Run[] = [];
  let from = 0;
  let longest = 0;
  let repeats = 0;
  let before = column[0]!;
  for (let i = 1; i <= n; i++) {
    const value = i < n ? column[i]! : NaN;
    if (value === before) {
      repeats++;
      continue;
    }
    if (i - from >= 5) runs.push({ from, to: i - 1 });
    longest = Math.max(longest, i - from);
    from = i;
    before = value;
  }
  if (longest === n) return n > credibleRun(n, 0.5) ? [{ from: 0, to: n - 1 }] : [];
  // Share of repeats outside the longest run, kept above a floor: a few rows cannot show that repeats never happen.
  const others = Math.max(1, n - longest);
  const share = Math.min(0.999, Math.max((repeats - (longest - 1)) / others, 0.1));
  return runs.filter((run) => run.to - run.from + 1 > credibleRun(n, share));
}

function credibleRun(n: number, share: number): number {
  return 1 + Math.log(1e-6 / n) / Math.log(share);
}
