import { DrawingError, requireBetween } from './errors.js';
import { line, text, type Mark } from './mark.js';

/** A straight scale from numbers to px. */
export interface Axis {
  readonly at: (value: number) => number;
  readonly from: number;
  readonly to: number;
}

/** Linear, or logarithmic for positive ranges; throws DrawingError for an empty or impossible range. */
export function axis(place: string, range: readonly [number, number], px0: number, px1: number, logarithmic = false): Axis {
  const [from, to] = range;
  if (!(to > from)) throw new DrawingError(place, `${from} to ${to}`, 'a lower end below the upper end');
  if (logarithmic) {
    requireBetween(`${place}[0]`, from, 1e-300, Infinity);
    const span = Math.log(to / from);
    return { from, to, at: (value) => px0 + (Math.log(Math.max(value, 1e-300) / from) / span) * (px1 - px0) };
  }
  return { from, to, at: (value) => px0 + ((value - from) / (to - from)) * (px1 - px0) };
}

/** Round values for ticks inside a range, about `count` of them. */
export function niceTicks(from: number, to: number, count = 5): number[] {
  const raw = (to - from) / Math.max(1, count);
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = power * ([1, 2, 2.5, 5, 10].find((each) => each * power >= raw * 0.8) ?? 10);
  const out: number[] = [];
  for (let k = Math.ceil(from / step - 1e-9); k * step <= to + step * 1e-9; k += 1) out.push(Math.round(k * step * 1e9) / 1e9);
  return out;
}

/** The decimals that tell ticks of one axis apart, so that all are written alike. */
export function tickText(values: readonly number[]): string[] {
  const decimals = Math.max(0, ...values.map((value) => (String(Math.round(value * 1e6) / 1e6).split('.')[1] ?? '').length));
  return values.map((value) => value.toFixed(Math.min(decimals, 6)).replace('-', '\u2212'));
}

/** Level axis line with short ticks on the side of the data and numbers below. */
export function levelAxis(scale: Axis, y: number, x0: number, x1: number, ticks: readonly number[], size = 13): Mark[] {
  const words = tickText(ticks);
  return [
    line(x0, y, x1, y, { stroke: 'ink-2', width: 1.2 }),
    ...ticks.flatMap((tick, at): Mark[] => [
      line(scale.at(tick), y, scale.at(tick), y - 5, { stroke: 'ink-2', width: 1 }),
      text(scale.at(tick), y + 17, words[at]!, size, { anchor: 'middle', fill: 'ink-2' }),
    ]),
  ];
}

/** Upright axis numbers with short ticks, no line. */
export function uprightAxis(scale: Axis, x: number, ticks: readonly number[], size = 13): Mark[] {
  const words = tickText(ticks);
  return ticks.flatMap((tick, at): Mark[] => [
    line(x, scale.at(tick), x + 5, scale.at(tick), { stroke: 'ink-2', width: 1 }),
    text(x - 6, scale.at(tick) + size * 0.34, words[at]!, size, { anchor: 'end', fill: 'ink-2' }),
  ]);
}
