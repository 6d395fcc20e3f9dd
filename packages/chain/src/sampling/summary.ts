import type { Window } from '../types.js';
import { normalQuantile } from './normal.js';
import type { Kept } from './kept.js';
import { placeOf } from './order-statistics.js';
import { studentQuantile } from './student.js';

/** What the samples of one output say, in its unit. */
export interface Spread {
  readonly id: string;
  readonly mean: number;
  /** Half-width of the 95 % interval of the mean: how far it may be off by sampling alone. */
  readonly meanError: number;
  readonly sd: number;
  readonly p025: number;
  readonly p05: number;
  readonly p50: number;
  readonly p95: number;
  readonly p975: number;
  /**
   * 95 % intervals of the outer percentiles, apart from the error of the mean: tails are known less well, and even points
   * help them little. They rest on the order of the samples alone, whatever the distribution.
   */
  readonly tails: { readonly p025: readonly [number, number]; readonly p975: readonly [number, number] };
  /** Share of the samples outside the window of the quantity, below and above; left out where it has none. */
  readonly outside?: { readonly low: number; readonly high: number };
  /** Samples without a value; all figures rest on the others. */
  readonly missing: number;
}

const INNER = [0.05, 0.5, 0.95] as const;
const OUTER = [0.025, 0.975] as const;

/** Where among `count` samples the percentiles, the outer ones last, and the intervals of the outer ones lie. */
function wanted(count: number, outer: boolean) {
  const places = [...INNER, ...(outer ? OUTER : [])].map((p) => placeOf(p, count));
  const tails = outer ? OUTER.map((p) => tailPlaces(p, count)) : [];
  const ranks = [...new Set([...places.flatMap(({ below }) => [below, Math.min(below + 1, count - 1)]), ...tails.flat()])];
  return { places, tails, ranks: ranks.sort((a, b) => a - b) };
}

/** The parts of the samples that `spreadOf` asks for, with the outer percentiles or without. */
export const wantedShares =
  (outer: boolean) =>
  (count: number): [number, number][] => {
    const share = (p: number): [number, number] => [p, p];
    const tail = (p: number) => tailPlaces(p, count).map((place) => place / count) as [number, number];
    const inner = INNER.map(share);
    return outer ? [tail(0.025), ...inner, tail(0.975)] : inner;
  };

/** The places that `spreadOf` asks for; none where no sample has a value. */
export function wantedRanks(count: number, outer: boolean): number[] {
  return count === 0 ? [] : wanted(count, outer).ranks;
}

/**
 * @param kept - holds the wanted ranks
 * @param groups - how many independent parts of equal size the samples have; one: taken as random draws
 * @param outer - whether the outer percentiles are wanted; without, they and their intervals are NaN
 */
export function spreadOf(id: string, kept: Kept, groups: number, window: Window | undefined, outer: boolean): Spread {
  const { count, groupMeans, mean, sd } = kept.moments(groups);
  const missing = kept.samples - count;
  if (count === 0) {
    const none = { p025: NaN, p05: NaN, p50: NaN, p95: NaN, p975: NaN, tails: { p025: [NaN, NaN], p975: [NaN, NaN] } } as const;
    return { id, mean: NaN, meanError: NaN, sd: NaN, ...none, missing };
  }
  const { places, ranks, tails } = wanted(count, outer);
  const ordered = kept.at(ranks);
  const at = (rank: number) => ordered[ranks.indexOf(rank)]!;
  const [p05, p50, p95, p025 = NaN, p975 = NaN] = places.map(({ below, part }) => {
    const low = at(below);
    return part === 0 ? low : low + part * (at(Math.min(below + 1, count - 1)) - low);
  }) as [number, number, number, number?, number?];
  const unknown = [NaN, NaN] as const;
  const [lower = unknown, upper = unknown] = tails.map(([from, to]) => [at(from), at(to)] as const);
  const meanError = errorOfMean(groupMeans, sd, count);
  const spread = { id, mean, meanError, sd, p025, p05, p50, p95, p975, tails: { p025: lower, p975: upper }, missing };
  return window && (window.low !== undefined || window.high !== undefined) ? { ...spread, outside: kept.outside() } : spread;
}

/** Half-width of the 95 % interval: from the scatter of independent groups, else from that of the samples. */
function errorOfMean(groupMeans: readonly number[], sd: number, count: number): number {
  return groupMeans.length > 1 ? halfWidth(groupMeans) : (normalQuantile(0.975) * sd) / Math.sqrt(count);
}

/** Half-width of the 95 % interval of the mean of a few independent estimates, by Student's t. */
export function halfWidth(estimates: readonly number[]): number {
  const n = estimates.length;
  const mean = estimates.reduce((a, b) => a + b, 0) / n;
  const variance = estimates.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (n - 1);
  return studentQuantile(0.975, n - 1) * Math.sqrt(variance / n);
}

/** Between these places the percentile lies, 95 times in 100: the binomial law of how many samples fall below it. */
function tailPlaces(p: number, count: number): [number, number] {
  const half = normalQuantile(0.975) * Math.sqrt(count * p * (1 - p));
  const clamp = (place: number) => Math.min(count - 1, Math.max(0, place));
  return [clamp(Math.floor(count * p - half)), clamp(Math.ceil(count * p + half))];
}
