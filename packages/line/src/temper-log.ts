import type { State } from '@barwright/chain';
import type { Entered, Station } from '@barwright/plant';
import { minutesToLimit, type TempererCause } from '@barwright/science';
import { Builder } from '@barwright/bar';
import { stationNamed } from './given.js';
import { NotOnLine } from './not-on-line.js';
import type { PlantChain } from './plant-chain.js';
import type { CountsTable, Stop, TemperTable, TunnelTable } from './tables/index.js';
import { causeOf, takenOf } from './temper-cause.js';
import { temperWindow, type TemperWindow } from './temper-window.js';
import { tempererSteps, type TempererIds } from './temper.js';

type Tests = Extract<TemperTable, { kind: 'tests' }>;

/** One quantity of the log against its limit. */
export interface TemperTrend {
  readonly what: string;
  readonly limit: string;
  /** Tests outside, with their times. */
  readonly outside: readonly { readonly time: string; readonly value: number }[];
  /** Trend of the last tests: change per hour, and minutes until the nearer limit where it runs towards one. */
  readonly perHour?: number;
  readonly minutesToLimit?: number;
  readonly earliest?: number;
  readonly latest?: number;
  readonly sure: boolean;
}

/** What a temper log says. */
export interface TemperAnswer {
  readonly tests: number;
  readonly trends: readonly TemperTrend[];
  /** Stretches in which temper was out, and why. */
  readonly incidents: readonly TemperIncident[];
  readonly said: readonly string[];
  readonly cautions: readonly string[];
}

export interface TemperIncident extends TemperWindow {
  /** First and last test that was out. */
  readonly firstOut: string;
  readonly lastOut: string;
  readonly state: 'under' | 'over' | 'out';
  readonly cause?: TempererCause['cause'] | 'coolant supply';
  readonly why: readonly string[];
  /** Median of the good tests before, and of the tests that were out. */
  readonly before: Readonly<Record<string, number>>;
  readonly during: Readonly<Record<string, number>>;
}

/** Logs beside the temper log that narrow which bars are meant. */
export interface BesideTemper {
  readonly tunnel?: TunnelTable;
  readonly stops?: readonly Stop[];
  /** Bars cut: what the line took while the temper moved. */
  readonly counts?: CountsTable;
}

export interface TemperOptions {
  readonly beside?: BesideTemper;
  /** Only tests up to this time, s on the clock of the log: as one stood there then. */
  readonly until?: number;
}

/**
 * Temper over the shift: what went out and when, whether coolant or throughput moved it, which bars, and how many minutes are left.
 * @throws NotOnLine where the line has no temperer
 */
export function judgeTemper(from: PlantChain, state: State, log: Tests, options: TemperOptions = {}): TemperAnswer {
  const station = from.line && stationNamed(from.line, /temper/i);
  const ids = from.line && tempererSteps(new Builder(), from.plant, from.bar, from.line);
  if (!station || !ids) throw new NotOnLine(`${from.line?.name ?? from.bar.name} has no temperer, or ${from.bar.name} no chocolate coat`);
  const rows = orderOf(log.clock.seconds, options.until);
  const beside = untilThen(options.beside ?? {}, options.until);
  const said = [...log.said];
  if (rows.length < log.clock.seconds.length && options.until === undefined) said.push('Tests without a time were left out.');
  const limits = limitsOf(station, log);
  const trends = limits.map((limit) => trendOf(log, rows, limit));
  const out = (i: number) => limits.some(({ values, low, high }) => values[i]! < low || values[i]! > high);
  const incidents: TemperIncident[] = [];
  for (let k = 0; k < rows.length; k++) {
    if (!out(rows[k]!)) continue;
    let end = k;
    while (end + 1 < rows.length && out(rows[end + 1]!)) end++;
    incidents.push(incident(from, state, ids, log, rows, k, end, limits, beside));
    k = end;
  }
  if (log.series.throughput === undefined)
    said.push('The log has no throughput: it is taken as constant, so a change of it cannot be excluded by this file alone.');
  return {
    tests: rows.length,
    trends,
    incidents,
    said,
    cautions: [
      'A tunnel cannot repair temper: never chill harder to compensate. Hold the bars, test some after 5 days at 18 °C and after cycling.',
      'Barwright advises; it sets nothing on a machine.',
    ],
  };
}

interface TemperLimit {
  readonly what: string;
  readonly values: Float64Array;
  readonly low: number;
  readonly high: number;
  readonly unit: string;
  readonly digits: number;
}

/** Windows of the temperer's set points that the log has readings for. */
function limitsOf(station: Station, log: Tests): readonly TemperLimit[] {
  const { slope, index, chocolate } = log.series;
  const find = (name: RegExp): Entered | undefined => station.setPoints.find((point) => name.test(point.name))?.value;
  const one = (
    what: string,
    values: Float64Array | undefined,
    entered: Entered | undefined,
    factor: number,
    unit: string,
    digits: number,
  ): TemperLimit[] => {
    if (!values || !entered || (entered.low === undefined && entered.high === undefined)) return [];
    const end = (x: number | undefined, none: number) => (x === undefined ? none : +(x * factor).toPrecision(12));
    return [{ what, values, low: end(entered.low, -Infinity), high: end(entered.high, Infinity), unit, digits }];
  };
  return [
    ...one('slope', slope, find(/slope/i), 60, 'K/min', 2),
    ...one('index', index, find(/index/i), 1, '', 1),
    ...one('temperature at the enrober', chocolate, find(/^temperature|chocolate temperature/i), 1, '°C', 1),
  ];
}

/** Rows in the order of time, those without one left out. */
function orderOf(seconds: Float64Array, until = Infinity): readonly number[] {
  return Array.from(seconds.keys())
    .filter((i) => Number.isFinite(seconds[i]) && seconds[i]! <= until)
    .sort((a, b) => seconds[a]! - seconds[b]!);
}

/** What the other logs held at that time: nothing that came later may tell what was known then. */
function untilThen(beside: BesideTemper, until: number | undefined): BesideTemper {
  if (until === undefined) return beside;
  const { tunnel, stops, counts } = beside;
  const then = (values: Float64Array, seconds: Float64Array) => values.map((value, i) => (seconds[i]! <= until ? value : NaN));
  return {
    ...(tunnel && { tunnel: { ...tunnel, ...(tunnel.marks ? { marks: then(tunnel.marks, tunnel.clock.seconds) } : {}) } }),
    ...(stops && { stops: stops.filter(({ to }) => to <= until) }),
    ...(counts && { counts: { ...counts, bars: then(counts.bars, counts.clock.seconds) } }),
  };
}

/** Tests that a trend is drawn through. */
const tail = 5;

function trendOf(log: Tests, rows: readonly number[], { what, values, low, high, unit, digits }: TemperLimit): TemperTrend {
  const used = rows.filter((i) => Number.isFinite(values[i]));
  const limit = `${Number.isFinite(low) ? +low.toFixed(3) : '−∞'} to ${Number.isFinite(high) ? +high.toFixed(3) : '∞'}${unit ? ` ${unit}` : ''}`;
  const outside = used
    .filter((i) => values[i]! < low || values[i]! > high)
    .map((i) => ({ time: log.clock.words(log.clock.seconds[i]!), value: +values[i]!.toFixed(digits) }));
  const last = used.slice(-tail);
  if (last.length < 3) return { what, limit, outside, sure: false };
  const times = last.map((i) => log.clock.seconds[i]! / 60);
  const readings = last.map((i) => values[i]!);
  const up = Number.isFinite(high) ? minutesToLimit(times, readings, high, 'above') : undefined;
  const down = Number.isFinite(low) ? minutesToLimit(times, readings, low, 'below') : undefined;
  const either = up ?? down!;
  const near = either.slope > 0 ? up : down;
  return {
    what,
    limit,
    outside,
    perHour: 60 * either.slope,
    sure: either.trend,
    ...(near?.passed ? { minutesToLimit: 0 } : {}),
    ...(near?.minutes === undefined ? {} : { minutesToLimit: near.minutes }),
    ...(near?.earliest === undefined ? {} : { earliest: near.earliest }),
    ...(near?.latest === undefined ? {} : { latest: near.latest }),
  };
}

function incident(
  from: PlantChain,
  state: State,
  ids: TempererIds,
  log: Tests,
  rows: readonly number[],
  first: number,
  last: number,
  limits: readonly TemperLimit[],
  beside: BesideTemper,
): TemperIncident {
  const { words, seconds } = log.clock;
  const good = rows.slice(Math.max(0, first - 6), first);
  const bad = rows.slice(first, last + 1);
  const slope = limits.find(({ what }) => what === 'slope');
  const state_ =
    slope && bad.some((i) => slope.values[i]! > slope.high)
      ? 'under'
      : slope && bad.some((i) => slope.values[i]! < slope.low)
        ? 'over'
        : 'out';
  const before = medians(log, good);
  const during = medians(log, bad);
  const { cause, why } = causeOf(state, ids, before, during);
  const taken = takenOf(log.clock, beside.counts, first === 0 ? undefined : seconds[rows[first - 1]!]!, seconds[rows[first]!]!);
  return {
    firstOut: words(seconds[rows[first]!]!),
    lastOut: words(seconds[rows[last]!]!),
    state: state_,
    ...(cause ? { cause } : {}),
    why: taken ? [...why, taken] : why,
    before,
    during,
    ...temperWindow(
      from,
      log.clock,
      first === 0 ? undefined : seconds[rows[first - 1]!]!,
      seconds[rows[last + 1] ?? -1],
      { from: seconds[rows[first]!]!, to: seconds[rows[last]!]!, known: seconds[rows.at(-1)!]! },
      beside,
    ),
  };
}

/** Median of each series over some rows; left out where none of them has a value. */
function medians(log: Tests, rows: readonly number[]): Record<string, number> {
  const entries = Object.entries(log.series).flatMap(([key, values]) => {
    const list = rows
      .map((i) => (values as Float64Array)[i]!)
      .filter(Number.isFinite)
      .sort((a, b) => a - b);
    return list.length === 0 ? [] : [[key, (list[Math.floor((list.length - 1) / 2)]! + list[Math.floor(list.length / 2)]!) / 2] as const];
  });
  return Object.fromEntries(entries);
}
