import { BadInput } from '../../errors.js';
import { lineThrough } from '../interpolate.js';

export type StageName = 'charging' | 'heating' | 'holding' | 'cooling';

export interface Stage {
  readonly name: StageName;
  /** min */ readonly from: number;
  /** min */ readonly to: number;
  /** °C at both ends. */ readonly fromTemperature: number;
  readonly toTemperature: number;
  /** K/min, least-squares slope over the stage without its corners. */ readonly rate: number;
}

export interface RoastCurve {
  readonly stages: readonly Stage[];
  /** K/min at each reading, smoothed over the window. */ readonly rates: Float64Array;
  /** K/min */ readonly fastest: number;
  /** min and °C of the lowest reading after the charge. */ readonly turning: { readonly time: number; readonly temperature: number };
  /** min and °C of the highest reading. */ readonly peak: { readonly time: number; readonly temperature: number };
  /** Sentences on rows left out. */ readonly findings: readonly string[];
}

/**
 * Heating rate and stages of one logged roast. A stage is a stretch in which the smoothed rate stays above, below or within
 * ± `still`; the falling stretch before the lowest reading of the first half is the charging of cold product.
 *
 * @param minutes - rising; rows that do not rise and rows that are not numbers are left out and told
 * @param temperatures - °C
 * @param window - min over which a rate is taken; default 1/30 of the log, at least two readings
 * @param still - K/min below which a stretch counts as holding; default 1
 * @throws BadInput with fewer than three usable readings
 */
export function roastCurve(minutes: ArrayLike<number>, temperatures: ArrayLike<number>, window?: number, still = 1): RoastCurve {
  const { time, temperature, findings } = usable(minutes, temperatures);
  const n = time.length;
  const span = window ?? (time[n - 1]! - time[0]!) / 30;
  const rates = slopes(time, temperature, span / 2);
  let peak = 0;
  let fastest = -Infinity;
  for (let i = 0; i < n; i++) {
    if (temperature[i]! > temperature[peak]!) peak = i;
    if (rates[i]! > fastest) fastest = rates[i]!;
  }
  let turning = 0;
  const half = time[0]! + 0.5 * (time[n - 1]! - time[0]!);
  for (let i = 0; i < n && time[i]! <= half; i++) if (temperature[i]! < temperature[turning]!) turning = i;
  const stages = stagesOf(time, temperature, rates, turning, span, still);
  return {
    stages,
    rates,
    fastest,
    turning: { time: time[turning]!, temperature: temperature[turning]! },
    peak: { time: time[peak]!, temperature: temperature[peak]! },
    findings,
  };
}

function usable(minutes: ArrayLike<number>, temperatures: ArrayLike<number>) {
  if (minutes.length !== temperatures.length)
    throw new BadInput(`The log has ${minutes.length} times but ${temperatures.length} temperatures`);
  const time = new Float64Array(minutes.length);
  const temperature = new Float64Array(minutes.length);
  let n = 0;
  let backward = 0;
  let empty = 0;
  for (let i = 0; i < minutes.length; i++) {
    const t = minutes[i]!;
    const value = temperatures[i]!;
    if (!Number.isFinite(t) || !Number.isFinite(value)) empty++;
    else if (n > 0 && !(t > time[n - 1]!)) backward++;
    else {
      time[n] = t;
      temperature[n] = value;
      n++;
    }
  }
  if (n < 3) throw new BadInput(`The log has ${n} usable readings; at least 3 are expected`);
  const findings: string[] = [];
  if (empty > 0) findings.push(`${empty} rows without a number were left out.`);
  if (backward > 0) findings.push(`${backward} rows whose clock did not move on were left out.`);
  return { time: time.subarray(0, n), temperature: temperature.subarray(0, n), findings };
}

/** Least-squares slope in a window of ± half about each reading, by running sums: linear in the length of the log. */
function slopes(time: Float64Array, temperature: Float64Array, half: number): Float64Array {
  const n = time.length;
  const rates = new Float64Array(n);
  let from = 0;
  let to = 0;
  let [count, sx, sy, sxx, sxy] = [0, 0, 0, 0, 0];
  const origin = time[0]!;
  const add = (i: number, sign: number): void => {
    const x = time[i]! - origin;
    count += sign;
    sx += sign * x;
    sy += sign * temperature[i]!;
    sxx += sign * x * x;
    sxy += sign * x * temperature[i]!;
  };
  for (let i = 0; i < n; i++) {
    while (to < n && (time[to]! <= time[i]! + half || to <= i + 1)) add(to++, 1);
    while (from < i - 1 && time[from]! < time[i]! - half) add(from++, -1);
    const spread = count * sxx - sx * sx;
    rates[i] = spread > 0 ? (count * sxy - sx * sy) / spread : 0;
  }
  return rates;
}

function stagesOf(
  time: Float64Array,
  temperature: Float64Array,
  rates: Float64Array,
  turning: number,
  span: number,
  still: number,
): Stage[] {
  const nameOf = (i: number): StageName => {
    if (rates[i]! > still) return 'heating';
    if (rates[i]! >= -still) return 'holding';
    return i <= turning ? 'charging' : 'cooling';
  };
  const bounds: { name: StageName; from: number; to: number }[] = [];
  for (let i = 0; i < time.length; i++) {
    const name = nameOf(i);
    const last = bounds.at(-1);
    if (last && last.name === name) last.to = i;
    else bounds.push({ name, from: i, to: i });
  }
  // A stretch shorter than the window is noise or a corner: it goes to its neighbour.
  const kept: typeof bounds = [];
  for (const stage of bounds) {
    const last = kept.at(-1);
    const short = time[stage.to]! - time[stage.from]! < span;
    if (last && (short || last.name === stage.name)) last.to = stage.to;
    else if (!last && short && bounds.length > 1) kept.push({ ...stage, name: nameOf(stage.to) });
    else kept.push({ ...stage });
  }
  return kept.map(({ name, from, to }, k) => {
    const end = k + 1 < kept.length ? kept[k + 1]!.from : to;
    return {
      name,
      from: time[from]!,
      to: time[end]!,
      fromTemperature: temperature[from]!,
      toTemperature: temperature[end]!,
      rate: slopeWithin(time, temperature, from, end, span / 2),
    };
  });
}

/** Slope of a stage; half a window is left out at both ends where the stage is long enough, because corners are round there. */
function slopeWithin(time: Float64Array, temperature: Float64Array, from: number, to: number, trim: number): number {
  let a = from;
  let b = to;
  if (time[to]! - time[from]! > 4 * trim) {
    while (time[a]! < time[from]! + trim) a++;
    while (time[b]! > time[to]! - trim) b--;
  }
  if (b <= a) return 0;
  return lineThrough(time.subarray(a, b + 1), temperature.subarray(a, b + 1)).slope;
}
