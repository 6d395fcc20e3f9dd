import { BadInput } from '../../errors.js';
import { stuckRuns, type ClockFaults } from './log-faults.js';
import {
  enteredOnce,
  killStepQuantities,
  columnOf,
  say,
  scales,
  suspectedUnit,
  type KillStepQuantity,
  type KillStepValidation,
  type Limit,
  type RoastLog,
} from './roast-record.js';

export interface MarkOptions {
  /** The log must cover this time, s on its clock. */
  readonly from?: number;
  readonly to?: number;
  /** Error of each instrument, SI: a reading nearer to a limit than this cannot be told from one outside. */
  readonly instrumentError?: { readonly [Q in KillStepQuantity]?: number };
}

/** State of a row: inside, unknown, outside; a worse one replaces a better one. */
export const INSIDE = 0;
export const UNKNOWN = 1;
export const OUTSIDE = 2;

/** Marks rows and remembers why: `cause` is an index into `texts`. */
export class Rows {
  readonly state: Uint8Array;
  readonly cause: Uint16Array;
  readonly texts: string[] = [];
  readonly levels: number[] = [];
  /** Causes that hit at least one row, also where a worse one decided it. */
  readonly hits = new Set<number>();
  private last = -1;
  constructor(readonly n: number) {
    this.state = new Uint8Array(n);
    this.cause = new Uint16Array(n);
  }
  reason(level: number, text: string): number {
    this.texts.push(text);
    this.levels.push(level);
    return this.texts.length - 1;
  }
  mark(row: number, level: number, cause: number): void {
    if (cause !== this.last) {
      this.hits.add(cause);
      this.last = cause;
    }
    if (level > this.state[row]!) {
      this.state[row] = level;
      this.cause[row] = cause;
    }
  }
}

/**
 * Marks every row of a log against one validation.
 *
 * @returns the rows, whether gaps of the clock still count by themselves, and for a batch the longest hold in s
 */
export function markRows(
  validation: KillStepValidation,
  log: RoastLog,
  faults: ClockFaults,
  options: MarkOptions,
): { readonly rows: Rows; readonly gapsMatter: boolean; readonly held?: number } {
  const rows = new Rows(log.time.length);
  const byHold = validation.limits.productTemperature !== undefined && log.residence === undefined;
  for (const quantity of killStepQuantities) {
    const limit = validation.limits[quantity];
    if (!limit || (byHold && (quantity === 'residence' || quantity === 'productTemperature'))) continue;
    judgeColumn(rows, validation, log, quantity, limit, options.instrumentError?.[quantity] ?? 0);
  }
  markForce(rows, log, validation);
  if (byHold) {
    const held = judgeHold(rows, validation, log, faults, options.instrumentError?.productTemperature ?? 0);
    return { rows, gapsMatter: false, held };
  }
  markClock(rows, log, faults, validation);
  markCover(rows, log, faults, options);
  return { rows, gapsMatter: true };
}

function judgeColumn(
  rows: Rows,
  validation: KillStepValidation,
  log: RoastLog,
  quantity: KillStepQuantity,
  limit: Limit,
  error: number,
  named: Limit = limit,
): void {
  const { name, possible, logged } = scales[quantity];
  const column = columnOf(log, quantity);
  const all = (text: string): void => {
    const cause = rows.reason(UNKNOWN, text);
    for (let i = 0; i < rows.n; i++) rows.mark(i, UNKNOWN, cause);
  };
  if (!column) return all(`${name} is not in the log, but ${validation.id} holds only within its limit.`);
  const min = limit.min ?? -Infinity;
  const max = limit.max ?? Infinity;
  const count = { low: 0, high: 0, missing: 0, impossible: 0, close: 0, unit: 0 };
  const first = { low: -1, high: -1, missing: -1, impossible: -1, close: -1, unit: -1 };
  let lowest = Infinity;
  let highest = -Infinity;
  // Causes are reserved first and worded after the pass, when the counts are known.
  const causes = {
    low: rows.reason(OUTSIDE, ''),
    high: rows.reason(OUTSIDE, ''),
    missing: rows.reason(UNKNOWN, ''),
    impossible: rows.reason(UNKNOWN, ''),
    close: rows.reason(UNKNOWN, ''),
    unit: rows.reason(UNKNOWN, ''),
  };
  const hit = (kind: keyof typeof count, row: number): void => {
    if (count[kind]++ === 0) first[kind] = row;
    rows.mark(row, kind === 'low' || kind === 'high' ? OUTSIDE : UNKNOWN, causes[kind]);
  };
  const looksLike = (value: number): boolean => suspectedUnit(quantity, value, named) !== undefined;
  const unitFloor = quantity === 'residence' ? 0.2 * (named.min ?? 0) : -Infinity;
  const unitCeiling = quantity.endsWith('Temperature') ? (named.min ?? 100) + 50 : possible[1];
  for (let i = 0; i < rows.n; i++) {
    const value = column[i]!;
    if (value !== value) hit('missing', i);
    else if ((value > unitCeiling || value < unitFloor) && looksLike(value)) hit('unit', i);
    else if (!(value >= possible[0] && value <= possible[1])) hit('impossible', i);
    else if (value < min) {
      hit('low', i);
      if (value < lowest) lowest = value;
    } else if (value > max) {
      hit('high', i);
      if (value > highest) highest = value;
    } else if (error > 0 && (value - error < min || value + error > max)) hit('close', i);
  }
  const places = (kind: keyof typeof count): string =>
    rows.n === 1 ? 'in the one reading' : `in ${count[kind]} of ${rows.n} readings, first at reading ${first[kind] + 1}`;
  rows.texts[causes.low] =
    `${name} was down to ${say(quantity, lowest)}, below the ${say(quantity, min)} of ${validation.id}, ${places('low')}.`;
  rows.texts[causes.high] =
    `${name} was up to ${say(quantity, highest)}, above the ${say(quantity, max)} of ${validation.id}, ${places('high')}.`;
  rows.texts[causes.missing] = `${name} has no value ${places('missing')}.`;
  rows.texts[causes.impossible] =
    `${name} is not a possible value ${places('impossible')}: ${first.impossible < 0 ? '' : column[first.impossible]!}.`;
  rows.texts[causes.close] = `${name} is nearer to the limit of ${validation.id} than the instrument's error ${places('close')}.`;
  rows.texts[causes.unit] = `${first.unit < 0 ? '' : suspectedUnit(quantity, column[first.unit]!, named)} ${places('unit')}.`;
  if (!logged) return;
  if (enteredOnce(log, quantity)) return all(`${name} was entered once for the whole log, not logged.`);
  for (const run of stuckRuns(column)) {
    const text = `${name} shows ${say(quantity, column[run.from]!)} without any change from reading ${run.from + 1} to ${run.to + 1}: the sensor may be stuck, or a set point was logged.`;
    const cause = rows.reason(UNKNOWN, text);
    for (let i = run.from; i <= run.to; i++) rows.mark(i, UNKNOWN, cause);
  }
}

function markClock(rows: Rows, log: RoastLog, faults: ClockFaults, validation: KillStepValidation): void {
  const { time } = log;
  if (faults.timeless > 0) {
    const cause = rows.reason(UNKNOWN, `${faults.timeless} readings have no time.`);
    for (let i = 0; i < rows.n; i++) if (!Number.isFinite(time[i]!)) rows.mark(i, UNKNOWN, cause);
  }
  if (faults.doubled.length > 0) {
    const cause = rows.reason(
      UNKNOWN,
      `${faults.doubled.length} readings repeat the time of the reading before with other values, first reading ${faults.doubled[0]! + 1}.`,
    );
    for (const i of faults.doubled) {
      rows.mark(i, UNKNOWN, cause);
      rows.mark(i - 1, UNKNOWN, cause);
    }
  }
  if (faults.back.length > 20) {
    const cause = rows.reason(UNKNOWN, `The clock runs back ${faults.back.length} times: the order of the readings cannot be told.`);
    for (let i = 0; i < rows.n; i++) rows.mark(i, UNKNOWN, cause);
  } else {
    for (const { before, after, length } of faults.back) {
      const cause = rows.reason(
        UNKNOWN,
        `The clock runs back by ${duration(-length)} at reading ${after + 1}: which product those readings belong to cannot be told.`,
      );
      for (let i = before; i >= 0 && time[i]! >= time[after]!; i--) rows.mark(i, UNKNOWN, cause);
      for (let i = after; i < rows.n && time[i]! <= time[before]!; i++) rows.mark(i, UNKNOWN, cause);
    }
  }
  const residence = validation.limits.residence?.min ?? Infinity;
  if (faults.interval > residence) {
    const cause = rows.reason(
      UNKNOWN,
      `Readings are ${duration(faults.interval)} apart, longer than the ${duration(residence)} in the roaster: product passed unseen.`,
    );
    for (let i = 0; i < rows.n; i++) rows.mark(i, UNKNOWN, cause);
  }
}

/** The log must reach from the start to the end of the time asked for. */
function markCover(rows: Rows, log: RoastLog, faults: ClockFaults, options: MarkOptions): void {
  const start = log.time[0]!;
  const end = log.time[rows.n - 1]!;
  if (options.from !== undefined && start - options.from > faults.allowed) {
    rows.mark(0, UNKNOWN, rows.reason(UNKNOWN, `The log begins ${duration(start - options.from)} after the start of the time asked for.`));
  }
  if (options.to !== undefined && options.to - end > faults.allowed) {
    rows.mark(
      rows.n - 1,
      UNKNOWN,
      rows.reason(UNKNOWN, `The log ends ${duration(options.to - end)} before the end of the time asked for.`),
    );
  }
}

/** Readings before a validation came into force, or after it ended, are not covered by it. */
function markForce(rows: Rows, log: RoastLog, validation: KillStepValidation): void {
  const { validFrom = -Infinity, validUntil = Infinity } = validation;
  if (validFrom === -Infinity && validUntil === Infinity) return;
  const cause = rows.reason(OUTSIDE, `${validation.id} was not in force for the whole of the log.`);
  for (let i = 0; i < rows.n; i++) if (log.time[i]! < validFrom || log.time[i]! > validUntil) rows.mark(i, OUTSIDE, cause);
}

/**
 * Batch: the longest unbroken stretch at or above the temperature, from its first to its last reading, without credit for edges.
 * A batch warms up first, so its readings are judged by the hold and not one by one.
 */
function judgeHold(rows: Rows, validation: KillStepValidation, log: RoastLog, faults: ClockFaults, error: number): number {
  const limit = validation.limits.productTemperature!.min!;
  const needed = validation.limits.residence!.min!;
  const batch = new Rows(rows.n);
  judgeColumn(batch, validation, log, 'productTemperature', {}, 0, validation.limits.productTemperature);
  markClock(batch, log, faults, validation);
  const column = columnOf(log, 'productTemperature') ?? new Float64Array(rows.n).fill(NaN);
  const broken = new Set(faults.gaps.map((gap) => gap.after));
  const longest = (lenient: boolean): number => {
    let best = 0;
    let from = -1;
    for (let i = 0; i < rows.n; i++) {
      const unknown = batch.state[i] === UNKNOWN;
      const hot = lenient ? unknown || column[i]! >= limit : !unknown && column[i]! - error >= limit;
      if (!hot || (!lenient && broken.has(i))) from = hot ? i : -1;
      else if (from < 0) from = i;
      if (from >= 0) best = Math.max(best, log.time[i]! - log.time[from]!);
    }
    return best;
  };
  const held = longest(false);
  if (held >= needed) return held;
  const could = longest(true) >= needed;
  const faultsFound = [...new Set(batch.cause.filter((_, i) => batch.state[i] === UNKNOWN))].map((c) => batch.texts[c]!);
  const why = could ? ` What the log does not show may hide it.${faultsFound.length > 0 ? ` ${faultsFound[0]}` : ''}` : '';
  const text = `Product temperature stayed at or above ${say('productTemperature', limit)} for ${duration(held)} at the longest; ${validation.id} needs ${duration(needed)}.${why}`;
  const level = could ? UNKNOWN : OUTSIDE;
  const cause = rows.reason(level, text);
  for (let i = 0; i < rows.n; i++) rows.mark(i, level, cause);
  return held;
}

/** A duration in words. */
export function duration(seconds: number): string {
  if (!Number.isFinite(seconds)) throw new BadInput('A time of the log is not a number');
  return seconds < 120 ? `${Number(seconds.toFixed(1))} s` : `${Number((seconds / 60).toFixed(1))} min`;
}
