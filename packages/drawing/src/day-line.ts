import { DrawingError } from './errors.js';
import { line, path, text, type Drawing, type Mark } from './mark.js';
import { Pen } from './pen.js';
import { wedge } from './signs.js';
import { textWidth } from './text-width.js';

export interface DayLineSpec {
  readonly width: number;
  /** Minutes; any origin. */
  readonly from: number;
  readonly to: number;
  /** Stretches in which the slab ran. */
  readonly runs: readonly (readonly [number, number])[];
  /** The moment all screens show. */
  readonly plumb: number;
  /** End of what is known; later is dotted. Default the plumb. */
  readonly known?: number;
  readonly holds?: readonly (readonly [number, number])[];
  readonly acts?: readonly number[];
  /** A minute as words for the plumb; default hours and minutes of the day. */
  readonly time?: (minute: number) => string;
  /** Minutes between named hours; default 120, more where there is no room. */
  readonly every?: number;
  readonly size?: number;
}
export interface DayLineDrawing extends Drawing {
  readonly at: (minute: number) => number;
  readonly minuteAt: (x: number) => number;
  /** y of the line. */
  readonly y: number;
}

/** The only clock: inked where the slab ran, gaps are stops, the future dotted; acts hang on it, holds bracket it. */
export function dayLine(spec: DayLineSpec): DayLineDrawing {
  if (!(spec.to > spec.from)) throw new DrawingError('to', spec.to, `a time after ${spec.from}`);
  const size = spec.size ?? 13;
  const margin = 18;
  const at = (minute: number): number => margin + ((minute - spec.from) / (spec.to - spec.from)) * (spec.width - 2 * margin);
  const bounded = (minute: number): number => at(Math.min(spec.to, Math.max(spec.from, minute)));
  const y = 30;
  const known = Math.min(spec.to, Math.max(spec.from, spec.known ?? spec.plumb));
  const time = spec.time ?? clockText;
  const marks: Mark[] = [line(at(spec.from), y, at(known), y, { stroke: 'hair', width: 1 })];
  if (known < spec.to) marks.push(line(at(known) + 4, y, at(spec.to), y, { stroke: 'ink-2', width: 1.6, dash: [0.1, 5], cap: 'round' }));
  const ran = new Pen();
  for (const [from, to] of spec.runs) {
    if (!(to >= from)) throw new DrawingError('runs', `${from} to ${to}`, 'a stretch that ends after it begins');
    if (bounded(to) - bounded(from) > 0.01) ran.segment(bounded(from), y, bounded(to), y);
  }
  if (!ran.empty) marks.push(path(ran.d, { stroke: 'ink', width: 4.4, id: 'ran' }));
  for (const [from, to] of spec.holds ?? []) {
    const pen = new Pen()
      .move(bounded(from), y - 8)
      .to(bounded(from), y - 14)
      .to(bounded(to), y - 14)
      .to(bounded(to), y - 8);
    marks.push(path(pen.d, { stroke: 'held', width: 2, id: 'hold' }));
  }
  const perMinute = (spec.width - 2 * margin) / (spec.to - spec.from);
  const every =
    spec.every ?? [60, 120, 180, 240, 360, 720, 1440].find((minutes) => minutes * perMinute >= textWidth('00:00', size) + 26) ?? 1440;
  const shown = textWidth(time(spec.plumb), 16, 560) / 2 + 6;
  const ticks = new Pen();
  for (let m = Math.ceil(spec.from / 60) * 60; m <= spec.to; m += 60) {
    if (60 * perMinute < 7) break;
    ticks.segment(at(m), y + 4, at(m), y + 8);
  }
  for (let m = Math.ceil(spec.from / every) * every; m <= spec.to + 1e-9; m += every) {
    if (Math.abs(at(m) - at(spec.plumb)) < shown + textWidth('00', size) / 2) continue;
    marks.push(text(at(m), y + 8 + size + 1, clockText(m).slice(0, 2), size, { anchor: 'middle', fill: 'ink-2' }));
  }
  if (!ticks.empty) marks.push(path(ticks.d, { stroke: 'rule', width: 1 }));
  for (const act of spec.acts ?? []) marks.push(wedge(bounded(act), y - 4, 9));
  const px = bounded(spec.plumb);
  marks.push(line(px, y - 22, px, y + 9, { stroke: 'ink', width: 2, id: 'plumb' }));
  marks.push(text(Math.min(spec.width - shown, Math.max(shown, px)), y + 25, time(spec.plumb), 16, { weight: 560, anchor: 'middle' }));
  return {
    marks,
    width: spec.width,
    height: y + 30,
    at,
    minuteAt: (x) => Math.min(spec.to, Math.max(spec.from, spec.from + (x - margin) / perMinute)),
    y,
  };
}

function clockText(minute: number): string {
  const within = ((Math.round(minute) % 1440) + 1440) % 1440;
  return `${String(Math.floor(within / 60)).padStart(2, '0')}:${String(within % 60).padStart(2, '0')}`;
}
