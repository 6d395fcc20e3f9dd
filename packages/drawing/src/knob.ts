import { DrawingError, requireBetween, requireFinite } from './errors.js';
import { circle, line, path, rect, text, type Box, type Drawing, type Mark } from './mark.js';
import { Pen } from './pen.js';
import { textWidth } from './text-width.js';

export interface KnobPost {
  /** A limit the knob will not pass. */
  readonly at: number;
  /** Why, in a word or two. */
  readonly text?: string;
  /** How the limit is known; an assumed one is drawn in outline. */
  readonly assumed?: boolean;
}
export interface KnobSpec {
  readonly width: number;
  readonly min: number;
  readonly max: number;
  /** Where the knob stands. */
  readonly value: number;
  /** The true value, when the knob has been pulled away from it. */
  readonly truth?: number;
  readonly window?: { readonly lo?: number; readonly hi?: number };
  readonly posts?: readonly KnobPost[];
  /** The number above the knob. */
  readonly text?: string;
  /** Locked: the pointer is hollow. */
  readonly locked?: boolean;
  readonly tablet?: boolean;
}
export interface KnobDrawing extends Drawing {
  /** Place of a value, px. */
  readonly at: (value: number) => number;
  /** Value at a place, never past a post or the end of the rule. */
  readonly valueAt: (x: number) => number;
  /** The part to grab, at least 28 px wide on a desk and 56 on a tablet. */
  readonly grip: Box;
  /** y of the rule. */
  readonly y: number;
  /** Index of the post the knob stands at, if it does. */
  readonly post?: number;
}

/** A set point as a house-shaped pointer on a rule: window as a bar, limits as posts, a ring where the truth is. */
export function knob(spec: KnobSpec): KnobDrawing {
  const { width, min, max } = spec;
  requireBetween('width', width, 60, 4000, 'px');
  if (!(max > min)) throw new DrawingError('min', min, `a value below max (${max})`);
  requireBetween('value', spec.value, min, max);
  if (spec.truth !== undefined) requireFinite('truth', spec.truth);
  const big = spec.tablet === true ? 1.5 : 1;
  const margin = 12 * big;
  const at = (value: number): number => margin + ((Math.min(max, Math.max(min, value)) - min) / (max - min)) * (width - 2 * margin);
  const y = 44 * big;
  const x = at(spec.value);
  const marks: Mark[] = [line(0, y, width, y, { stroke: 'rule', width: 1.6 })];
  const { lo, hi } = spec.window ?? {};
  if (lo !== undefined || hi !== undefined) {
    const x0 = lo === undefined ? 0 : at(lo);
    const x1 = hi === undefined ? width : at(hi);
    marks.push(line(x0, y, x1, y, { stroke: 'ink', width: 4, id: 'window' }));
    for (const end of [lo, hi]) if (end !== undefined) marks.push(line(at(end), y - 6, at(end), y + 6, { stroke: 'ink', width: 1.6 }));
  }
  const posts = spec.posts ?? [];
  const near = posts.findIndex((post) => Math.abs(at(post.at) - x) < 6);
  let last = -Infinity;
  posts.forEach((post, index) => {
    const px = at(post.at);
    const w = index === near ? 14 : 8;
    const box = [px - w / 2, y - 22 * big, w, 32 * big] as const;
    marks.push(rect(...box, post.assumed === true ? { fill: 'paper', stroke: 'ink', width: 1.6 } : { fill: 'ink' }));
    if (post.text === undefined) return;
    const half = textWidth(post.text, 14) / 2;
    const tx = Math.min(width - half, Math.max(half, px));
    marks.push(
      text(tx, y + (tx - half < last ? 44 : 28) * big, post.text, spec.tablet === true ? 16 : 14, { anchor: 'middle', fill: 'ink-2' }),
    );
    last = tx + half + 8;
  });
  if (spec.truth !== undefined && Math.abs(at(spec.truth) - x) > 1) {
    const tx = at(spec.truth);
    marks.push(
      path(
        new Pen()
          .move(tx, y - 6)
          .to(tx, y - 12 * big)
          .to(x, y - 12 * big).d,
        { stroke: 'ink', width: 1.4, dash: [2.5, 2.8] },
      ),
    );
    marks.push(circle(tx, y, 5.2, { stroke: 'ink', fill: 'paper', width: 1.8, id: 'truth' }));
  }
  const half = 11 * big;
  const house = new Pen()
    .move(x - half, y - 14 * big)
    .to(x + half, y - 14 * big)
    .to(x + half, y + 8 * big)
    .to(x, y + 18 * big)
    .to(x - half, y + 8 * big)
    .close();
  marks.push(path(house.d, spec.locked === true ? { fill: 'paper', stroke: 'ink', width: 1.6, id: 'knob' } : { fill: 'ink', id: 'knob' }));
  if (spec.text !== undefined) {
    const size = spec.tablet === true ? 24 : 18;
    const w = textWidth(spec.text, size, 560) / 2;
    marks.push(
      text(Math.min(width - w, Math.max(w, x)), y - (near >= 0 ? 27 : 24) * big, spec.text, size, { weight: 560, anchor: 'middle' }),
    );
  }
  const reach = Math.max(half * 2, spec.tablet === true ? 56 : 28);
  const below = posts.filter((post) => post.at < (spec.truth ?? spec.value)).map((post) => post.at);
  const above = posts.filter((post) => post.at >= (spec.truth ?? spec.value)).map((post) => post.at);
  const floor = Math.max(min, ...below);
  const roof = Math.min(max, ...above);
  return {
    marks,
    width,
    height: y + (posts.some((post) => post.text !== undefined) ? 50 : 24) * big,
    at,
    valueAt: (px) => Math.min(roof, Math.max(floor, min + ((px - margin) / (width - 2 * margin)) * (max - min))),
    grip: { x: x - reach / 2, y: y - 18 * big, w: reach, h: Math.max(40 * big, reach) },
    y,
    ...(near >= 0 ? { post: near } : {}),
  };
}
