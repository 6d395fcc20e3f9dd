import { axis, levelAxis, niceTicks } from './axes.js';
import { requireBetween } from './errors.js';
import { circle, line, rect, text, type Box, type Drawing, type Mark } from './mark.js';
import { wedge } from './signs.js';
import { textWidth } from './text-width.js';

/** A value with the interval it may lie in, and its limits. */
export interface Whisker {
  readonly id: string;
  readonly name: string;
  /** NaN or left out: not reported, drawn as an outline. */
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
  /** Limits: stops on the row. */
  readonly least?: number;
  readonly most?: number;
  /** Words at the right. */
  readonly note?: string;
  /** Stands back: not what the question is about. */
  readonly pale?: boolean;
}

export interface WhiskersSpec {
  readonly width: number;
  readonly rows: readonly Whisker[];
  /** Left out: what the rows need, from 0 where nothing is below it. */
  readonly x?: readonly [number, number];
  readonly unit: string;
  /** An upright at 0, named. */
  readonly zero?: string;
}
export interface WhiskersDrawing extends Drawing {
  readonly atX: (x: number) => number;
  readonly hits: readonly { readonly id: string; readonly box: Box }[];
}

const pitch = 28;

/** Values with what they may be off by, on one axis, each against its own limits. */
export function whiskers(spec: WhiskersSpec): WhiskersDrawing {
  requireBetween('rows, number', spec.rows.length, 1, 80);
  const narrow = spec.width < 620;
  const left = 16 + Math.max(...spec.rows.map(({ name }) => textWidth(name, narrow ? 13 : 15)));
  const notes = Math.max(0, ...spec.rows.map(({ note }) => (note === undefined ? 0 : textWidth(note, 14) + 26)));
  const right = spec.width - (narrow ? 14 : Math.max(14, notes));
  const all = spec.rows
    .flatMap(({ value, low, high, least, most }) => [value, low, high, least, most])
    .filter((x): x is number => x !== undefined && Number.isFinite(x));
  const [low, high] = [Math.min(0, ...all), Math.max(0, ...all)];
  const room = (high - low || 1) * 0.05;
  const sx = axis('x', spec.x ?? [low < 0 ? low - room : 0, high + room], left, right);
  const top = spec.zero === undefined ? 6 : 24;
  const bottom = top + spec.rows.length * pitch;
  const marks: Mark[] = [];
  const hits: { id: string; box: Box }[] = [];
  if (spec.zero !== undefined) {
    marks.push(line(sx.at(0), top - 4, sx.at(0), bottom, { stroke: 'ink', width: 2 }));
    marks.push(text(sx.at(0), top - 10, spec.zero, 13, { anchor: 'middle', fill: 'ink-2' }));
  }
  spec.rows.forEach((row, at) => {
    const y = top + (at + 0.5) * pitch;
    marks.push(line(left, y, right, y, { stroke: 'hair', width: 0.6 }));
    marks.push(text(left - 12, y + 5, row.name, narrow ? 13 : 15, { anchor: 'end', ...(row.pale ? { fill: 'ink-2' as const } : {}) }));
    marks.push(...rowMarks(row, sx.at, y));
    if (!narrow && row.note !== undefined) marks.push(text(right + 16, y + 5, row.note, 14, { fill: outside(row) ? 'act' : 'ink-2' }));
    hits.push({ id: row.id, box: { x: 0, y: y - pitch / 2, w: spec.width, h: pitch } });
  });
  marks.push(...levelAxis(sx, bottom + 4, left, right, niceTicks(sx.from, sx.to, narrow ? 3 : 6)));
  marks.push(text(right, bottom + 39, spec.unit, 13, { anchor: 'end', fill: 'ink-2' }));
  return { marks, width: spec.width, height: bottom + 44, atX: sx.at, hits };
}

function outside({ value, least, most, pale }: Whisker): boolean {
  return value !== undefined && !pale && ((most !== undefined && value > most) || (least !== undefined && value < least));
}

function rowMarks(row: Whisker, atX: (x: number) => number, y: number): Mark[] {
  const { value, low, high, least, most, pale } = row;
  const marks: Mark[] = [];
  for (const limit of [least, most])
    if (limit !== undefined) marks.push(line(atX(limit), y - 9, atX(limit), y + 9, { stroke: 'ink', width: 2 }));
  if (value === undefined || Number.isNaN(value)) {
    marks.push(rect(atX(0) + 6, y - 7, 26, 14, { stroke: 'ink-2', width: 1.1, dash: [3, 2.4] }));
    return marks;
  }
  const ink = outside(row) ? 'act' : pale ? 'ink-2' : 'ink';
  if (low !== undefined && high !== undefined) {
    marks.push(line(atX(low), y, atX(high), y, { stroke: ink, width: 1.4 }));
    marks.push(line(atX(low), y - 5, atX(low), y + 5, { stroke: ink, width: 1.4 }), line(atX(high), y - 5, atX(high), y + 5, { stroke: ink, width: 1.4 })); // prettier-ignore
  } else marks.push(line(atX(0), y, atX(value), y, { stroke: ink, width: pale ? 1.4 : 3 }));
  if (outside(row)) marks.push(wedge(atX(value), y + 4, 11));
  else
    marks.push(
      circle(atX(value), y, 4.4, pale ? { stroke: 'ink-2', fill: 'paper', width: 1.4 } : { fill: 'ink', stroke: 'paper', width: 1.4 }),
    );
  return marks;
}
