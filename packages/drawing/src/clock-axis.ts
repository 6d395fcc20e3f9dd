import { DrawingError } from './errors.js';
import { spread } from './leaders.js';
import { line, path, text, type Mark } from './mark.js';
import { Pen } from './pen.js';
import { textWidth } from './text-width.js';

/** One stretch of time drawn at one scale; between stretches the scale breaks at a double cut mark. Minutes. */
export interface ClockPiece {
  readonly from: number;
  readonly to: number;
  /** Share of the length, 0 to 1. */
  readonly share: number;
}
export interface ClockTick {
  readonly at: number;
  /** The clock time, as words. */
  readonly text: string;
  /** What happens there. */
  readonly word?: string;
}
export interface Clock {
  readonly x: (minute: number) => number;
  readonly breaks: readonly number[];
  readonly x0: number;
  readonly x1: number;
}

const cut = 16;

/** Places minutes along the stretches, left to right; a time in a break stands at its nearer end. */
export function clock(pieces: readonly ClockPiece[], x0: number, x1: number): Clock {
  if (pieces.length === 0) throw new DrawingError('clock', 'empty', 'at least one stretch of time');
  pieces.forEach((piece, at) => {
    if (!(piece.to > piece.from))
      throw new DrawingError(`clock[${at}]`, `${piece.from} to ${piece.to}`, 'a stretch that ends after it begins');
    const before = pieces[at - 1];
    if (before !== undefined && piece.from < before.to)
      throw new DrawingError(`clock[${at}].from`, piece.from, `a time not before ${before.to}`);
  });
  const shares = pieces.reduce((sum, piece) => sum + piece.share, 0);
  const room = x1 - x0 - cut * (pieces.length - 1);
  const starts: number[] = [];
  let x = x0;
  for (const piece of pieces) {
    starts.push(x);
    x += (piece.share / shares) * room + cut;
  }
  const place = (minute: number): number => {
    for (let k = pieces.length - 1; k >= 0; k -= 1) {
      const piece = pieces[k]!;
      if (minute < piece.from && k > 0) {
        const before = pieces[k - 1]!;
        if (minute > before.to && minute - before.to > piece.from - minute) return starts[k]!;
        continue;
      }
      const part = Math.min(1, Math.max(0, (minute - piece.from) / (piece.to - piece.from)));
      return starts[k]! + part * (piece.share / shares) * room;
    }
    return x0;
  };
  return { x: place, breaks: starts.slice(1).map((start) => start - cut / 2), x0, x1 };
}

/** The axis itself: one line, a tick per minute where there is room, named ticks with time and word, double cut marks. */
export function clockAxis(scale: Clock, pieces: readonly ClockPiece[], ticks: readonly ClockTick[], y: number): Mark[] {
  const marks: Mark[] = [];
  const base = new Pen();
  let from = scale.x0;
  for (const at of scale.breaks) {
    base.segment(from, y, at - 4, y);
    from = at + 4;
  }
  base.segment(from, y, scale.x1, y);
  const small = new Pen();
  for (const piece of pieces) {
    const perMinute = (scale.x(piece.to) - scale.x(piece.from)) / (piece.to - piece.from);
    const step = [1, 5, 10, 30, 60].find((minutes) => minutes * perMinute >= 14) ?? 60;
    for (let m = Math.ceil(piece.from / step) * step; m <= piece.to + 1e-9; m += step) small.segment(scale.x(m), y - 4, scale.x(m), y);
  }
  const cuts = new Pen();
  for (const at of scale.breaks) {
    cuts.segment(at - 6, y + 7, at - 1, y - 7);
    cuts.segment(at + 1, y + 7, at + 6, y - 7);
  }
  marks.push(path(base.d, { stroke: 'ink-2', width: 1.4 }));
  if (!small.empty) marks.push(path(small.d, { stroke: 'rule', width: 1 }));
  if (!cuts.empty) marks.push(path(cuts.d, { stroke: 'ink', width: 1.4 }));
  const wide = ticks.map((tick) => Math.max(textWidth(tick.text, 16, 560), textWidth(tick.word ?? '', 13)) + 10);
  const xs = spread(
    ticks.map((tick) => scale.x(tick.at)),
    (a, b) => (wide[a]! + wide[b]!) / 2,
  );
  ticks.forEach((tick, at) => {
    const x = scale.x(tick.at);
    marks.push(line(x, y - 7, x, y + 6, { stroke: 'ink', width: 1.6 }));
    if (Math.abs(xs[at]! - x) > 6) marks.push(line(x, y + 6, xs[at]!, y + 13, { stroke: 'rule', width: 0.8 }));
    marks.push(text(xs[at]!, y + 27, tick.text, 16, { weight: 560, anchor: 'middle' }));
    if (tick.word !== undefined) marks.push(text(xs[at]!, y + 45, tick.word, 13, { anchor: 'middle', fill: 'ink-2' }));
  });
  return marks;
}
