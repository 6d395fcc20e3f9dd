import type { Ink, Mark, Paint, Span } from './mark.js';
import { n, Pen } from './pen.js';

/** A shape in sheet coordinates, ready for any vector writer. */
export interface FlatPath {
  readonly kind: 'path';
  readonly d: string;
  readonly stroke?: Ink;
  readonly fill?: Ink;
  readonly width: number;
  readonly dash?: readonly number[];
  readonly cap: 'butt' | 'round';
  readonly join: 'miter' | 'round';
  readonly evenOdd: boolean;
}
/** A line of text in sheet coordinates; (x, y) is the anchor on the baseline. */
export interface FlatText {
  readonly kind: 'text';
  readonly x: number;
  readonly y: number;
  readonly spans: readonly (Span & { readonly text: string; readonly size: number; readonly weight: number; readonly fill: Ink })[];
  readonly font: 'num' | 'say';
  readonly italic: boolean;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Clockwise turn about the anchor, degrees. */
  readonly turn: number;
}
export type Flat = FlatPath | FlatText;

/** Scale, turn, then shift: x' = a x - b y + e, y' = b x + a y + f. */
interface Frame {
  readonly a: number;
  readonly b: number;
  readonly e: number;
  readonly f: number;
}
const still: Frame = { a: 1, b: 0, e: 0, f: 0 };

/** The picture without groups: every shape a path with absolute coordinates, in painting order. */
export function flatten(marks: readonly Mark[]): Flat[] {
  const out: Flat[] = [];
  for (const mark of marks) put(mark, still, out);
  return out;
}

function put(mark: Mark, frame: Frame, out: Flat[]): void {
  const size = Math.hypot(frame.a, frame.b);
  switch (mark.tag) {
    case 'g': {
      const inner = within(frame, mark.at ?? [0, 0], mark.scale ?? 1, mark.turn ?? 0);
      for (const child of mark.children) put(child, inner, out);
      return;
    }
    case 'path':
      out.push(flat(mark, movePath(mark.d, frame), size));
      return;
    case 'line':
      out.push(flat(mark, movePath(new Pen().segment(mark.x1, mark.y1, mark.x2, mark.y2).d, frame), size));
      return;
    case 'rect':
      out.push(flat(mark, movePath(new Pen().rect(mark.x, mark.y, mark.w, mark.h).d, frame), size));
      return;
    case 'circle':
      out.push(flat(mark, movePath(new Pen().ring(mark.cx, mark.cy, mark.r).d, frame), size));
      return;
    case 'text': {
      const runs: readonly Span[] = typeof mark.text === 'string' ? [{ text: mark.text }] : mark.text;
      const spans = runs.map((run) => ({
        text: run.text,
        size: (run.size ?? mark.size) * size,
        weight: run.weight ?? mark.weight ?? 520,
        fill: run.fill ?? mark.fill ?? ('ink' as const),
        ...(run.dy === undefined ? {} : { dy: run.dy * size }),
      }));
      out.push({
        kind: 'text',
        x: frame.a * mark.x - frame.b * mark.y + frame.e,
        y: frame.b * mark.x + frame.a * mark.y + frame.f,
        spans,
        font: mark.font ?? 'num',
        italic: mark.italic ?? false,
        anchor: mark.anchor ?? 'start',
        turn: (Math.atan2(frame.b, frame.a) * 180) / Math.PI,
      });
    }
  }
}

function within(frame: Frame, at: readonly [number, number], scale: number, turn: number): Frame {
  const a = scale * Math.cos((turn * Math.PI) / 180);
  const b = scale * Math.sin((turn * Math.PI) / 180);
  return {
    a: frame.a * a - frame.b * b,
    b: frame.b * a + frame.a * b,
    e: frame.a * at[0] - frame.b * at[1] + frame.e,
    f: frame.b * at[0] + frame.a * at[1] + frame.f,
  };
}

function flat(mark: Paint, d: string, size: number): FlatPath {
  return {
    kind: 'path',
    d,
    ...(mark.stroke === undefined ? {} : { stroke: mark.stroke }),
    ...(mark.fill === undefined ? {} : { fill: mark.fill }),
    width: (mark.width ?? 1) * size,
    ...(mark.dash === undefined ? {} : { dash: mark.dash.map((length) => length * size) }),
    cap: mark.cap ?? 'butt',
    join: mark.join ?? 'miter',
    evenOdd: mark.evenOdd ?? false,
  };
}

const counts: Record<string, number> = { M: 2, L: 2, C: 6, Q: 4, A: 7, a: 7, Z: 0 };

/** Path data moved into another frame. Knows the commands `Pen` writes. */
function movePath(d: string, frame: Frame): string {
  if (frame === still || (frame.a === 1 && frame.b === 0 && frame.e === 0 && frame.f === 0)) return d;
  const size = Math.hypot(frame.a, frame.b);
  const turn = (Math.atan2(frame.b, frame.a) * 180) / Math.PI;
  const at = (x: number, y: number, absolute: boolean): string =>
    `${n(frame.a * x - frame.b * y + (absolute ? frame.e : 0))} ${n(frame.b * x + frame.a * y + (absolute ? frame.f : 0))}`;
  return d.replace(/([A-Za-z])([^A-Za-z]*)/g, (_whole, command: string, rest: string) => {
    const numbers = rest.match(/-?\d*\.?\d+(?:e-?\d+)?/g)?.map(Number) ?? [];
    if (counts[command] !== numbers.length)
      throw new RangeError(`path command ${command} with ${numbers.length} numbers, but ${counts[command] ?? 'no such command'} expected`);
    if (command === 'Z') return 'Z';
    if (command === 'A' || command === 'a') {
      const [rx, ry, angle, large, sweep, x, y] = numbers as [number, number, number, number, number, number, number];
      return `${command}${n(rx * size)} ${n(ry * size)} ${n(angle + turn)} ${large} ${sweep} ${at(x, y, command === 'A')}`;
    }
    const points: string[] = [];
    for (let i = 0; i < numbers.length; i += 2) points.push(at(numbers[i]!, numbers[i + 1]!, true));
    return `${command}${points.join(' ')}`;
  });
}
