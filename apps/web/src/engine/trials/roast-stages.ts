import type { Point, Trace } from '@barwright/drawing';
import type { RoastTable } from '@barwright/line';
import { roastCurve, studyD, type RoastCurve } from '@barwright/science';
import type { FigureTable } from '../trial-protocol.js';
import { n } from './words.js';

export interface RoastStages {
  readonly curve: RoastCurve;
  /** K/min over the heating stages, by their minutes; undefined where nothing was heated. */
  readonly heating?: number;
  readonly brackets: NonNullable<Trace['brackets']>;
  readonly said: readonly string[];
}

/** Heating rate and stages of a logged product temperature; undefined where the log has none. */
export function roastStages({ log, clock }: RoastTable): RoastStages | undefined {
  const { productTemperature: column } = log;
  if (column === undefined || typeof column === 'number') return undefined;
  const minutes = Float64Array.from(log.time, (seconds) => seconds / 60);
  let curve: RoastCurve;
  try {
    curve = roastCurve(minutes, Float64Array.from(column));
  } catch {
    return undefined;
  }
  const hot = curve.stages.filter(({ name }) => name === 'heating');
  const time = hot.reduce((sum, stage) => sum + stage.to - stage.from, 0);
  const heating = hot.reduce((sum, stage) => sum + stage.rate * (stage.to - stage.from), 0) / time;
  return {
    curve,
    ...(time > 0 ? { heating } : {}),
    brackets: curve.stages.map(({ name, from, to, rate }) => ({ from: 60 * from, to: 60 * to, text: `${name}, ${n(rate, 1)} K/min` })),
    said: [
      `A rate is the least-squares slope over a thirtieth of the log; slower than 1 K/min either way is holding (common practice, no source). ${clock.words(60 * curve.peak.time)}: the highest reading, ${n(curve.peak.temperature, 1)} °C.`,
      ...curve.findings,
    ],
  };
}

export function stagesTable({ curve }: RoastStages): FigureTable {
  return {
    caption: 'Stages found in the log',
    head: ['from', 'to', 'temperature', 'rate'],
    rows: curve.stages.map(({ name, from, to, fromTemperature, toTemperature, rate }) => ({
      name,
      cells: [
        { text: `${n(from - curve.stages[0]!.from, 1)} min` },
        { text: `${n(to - curve.stages[0]!.from, 1)} min` },
        { text: `${n(fromTemperature, 1)} → ${n(toTemperature, 1)} °C` },
        { text: `${n(rate, 1)} K/min` },
      ],
    })),
  };
}

/** Log reduction of Salmonella gathered along a curve by the D values published for cocoa beans, no credit outside the temperatures tested. */
export function reductionAlong(
  seconds: ArrayLike<number>,
  temperature: Float64Array,
): { readonly points: readonly Point[]; readonly words: string } | undefined {
  const points: Point[] = [];
  let sum = 0;
  let last: { readonly t: number; readonly rate: number } | undefined;
  const step = Math.max(1, Math.floor(seconds.length / 400));
  for (let i = 0; i < seconds.length; i++) {
    const [t, value] = [seconds[i]!, temperature[i]!];
    if (!Number.isFinite(t) || !Number.isFinite(value) || (last && t <= last.t)) continue;
    const rate = value < 100 ? 0 : 1 / studyD('salmonella cocoa bean', Math.min(140, value)).d;
    if (last) sum += (((rate + last.rate) / 2) * (t - last.t)) / 60;
    last = { t, rate };
    if (i % step === 0 || i === seconds.length - 1) points.push([t, Math.min(5, sum)]);
  }
  if (!(sum > 0) || points.length < 2) return undefined;
  return { points, words: sum >= 5 ? '5 log, the most that was tested' : `${n(sum, 1)} log` };
}

/** s of the longest stretch of readings at or above a temperature; a reading that is missing ends it. */
export function longestAbove(seconds: ArrayLike<number>, temperature: ArrayLike<number>, least: number): number {
  let longest = 0;
  let from: number | undefined;
  for (let i = 0; i < seconds.length; i++) {
    if (!(temperature[i]! >= least)) from = undefined;
    else {
      from ??= seconds[i]!;
      longest = Math.max(longest, seconds[i]! - from);
    }
  }
  return longest;
}
