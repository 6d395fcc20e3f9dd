import { BadInput } from '../errors.js';
import { studentQuantile } from '../statistics/index.js';

/** When a straight trend reaches a limit. */
export interface TimeToLimit {
  /** Change per minute, with 95 % limits. */
  readonly slope: number;
  readonly slopeLow: number;
  readonly slopeHigh: number;
  /** Level of the line at the last reading. */
  readonly level: number;
  /** Minutes from the last reading to the crossing; undefined where the line runs away from the limit or the limit is passed already. */
  readonly minutes?: number;
  /** 95 % interval of the crossing (Fieller); the upper end is undefined where the trend may as well be flat. */
  readonly earliest?: number;
  readonly latest?: number;
  /** Whether the slope differs from 0 at 95 %. */
  readonly trend: boolean;
  readonly passed: boolean;
}

/**
 * Minutes until a limit, from a least squares line through the readings, with Fieller's interval of the crossing.
 *
 * @param time - min, at least 3, not all alike
 * @param limit - upper limit for side 'above', lower limit for side 'below'
 * @throws BadInput
 */
export function minutesToLimit(time: readonly number[], value: readonly number[], limit: number, side: 'above' | 'below'): TimeToLimit {
  const n = time.length;
  if (n !== value.length) throw new BadInput(`trend has ${n} times but ${value.length} values; one each is due`);
  if (n < 3) throw new BadInput(`trend has ${n} readings; at least 3 are needed for a line with an interval`);
  if (![...time, ...value, limit].every(Number.isFinite)) throw new BadInput('a reading of the trend or its limit is not a number');
  const back = time.findIndex((t, i) => i > 0 && t < time[i - 1]!);
  if (back > 0)
    throw new BadInput(
      `the clock of the trend goes from ${time[back - 1]} to ${time[back]} min at reading ${back + 1}; times must not run back`,
    );
  const meanT = time.reduce((a, b) => a + b, 0) / n;
  const meanV = value.reduce((a, b) => a + b, 0) / n;
  let stt = 0;
  let stv = 0;
  for (let i = 0; i < n; i++) {
    stt += (time[i]! - meanT) ** 2;
    stv += (time[i]! - meanT) * (value[i]! - meanV);
  }
  if (!(stt > 0)) throw new BadInput('all readings of the trend have the same time');
  const slope = stv / stt;
  let sse = 0;
  for (let i = 0; i < n; i++) sse += (value[i]! - meanV - slope * (time[i]! - meanT)) ** 2;
  const variance = sse / (n - 2);
  const t = studentQuantile(0.975, n - 2);
  const half = t * Math.sqrt(variance / stt);
  const last = Math.max(...time);
  const level = meanV + slope * (last - meanT);
  const toward = side === 'above' ? slope > 0 : slope < 0;
  const passed = side === 'above' ? level > limit : level < limit;
  const result = { slope, slopeLow: slope - half, slopeHigh: slope + half, level, trend: Math.abs(slope) > half, passed };
  if (passed || !toward) return result;
  const minutes = (limit - level) / slope;
  // Fieller: all x with (limit - meanV - slope x)² <= t² s² (1/n + x²/stt), x from the mean time.
  const d = limit - meanV;
  const a = slope * slope - half * half;
  const b = -2 * slope * d;
  const c = d * d - (t * t * variance) / n;
  const inside = b * b - 4 * a * c;
  if (inside <= 0 && a <= 0) return { ...result, minutes, earliest: 0 };
  const root = Math.sqrt(Math.max(0, inside));
  const ends = [(-b - root) / (2 * a), (-b + root) / (2 * a)].map((x) => x + meanT - last).toSorted((x, y) => x - y);
  // A slope that differs from 0 gives an interval; else all times beyond the later root are open.
  if (a > 0) return { ...result, minutes, earliest: Math.max(0, ends[0]!), latest: ends[1]! };
  return { ...result, minutes, earliest: Math.max(0, ends[1]!) };
}
