import { BadInput } from '../errors.js';
import { studentQuantile } from '../statistics/index.js';

/** Coat lane by lane, and the step along the lanes if there is one. */
export interface LaneMap {
  readonly coat: readonly number[];
  readonly mean: number;
  readonly sd: number;
  /** Lanes whose coat lies outside the band around the median of all, 1 for the first lane. */
  readonly outside: readonly number[];
  /** The best cut into two sides, each of at least three lanes: lanes 1..after and the rest. */
  readonly step?: LaneStep;
}

export interface LaneStep {
  readonly after: number;
  /** Mean of the far side less mean of the near side, g, with 95 % limits (not corrected for the search over cuts). */
  readonly coat: number;
  readonly low: number;
  readonly high: number;
  /** The same cut in the centre masses. */
  readonly centre: number;
  /** Whether the step of the coat stands after correction for the number of cuts tried. */
  readonly significant: boolean;
  /** What carries the step of the finished mass. */
  readonly carriedBy: 'coat' | 'centre' | 'neither';
}

/**
 * Coat = finished - centre, lane by lane. Centre and finished are of neighbouring bars, so the scatter of centres is in the difference.
 * @param band - half-width around the median outside which a lane is named, g
 * @throws BadInput for unlike lists, fewer than 6 lanes, or a finished bar lighter than its centre
 */
export function laneMap(centre: readonly number[], finished: readonly number[], band: number): LaneMap {
  if (centre.length !== finished.length) {
    throw new BadInput(`lane map has ${centre.length} centres but ${finished.length} finished masses; one each per lane is due`);
  }
  if (centre.length < 6) throw new BadInput(`lane map has ${centre.length} lanes; at least 6 are needed`);
  const coat = centre.map((c, i) => {
    const f = finished[i]!;
    if (!(c > 0 && f > 0)) throw new BadInput(`lane ${i + 1}: centre ${c} g and finished ${f} g must both be above 0`);
    return f - c;
  });
  const n = coat.length;
  const mean = average(coat, 0, n);
  const sd = Math.sqrt(coat.reduce((sum, c) => sum + (c - mean) ** 2, 0) / (n - 1));
  const middle = median(coat);
  const outside = coat.flatMap((c, i) => (Math.abs(c - middle) > band ? [i + 1] : []));
  return { coat, mean, sd, outside, step: bestStep(coat, centre) };
}

function average(of: readonly number[], from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += of[i]!;
  return sum / (to - from);
}

function median(of: readonly number[]): number {
  const sorted = of.toSorted((a, b) => a - b);
  const m = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[m]! : (sorted[m - 1]! + sorted[m]!) / 2;
}

interface Contrast {
  readonly difference: number;
  readonly error: number;
  readonly t: number;
}

function contrast(of: readonly number[], after: number): Contrast {
  const n = of.length;
  const a = average(of, 0, after);
  const b = average(of, after, n);
  let sse = 0;
  for (let i = 0; i < n; i++) sse += (of[i]! - (i < after ? a : b)) ** 2;
  const error = Math.sqrt((sse / (n - 2)) * (1 / after + 1 / (n - after)));
  return { difference: b - a, error, t: error > 0 ? Math.abs(b - a) / error : b === a ? 0 : Infinity };
}

/** The cut with the clearest step in the coat; where the coat has none that stands, the clearest in the centres. */
function bestStep(coat: readonly number[], centre: readonly number[]): LaneStep {
  const n = coat.length;
  const corrected = studentQuantile(1 - 0.025 / (n - 5), n - 2);
  const ofCoat = clearestCut(coat);
  const significant = contrast(coat, ofCoat).t > corrected;
  const ofCentre = clearestCut(centre);
  const after = significant || contrast(centre, ofCentre).t <= corrected ? ofCoat : ofCentre;
  const c = contrast(coat, after);
  const inCentre = contrast(centre, after);
  const half = studentQuantile(0.975, n - 2) * c.error;
  const centreMoves = inCentre.t > corrected;
  const coatLeads = significant && (!centreMoves || Math.abs(c.difference) >= Math.abs(inCentre.difference));
  return {
    after,
    coat: c.difference,
    low: c.difference - half,
    high: c.difference + half,
    centre: inCentre.difference,
    significant,
    carriedBy: coatLeads ? 'coat' : centreMoves ? 'centre' : 'neither',
  };
}

function clearestCut(of: readonly number[]): number {
  let after = 3;
  for (let k = 3; k <= of.length - 3; k++) if (contrast(of, k).t > contrast(of, after).t) after = k;
  return after;
}
