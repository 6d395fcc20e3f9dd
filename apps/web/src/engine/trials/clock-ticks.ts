import { niceTicks, type Point } from '@barwright/drawing';
import type { Clock } from '@barwright/line';

/** Round places of a clock with their words: hours of a day, minutes of a run. */
export function clockTicks({ seconds, words, calendar }: Clock, width: number): readonly { readonly at: number; readonly text: string }[] {
  const times = Array.from(seconds).filter(Number.isFinite);
  let [low, high] = [Infinity, -Infinity];
  for (const time of times) {
    if (time < low) low = time;
    if (time > high) high = time;
  }
  const count = width < 620 ? 4 : 9;
  if (!(high > low)) return [];
  const span = high - low;
  const ofDay = calendar || /^\d\d:\d\d/.test(words(low));
  if (!ofDay) return niceTicks(low / 60, high / 60, count).map((minute) => ({ at: 60 * minute, text: String(minute) }));
  const step = [60, 300, 600, 900, 1800, 3600, 7200, 10_800, 21_600, 43_200, 86_400].find((each) => span / each <= count) ?? 172_800;
  const out: { at: number; text: string }[] = [];
  for (let at = Math.ceil(low / step) * step; at <= high; at += step)
    out.push({ at, text: /\d\d:\d\d.*$/.exec(words(at))?.[0] ?? words(at) });
  return out;
}

/** Ends of a clock. */
export function clockEnds(seconds: Float64Array): readonly [number, number] {
  let [low, high] = [Infinity, -Infinity];
  for (const time of seconds) {
    if (time < low) low = time;
    if (time > high) high = time;
  }
  return high > low ? [low, high] : Number.isFinite(low) ? [low - 1, low + 1] : [0, 1];
}

/** Places in the order of time. */
export function inOrder(seconds: Float64Array): readonly number[] {
  const at = Array.from(seconds.keys()).filter((i) => Number.isFinite(seconds[i]));
  for (let i = 1; i < at.length; i++) if (seconds[at[i]!]! < seconds[at[i - 1]!]!) return at.sort((a, b) => seconds[a]! - seconds[b]!);
  return at;
}

/** Readings in the order of time; where more than two and a half usual intervals are missing the line breaks. */
export function withGaps(points: readonly Point[]): readonly Point[] {
  if (points.length < 4) return points;
  const steps = points
    .slice(1)
    .map(([x], i) => x - points[i]![0])
    .sort((a, b) => a - b);
  const usual = steps[Math.floor(steps.length / 2)]!;
  return points.flatMap((point, i): Point[] => {
    const before = points[i - 1];
    return before && usual > 0 && point[0] - before[0] > 2.5 * usual ? [[(before[0] + point[0]) / 2, NaN], point] : [point];
  });
}
