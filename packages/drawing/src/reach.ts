import { axis, levelAxis, niceTicks } from './axes.js';
import { requireBetween, requireFinite } from './errors.js';
import { circle, line, rect, text, type Box, type Drawing, type Mark } from './mark.js';
import { textWidth } from './text-width.js';
import { wedge } from './signs.js';

export interface ReachSpec {
  readonly width: number;
  /** Each thing and how far it reaches; Infinity: without end. */
  readonly rows: readonly { readonly id: string; readonly name: string; readonly reach: number; readonly note?: string }[];
  /** What is asked, drawn as an upright through all rows. */
  readonly asked: number;
  readonly askedText: string;
  /** Where things stand now. */
  readonly now?: number;
  /** Reach below asked · (1 + margin) counts as tight; 0 where left out. */
  readonly margin?: number;
  readonly unit: string;
}
export interface ReachDrawing extends Drawing {
  readonly atX: (x: number) => number;
  readonly hits: readonly { readonly id: string; readonly box: Box }[];
}

const pitch = 30;

/** How far each of several things reaches, against one line that all are asked to reach: the shortest stand first and in act. */
export function reach(spec: ReachSpec): ReachDrawing {
  requireBetween('rows, number', spec.rows.length, 1, 60);
  requireFinite('asked', spec.asked);
  const narrow = spec.width < 620;
  const left = 16 + Math.max(...spec.rows.map(({ name }) => textWidth(name, narrow ? 13 : 15, 560)));
  const notes = Math.max(0, ...spec.rows.map(({ note }) => (note === undefined ? 0 : textWidth(note, 14) + 24)));
  const right = spec.width - (narrow ? 12 : Math.max(12, notes));
  const finite = spec.rows.map((row) => row.reach).filter(Number.isFinite);
  // Beyond half as much again nothing is told apart: such rows run off the sheet, with a double cut.
  const from = Math.min(spec.asked, spec.now ?? spec.asked, ...finite) * 0.93;
  const most = Math.min(Math.max(spec.asked * 1.08, ...finite), spec.asked * 1.3);
  const sx = axis('x', [from, most], left, right);
  const top = 30;
  const bottom = top + spec.rows.length * pitch;
  const marks: Mark[] = [];
  const hits: { id: string; box: Box }[] = [];
  spec.rows.forEach((row, at) => {
    const y = top + at * pitch + pitch / 2;
    const short = row.reach < spec.asked * (1 - 1e-9);
    const tight = !short && row.reach < spec.asked * (1 + (spec.margin ?? 0)) * (1 - 1e-9);
    const off = !(row.reach <= most);
    const end = off ? right : sx.at(row.reach);
    marks.push(text(left - 12, y + 5, row.name, narrow ? 13 : 15, { anchor: 'end', ...(short ? { fill: 'act', weight: 560 } : {}) }));
    marks.push(rect(left, y - 7, end - left, 14, { fill: 'shade' }));
    marks.push(line(left, y, Math.min(end, sx.at(spec.asked)), y, { stroke: 'ink', width: 3 }));
    if (off)
      marks.push(line(end - 9, y + 8, end - 4, y - 8, { stroke: 'ink-2', width: 1.2 }), line(end - 4, y + 8, end + 1, y - 8, { stroke: 'ink-2', width: 1.2 })); // prettier-ignore
    else marks.push(line(end, y - 8, end, y + 8, { stroke: short ? 'act' : 'ink', width: tight || short ? 3 : 1.6 }));
    if (short)
      marks.push(line(end, y, sx.at(spec.asked), y, { stroke: 'act', width: 1.6, dash: [3, 3] }), wedge(sx.at(spec.asked), y + 4, 10));
    if (!narrow && row.note !== undefined)
      marks.push(text(right + 14, y + 5, row.note, 14, { fill: short ? 'act' : tight ? 'ink' : 'ink-2' }));
    hits.push({ id: row.id, box: { x: 0, y: y - pitch / 2, w: spec.width, h: pitch } });
  });
  if (spec.now !== undefined) {
    marks.push(line(sx.at(spec.now), top - 4, sx.at(spec.now), bottom, { stroke: 'ink-2', width: 1.2, dash: [1.5, 4.5], cap: 'round' }));
    marks.push(circle(sx.at(spec.now), top - 8, 4, { stroke: 'ink-2', fill: 'paper', width: 1.4 }));
  }
  marks.push(line(sx.at(spec.asked), top - 8, sx.at(spec.asked), bottom, { stroke: 'ink', width: 2 }));
  marks.push(text(sx.at(spec.asked), top - 14, spec.askedText, 15, { anchor: 'middle', weight: 560 }));
  marks.push(...levelAxis(sx, bottom + 6, left, right, niceTicks(from, most, narrow ? 3 : 6)));
  marks.push(text(right, bottom + 41, spec.unit, 13, { anchor: 'end', fill: 'ink-2' }));
  return { marks, width: spec.width, height: bottom + 46, atX: sx.at, hits };
}
