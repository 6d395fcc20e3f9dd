import { DrawingError, requireBetween, requireFinite } from './errors.js';
import { circle, line, path, rect, text, type Drawing, type Ink, type Mark, type Span } from './mark.js';
import { Pen } from './pen.js';
import { slanted, wedge } from './signs.js';
import { textWidth } from './text-width.js';

/** How a number is known. */
export type NumberStanding = 'measured' | 'computed' | 'assumed' | 'default' | 'missing';

export interface SillSpec {
  /** Width of the box, px: 46 in lists, 84 under a number, 250 on the sheet of one number. The window takes its middle 60 %. */
  readonly width: number;
  readonly standing: NumberStanding;
  /** Permitted range; a side left out is open. Without any side there is no sill, only the figure. */
  readonly window?: { readonly lo?: number; readonly hi?: number };
  readonly aim?: number;
  /** Absent when missing, and on paper, where a pencil marks it. */
  readonly value?: number;
  /** Length of a one-sided window as drawn, in the number's own unit; default twice the distance from aim to limit, else limit to 0. */
  readonly span?: number;
  /** Dotted arc from the value to the nearer limit: it is on its way there. */
  readonly drifting?: boolean;
  /** Value of a trial beside the true one: the truth becomes a ring, the trial the dot, a dashed line between them. */
  readonly bent?: number;
  /** The number itself, drawn above the sill. */
  readonly figure?: { readonly text: string; readonly unit?: string; readonly size?: number; readonly replaced?: boolean };
  /** Words under the stops, as on paper. */
  readonly ends?: { readonly lo?: string; readonly hi?: string };
  /** No value mark: aim and stops only, for marking by pencil. */
  readonly print?: boolean;
}

export interface SillDrawing extends Drawing {
  /** Whether the value, or the trial where one is given, lies outside the window. */
  readonly outside: boolean;
  /** x of the left stop, where the figure stands too. */
  readonly start: number;
  /** Baseline of the sill. */
  readonly y: number;
  /** Place of a value on the sill, px, never beyond its box. */
  readonly at: (value: number) => number;
}

/** The window of a number: its underline is its permitted range. */
export function sill(spec: SillSpec): SillDrawing {
  requireBetween('width', spec.width, 20, 4000, 'px');
  const { lo, hi } = spec.window ?? {};
  for (const [place, value] of [
    ['value', spec.value],
    ['bent', spec.bent],
    ['aim', spec.aim],
    ['window.lo', lo],
    ['window.hi', hi],
  ] as const) {
    if (value !== undefined) requireFinite(place, value);
  }
  if (lo !== undefined && hi !== undefined && !(hi > lo))
    throw new DrawingError('window', `${lo} to ${hi}`, 'a lower end below the upper end');
  const large = spec.width >= 200;
  const start = spec.width * 0.2;
  const end = spec.width * 0.8;
  const size = spec.figure?.size ?? (large ? 58 : spec.width >= 70 ? 24 : 17);
  const y = spec.figure === undefined ? (large ? 16 : 12) : size * 0.8 + (large ? 22 : 16);
  const marks: Mark[] = [];
  const [from, to] = drawnWindow(spec);
  const at = (value: number): number => Math.min(spec.width - 5, Math.max(5, start + ((value - from) / (to - from)) * (end - start)));
  const judged = spec.bent ?? spec.value;
  const over = judged === undefined ? 0 : hi !== undefined && judged > hi ? 1 : lo !== undefined && judged < lo ? -1 : 0;
  const sighted = spec.window !== undefined && (lo !== undefined || hi !== undefined);

  if (sighted) {
    const x0 = lo === undefined ? 0.02 * spec.width : start;
    const x1 = hi === undefined ? 0.98 * spec.width : end;
    marks.push(...bar(spec.standing, x0, x1, y));
    const post = (x: number): Mark => line(x, y - 5, x, y + 5, { stroke: 'ink', width: 1.6 });
    if (lo !== undefined) marks.push(post(start));
    if (hi !== undefined) marks.push(post(end));
    if (spec.aim !== undefined) marks.push(wedge(at(spec.aim), y + 5.2, 5, 'up', 'ink'));
    if (spec.ends?.lo !== undefined && lo !== undefined)
      marks.push(text(start, y + 21, spec.ends.lo, 11, { anchor: 'middle', fill: 'ink-2' }));
    if (spec.ends?.hi !== undefined && hi !== undefined)
      marks.push(text(end, y + 21, spec.ends.hi, 11, { anchor: 'middle', fill: 'ink-2' }));
    if (spec.print !== true) marks.push(...valueMarks(spec, at, y, over, over > 0 ? end : start));
  }
  if (spec.figure !== undefined) marks.push(...figureMarks(spec, start, size, over !== 0));
  const height = y + (spec.ends === undefined ? 13 : 25);
  const words =
    spec.figure === undefined
      ? 0
      : start +
        textWidth(spec.figure.text, size, 560) +
        (spec.figure.unit === undefined ? 2 : textWidth(`\u2009${spec.figure.unit}`, size * 0.62) + 2);
  return { marks, width: Math.max(spec.width, words), height, outside: over !== 0, start, y, at };
}

/** The values at the left and right end of the drawn window. */
function drawnWindow(spec: SillSpec): readonly [number, number] {
  const { lo, hi } = spec.window ?? {};
  if (lo !== undefined && hi !== undefined) return [lo, hi];
  if (hi !== undefined) {
    const length = spec.span ?? (spec.aim !== undefined && spec.aim < hi ? 2 * (hi - spec.aim) : Math.abs(hi) || 1);
    return [hi - length, hi];
  }
  if (lo !== undefined) {
    const length = spec.span ?? (spec.aim !== undefined && spec.aim > lo ? 2 * (spec.aim - lo) : Math.abs(lo) || 1);
    return [lo, lo + length];
  }
  return [0, 1];
}

function bar(standing: NumberStanding, x0: number, x1: number, y: number): Mark[] {
  switch (standing) {
    case 'measured':
      return [line(x0, y, x1, y, { stroke: 'ink', width: 2.4 })];
    case 'computed':
      return [path(slanted(x0 + 0.5, x1, y), { stroke: 'ink', width: 1.2 })];
    case 'assumed':
      return [line(x0 + 1.5, y, x1, y, { stroke: 'ink', width: 2.4, dash: [1.5, 4.5], cap: 'round' })];
    case 'default':
      return [line(x0, y - 1.7, x1, y - 1.7, { stroke: 'ink', width: 0.9 }), line(x0, y + 1.7, x1, y + 1.7, { stroke: 'ink', width: 0.9 })];
    case 'missing':
      return [line(x0, y, x1, y, { stroke: 'ink-2', width: 1.4, dash: [4, 3] })];
  }
}

function valueMarks(spec: SillSpec, at: (value: number) => number, y: number, over: number, stop: number): Mark[] {
  const marks: Mark[] = [];
  if (spec.value === undefined || spec.standing === 'missing') return marks;
  const x = at(spec.bent ?? spec.value);
  if (spec.bent !== undefined) {
    const was = at(spec.value);
    marks.push(line(was, y - 9, x, y - 9, { stroke: 'ink', width: 1.2, dash: [2, 2.5] }));
    marks.push(circle(was, y, 4, { stroke: 'ink', fill: 'paper', width: 1.5 }));
  }
  if (over !== 0) {
    marks.push(line(stop, y, x, y, { stroke: 'act', width: 1.6 }));
    marks.push(wedge(x, y, 10));
    return marks;
  }
  if (spec.drifting === true) marks.push(fuse(spec, x, at, y));
  marks.push(circle(x, y, 4.6, { fill: 'ink', stroke: 'paper', width: 1.6 }));
  return marks;
}

/** Dotted arc from the value to the nearer limit. */
function fuse(spec: SillSpec, x: number, at: (value: number) => number, y: number): Mark {
  const limits = [spec.window?.lo, spec.window?.hi].filter((limit) => limit !== undefined).map(at);
  const to = limits.reduce((best, limit) => (Math.abs(limit - x) < Math.abs(best - x) ? limit : best), limits[0] ?? x);
  const lift = Math.min(10, 4 + Math.abs(to - x) * 0.3);
  return path(new Pen().move(x, y - 5).cubic(x + (to - x) * 0.2, y - 5 - lift, x + (to - x) * 0.8, y - 5 - lift, to, y - 5).d, {
    stroke: 'ink',
    width: 1.4,
    dash: [0.1, 3.2],
    cap: 'round',
  });
}

function figureMarks(spec: SillSpec, x: number, size: number, act: boolean): Mark[] {
  const figure = spec.figure!;
  const baseline = size * 0.8;
  const wide = textWidth(figure.text === '' ? '0.00' : figure.text, size, 560);
  if (spec.standing === 'missing')
    return [rect(x, baseline - size * 0.7, wide, size * 0.74, { stroke: 'ink-2', width: 1.2, dash: [3.5, 3] })];
  const fill: Ink = figure.replaced === true ? 'ink-2' : act ? 'act' : 'ink';
  const runs: Span[] = [{ text: figure.text }];
  if (figure.unit !== undefined) runs.push({ text: `\u2009${figure.unit}`, size: size * 0.62, weight: 520, fill: act ? 'act' : 'ink-2' });
  const marks: Mark[] = [text(x, baseline, runs, size, { weight: 560, fill })];
  if (figure.replaced === true)
    marks.push(line(x - 4, baseline - size * 0.12, x + wide + 4, baseline - size * 0.52, { stroke: 'ink', width: 1.4 }));
  return marks;
}
