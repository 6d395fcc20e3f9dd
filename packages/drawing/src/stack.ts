import { DrawingError, requireBetween } from './errors.js';
import { hatch } from './geometry/hatch.js';
import type { Point } from './geometry/polygon.js';
import { sideLabels } from './leaders.js';
import { line, path, rect, text, type Box, type Drawing, type Mark } from './mark.js';
import { Pen } from './pen.js';
import { textWidth } from './text-width.js';
import { boxTexture, type Material } from './textures/strip.js';

export interface StackPart {
  readonly id: string;
  readonly label: string;
  readonly material: Material;
  /** Mass, in the unit of the whole stack. */
  readonly amount: number;
  /** The amount as words. */
  readonly text: string;
}
export interface StackSpec {
  readonly width: number;
  readonly height: number;
  /** What goes in, from above. */
  readonly charged: readonly StackPart[];
  /** What is left, from above: usually one mass; its `note` lines stand under its amount. */
  readonly left: readonly (StackPart & { readonly note?: readonly string[] })[];
  /** What goes away, from above: water boiled off, air taken in counts with a part of `charged`. */
  readonly gone?: readonly StackPart[];
  readonly heads?: { readonly charged?: string; readonly left?: string };
  /** Balance as a sentence, and whose recipe it is. */
  readonly balance?: { readonly text: string; readonly note?: string };
  /** Difference below which the two columns count as equal; default a millionth of the charge. */
  readonly tolerance?: number;
}
export interface StackDrawing extends Drawing {
  readonly hits: readonly { readonly id: string; readonly box: Box }[];
  readonly pxPerUnit: number;
  /** Charged minus left minus gone. */
  readonly gap: number;
}

/** A recipe as its true mass: the charge in the textures of its ingredients, beside it what is left and what has gone. */
export function stack(spec: StackSpec): StackDrawing {
  for (const part of [...spec.charged, ...spec.left, ...(spec.gone ?? [])])
    requireBetween(`stack (${part.id}).amount`, part.amount, 0, Infinity);
  const charged = sum(spec.charged);
  const out = sum(spec.left) + sum(spec.gone ?? []);
  if (!(charged > 0)) throw new DrawingError('charged', charged, 'a mass above 0');
  const labelWide = Math.max(0, ...spec.charged.map((part) => textWidth(part.label, 14) + textWidth(part.text, 15, 560))) + 30;
  const top = 26;
  const floor = spec.height - (spec.balance === undefined ? 6 : 48);
  const scale = (floor - top) / Math.max(charged, out);
  const room = spec.width - labelWide - 8;
  const w = Math.min(120, room * 0.4);
  const x1 = labelWide;
  const x2 = labelWide + w + Math.min(60, room * 0.2);
  const marks: Mark[] = [];
  const hits: { id: string; box: Box }[] = [];
  const gone = sum(spec.gone ?? []) * scale;
  const first = floor - charged * scale;
  const second = floor - out * scale;
  // the pale passage from the whole charge to what is left of it
  const passage = new Pen()
    .move(x1 + w, first)
    .cubic(x1 + w + (x2 - x1 - w) * 0.5, first, x1 + w + (x2 - x1 - w) * 0.5, second + gone, x2, second + gone)
    .to(x2, floor)
    .to(x1 + w, floor)
    .close();
  marks.push(path(passage.d, { fill: 'shade-2' }));
  column(spec.charged, x1, first, w, scale, marks, hits, false);
  const y = column(spec.gone ?? [], x2, second, w, scale, marks, hits, true);
  column(spec.left, x2, y, w, scale, marks, hits, false);
  const tops = offsets(spec.charged, first, scale);
  const labels = sideLabels(
    spec.charged.map((part, at) => ({ id: part.id, text: part.label, figure: part.text, y: (tops[at]! + tops[at + 1]!) / 2 })),
    x1,
    'left',
    14,
    top,
    floor + 14,
  );
  marks.push(...labels.marks);
  const wordsTop = offsets(spec.left, y, scale);
  spec.left.forEach((part, at) =>
    marks.push(
      ...boxed(x2, w, wordsTop[at]!, wordsTop[at + 1]!, part.text, [...(part.label === '' ? [] : [part.label]), ...(part.note ?? [])]),
    ),
  );
  const goneTop = offsets(spec.gone ?? [], second, scale);
  (spec.gone ?? []).forEach((part, at) => marks.push(...boxed(x2, w, goneTop[at]!, goneTop[at + 1]!, part.text, [part.label])));
  const gap = charged - out;
  if (Math.abs(gap) > (spec.tolerance ?? charged * 1e-6)) marks.push(...openEnd(x2, w, first, second, gap > 0));
  if (spec.heads?.charged !== undefined) marks.push(text(x1, Math.min(first, second) - 10, spec.heads.charged, 13, { fill: 'ink-2' }));
  if (spec.heads?.left !== undefined) marks.push(text(x2, Math.min(first, second) - 10, spec.heads.left, 13, { fill: 'ink-2' }));
  if (spec.balance !== undefined) {
    marks.push(line(x1, floor + 0.8, x2 + w, floor + 0.8, { stroke: 'ink', width: 1.6 }));
    marks.push(text(x1, floor + 22, spec.balance.text, 15, { weight: 560 }));
    if (spec.balance.note !== undefined) marks.push(text(x1, floor + 41, spec.balance.note, 13, { fill: 'ink-2' }));
  }
  return { marks, width: spec.width, height: spec.height, hits, pxPerUnit: scale, gap };
}

const sum = (parts: readonly StackPart[]): number => parts.reduce((all, part) => all + part.amount, 0);

function offsets(parts: readonly StackPart[], top: number, scale: number): number[] {
  const out = [top];
  for (const part of parts) out.push(out[out.length - 1]! + part.amount * scale);
  return out;
}

function column(
  parts: readonly StackPart[],
  x: number,
  top: number,
  w: number,
  scale: number,
  marks: Mark[],
  hits: { id: string; box: Box }[],
  leaving: boolean,
): number {
  let y = top;
  for (const part of parts) {
    const h = part.amount * scale;
    if (h > 0) {
      if (part.material.endsWith('chocolate') && part.material !== 'white-chocolate') marks.push(rect(x, y, w, h, { fill: 'coat' }));
      marks.push(...boxTexture(part.material, x, y, w, h));
      marks.push(rect(x, y, w, h, leaving ? { stroke: 'ink-2', width: 1.2, dash: [3, 3] } : { stroke: 'ink', width: 1.2 }));
      hits.push({ id: part.id, box: { x, y, w, h } });
    }
    y += h;
  }
  return y;
}

/** Words on paper cut out of a texture, in the middle of a part; beside it when the part is too low for them. */
function boxed(x: number, w: number, top: number, bottom: number, figure: string, notes: readonly string[]): Mark[] {
  const high = 22 + notes.length * 16;
  const wide = Math.max(textWidth(figure, 16, 560), ...notes.map((note) => textWidth(note, 13))) + 14;
  const inside = bottom - top >= high + 8 && wide <= w + 30;
  const middle = (top + bottom) / 2;
  const cx = inside ? x + w / 2 : x + w + 10 + wide / 2;
  const y = middle - high / 2;
  const marks: Mark[] = [];
  if (inside) marks.push(rect(cx - Math.min(wide, w - 6) / 2, y, Math.min(wide, w - 6), high, { fill: 'paper' }));
  else marks.push(line(x + w, middle, x + w + 8, middle, { stroke: 'rule', width: 0.8 }));
  marks.push(text(cx, y + 17, figure, 16, { weight: 560, anchor: 'middle' }));
  notes.forEach((note, at) => marks.push(text(cx, y + 33 + at * 16, note, 13, { anchor: 'middle', fill: 'ink-2' })));
  return marks;
}

/** What is not accounted for: an open, hatched end in act. */
function openEnd(x: number, w: number, first: number, second: number, missing: boolean): Mark[] {
  const y0 = Math.min(first, second);
  const y1 = Math.max(first, second);
  const box: Point[] = [
    [x, y0],
    [x + w, y0],
    [x + w, y1],
    [x, y1],
  ];
  const marks: Mark[] = [];
  const d = hatch(box, { pitch: 5.2 });
  if (d !== '') marks.push(path(d, { stroke: 'act', width: 1.2 }));
  marks.push(
    path(
      new Pen()
        .move(x, y1)
        .to(x, y0)
        .move(x + w, y1)
        .to(x + w, y0).d,
      { stroke: 'act', width: 1.6, id: missing ? 'missing' : 'surplus' },
    ),
  );
  return marks;
}
