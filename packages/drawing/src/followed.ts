import { axis, type Axis } from './axes.js';
import { DrawingError, requireBetween } from './errors.js';
import { hatch } from './geometry/hatch.js';
import { line, path, rect, text, type Box, type Drawing, type Mark } from './mark.js';
import { Pen } from './pen.js';
import { textWidth } from './text-width.js';

/** A stretch of the common axis. */
export interface FollowedSpan {
  readonly from: number;
  readonly to: number;
}

/** A window at a place above, and when the same bars are packed below. */
export interface FollowedRow {
  readonly id: string;
  /** What happens there: 'enrobed'. */
  readonly name: string;
  readonly here: FollowedSpan;
  readonly packed: FollowedSpan;
  /** The same to be safe; they enclose the first two. */
  readonly safeHere: FollowedSpan;
  readonly safePacked: FollowedSpan;
  /** Words at the two ends of the window; left out: none. */
  readonly ends?: readonly [string, string];
}

export interface FollowedPallet {
  readonly id: string;
  readonly name: string;
  readonly from: number;
  readonly to: number;
  /** Whether the window surely touches it, may touch it, or not. */
  readonly touched: 'proven' | 'safe' | 'no';
  /** Still being filled: its end is not known. */
  readonly open?: boolean;
}

export interface FollowedSpec {
  readonly width: number;
  readonly x: readonly [number, number];
  readonly ticks: readonly { readonly at: number; readonly text: string }[];
  readonly rows: readonly FollowedRow[];
  readonly pallets: readonly FollowedPallet[];
  /** Between two strands, in units of the axis; default a hundredth and a half of it. */
  readonly pitch?: number;
  /** End of what the logs cover: later is dotted. */
  readonly known?: number;
  /** Words in place of pallets where there are none. */
  readonly none?: string;
}

export interface FollowedDrawing extends Drawing {
  readonly atX: (x: number) => number;
  readonly hits: readonly { readonly id: string; readonly box: Box }[];
}

const rowHeight = 38;
const between = 118;
const tile = 32;

/**
 * Two rulers on one clock: above, the time at a place of the line; below, pallets by the time they were packed. Strands tie what left the one
 * to where it lies on the other; they lean by the transit. What is proven is ink, what is only to be safe is dashed and hatched.
 */
export function followed(spec: FollowedSpec): FollowedDrawing {
  requireBetween('rows, number of windows', spec.rows.length, 1, 12);
  const narrow = spec.width < 620;
  const left = narrow ? 78 : 112;
  const right = spec.width - 18;
  const sx = axis('x', spec.x, left, right);
  const clip = (x: number): number => Math.min(right, Math.max(left, sx.at(x)));
  const marks: Mark[] = [];
  const hits: { id: string; box: Box }[] = [];
  const yPallets = 26 + spec.rows.length * rowHeight + between;
  spec.rows.forEach((row, at) => {
    checked(row);
    const y = 26 + at * rowHeight;
    marks.push(...strands(row, sx, clip, y, yPallets - 4, spec.pitch ?? (spec.x[1] - spec.x[0]) / 66, left, right));
  });
  spec.rows.forEach((row, at) => {
    const y = 26 + at * rowHeight;
    marks.push(...ruler(row, clip, y, left, right, spec.known));
    hits.push({ id: row.id, box: { x: 0, y: y - 20, w: spec.width, h: rowHeight } });
  });
  marks.push(text(0, yPallets + tile / 2 + 5, 'pallets', narrow ? 13 : 15, { weight: 560 }));
  if (spec.pallets.length === 0)
    marks.push(
      rect(left, yPallets, right - left, tile, { stroke: 'ink-2', width: 1.2, dash: [3, 2.4] }),
      text((left + right) / 2, yPallets + tile / 2 + 5, spec.none ?? 'no pallet', 13, { anchor: 'middle', fill: 'ink-2' }),
    );
  marks.push(...tiles(spec.pallets, clip, yPallets, hits));
  const y = yPallets + tile + 26;
  marks.push(line(left, y, clip(spec.known ?? spec.x[1]), y, { stroke: 'ink-2', width: 1.2 }));
  if (spec.known !== undefined && spec.known < spec.x[1])
    marks.push(line(clip(spec.known) + 4, y, right, y, { stroke: 'ink-2', width: 1.6, dash: [0.1, 5], cap: 'round' }));
  for (const tick of spec.ticks) {
    if (tick.at < spec.x[0] || tick.at > spec.x[1]) continue;
    marks.push(line(sx.at(tick.at), y, sx.at(tick.at), y - 5, { stroke: 'ink-2', width: 1 }));
    marks.push(text(sx.at(tick.at), y + 17, tick.text, 13, { anchor: 'middle', fill: 'ink-2' }));
  }
  return { marks, width: spec.width, height: y + 26, atX: sx.at, hits };
}

function checked({ id, here, packed, safeHere, safePacked }: FollowedRow): void {
  for (const [name, span] of Object.entries({ here, packed, safeHere, safePacked }))
    if (!(span.to >= span.from)) throw new DrawingError(`${id}.${name}`, `${span.from} to ${span.to}`, 'an end after the beginning');
}

/** The time at a place: hair along the day, ink where the window is, hatched where it is only to be safe. */
function ruler(row: FollowedRow, clip: (x: number) => number, y: number, left: number, right: number, known = Infinity): Mark[] {
  const { name, here, safeHere, ends } = row;
  const [a, b] = [clip(here.from), clip(here.to)];
  const marks: Mark[] = [
    text(0, y + 5, name, 15, { weight: 560 }),
    line(left, y, Math.min(right, clip(known)), y, { stroke: 'rule', width: 1 }),
  ];
  for (const [from, to] of [
    [clip(safeHere.from), a],
    [b, clip(safeHere.to)],
  ] as const)
    if (to - from > 0.5) marks.push(...box(from, to, y - 6, 6));
  marks.push(line(a, y, b > a ? b : a + 1, y, { stroke: 'ink', width: 5 }));
  for (const x of [a, b]) marks.push(line(x, y - 9, x, y + 5, { stroke: 'ink', width: 1.6 }));
  if (ends) marks.push(...endWords(ends, a, b, y - 12, left, right));
  return marks;
}

/** Words of both ends above the ruler, moved apart where they would meet. */
function endWords([first, last]: readonly [string, string], a: number, b: number, y: number, left: number, right: number): Mark[] {
  const [wideA, wideB] = [textWidth(first, 13, 560), textWidth(last, 13, 560)];
  let xa = a - wideA / 2;
  let xb = b - wideB / 2;
  const meet = xa + wideA + 10 - xb;
  if (meet > 0) {
    xa -= meet / 2;
    xb += meet / 2;
  }
  const shift = Math.max(0, left - xa) - Math.max(0, xb + wideB - right);
  return [text(xa + shift, y, first, 13, { weight: 560 }), text(xb + shift, y, last, 13, { weight: 560 })];
}

function box(x0: number, x1: number, y: number, h: number): Mark[] {
  const d = hatch([[x0, y], [x1, y], [x1, y + h], [x0, y + h]], { pitch: 4.5 }); // prettier-ignore
  return [
    ...(d === '' ? [] : [path(d, { stroke: 'ink-2', width: 0.9 })]),
    line(x0, y + h, x1, y + h, { stroke: 'ink-2', width: 1.2, dash: [3, 4] }),
  ];
}

/** Strands at an even pitch of time; those between the safe and the proven end are dashed. */
function strands(
  { here, packed, safeHere, safePacked }: FollowedRow,
  sx: Axis,
  clip: (x: number) => number,
  y0: number,
  y1: number,
  pitch: number,
  left: number,
  right: number,
): Mark[] {
  const inside = (x: number) => sx.at(x) >= left - 0.5 && sx.at(x) <= right + 0.5;
  const drawn = (a: FollowedSpan, b: FollowedSpan, ends: boolean): Pen => {
    const pen = new Pen();
    const span = Math.max(a.to - a.from, b.to - b.from);
    const count = Math.min(400, Math.max(1, Math.round(span / pitch)));
    for (let i = ends ? 0 : 1; i <= (ends ? count : count - 1); i++) {
      const at = (of: FollowedSpan) => of.from + ((of.to - of.from) * i) / count;
      const [from, to] = [at(a), at(b)];
      if (!inside(from) && !inside(to)) continue;
      const [xa, xb, half] = [clip(from), clip(to), (y1 - y0) / 2];
      pen.move(xa, y0 + 3).cubic(xa, y0 + half, xb, y1 - half, xb, y1);
    }
    return pen;
  };
  const proven = drawn(here, packed, true);
  const early = drawn({ from: safeHere.from, to: here.from }, { from: safePacked.from, to: packed.from }, false);
  const late = drawn({ from: here.to, to: safeHere.to }, { from: packed.to, to: safePacked.to }, false);
  return [
    ...[early, late].filter((pen) => !pen.empty).map((pen) => path(pen.d, { stroke: 'ink-3', width: 1, dash: [3, 4] })),
    ...(proven.empty ? [] : [path(proven.d, { stroke: 'ink', width: 1.1 })]),
  ];
}

function tiles(pallets: readonly FollowedPallet[], clip: (x: number) => number, y: number, hits: { id: string; box: Box }[]): Mark[] {
  const marks: Mark[] = [];
  const chosen: Mark[] = [];
  const touchedAt = pallets.flatMap(({ touched }, at) => (touched === 'no' ? [] : [at]));
  const sureAt = touchedAt.filter((at) => pallets[at]!.touched === 'proven');
  const named = new Set([0, pallets.length - 1, touchedAt[0], touchedAt.at(-1), sureAt[0], sureAt.at(-1)].filter((at) => at !== undefined));
  const words: { readonly at: number; readonly x: number; readonly name: string; readonly strong: boolean }[] = [];
  pallets.forEach(({ id, name, from, to, touched, open }, at) => {
    const [x0, x1] = [clip(from) + 0.8, clip(to) - 0.8];
    if (named.has(at)) words.push({ at, x: (x0 + x1) / 2, name, strong: touched !== 'no' });
    if (x1 - x0 < 0.4) return;
    const shape = { x: x0, y, w: x1 - x0, h: tile };
    hits.push({ id, box: shape });
    if (touched === 'safe') {
      const d = hatch([[x0, y], [x1, y], [x1, y + tile], [x0, y + tile]], { pitch: 5 }); // prettier-ignore
      if (d !== '') marks.push(path(d, { stroke: 'ink-3', width: 0.8 }));
    }
    const paint = { stroke: touched === 'no' ? 'rule' : 'ink', width: touched === 'proven' ? 2 : 1 } as const;
    const dash = open === true || touched === 'safe' ? { dash: [3, 2.4] } : {};
    (touched === 'no' ? marks : chosen).push(rect(x0, y, x1 - x0, tile, { ...paint, ...dash, ...(touched === 'proven' ? { fill: 'held-wash' } : {}), id })); // prettier-ignore
  });
  // Ends of what is touched are named first; the others where there is room.
  const placed: [number, number][] = [];
  for (const { x, name, strong } of [...words].sort((a, b) => Number(b.strong) - Number(a.strong))) {
    const wide = textWidth(name, 13, strong ? 560 : 520);
    const [a, b] = [x - wide / 2 - 4, x + wide / 2 + 4];
    if (placed.some(([from, to]) => a < to && b > from)) continue;
    placed.push([a, b]);
    marks.push(text(x, y + tile + 15, name, 13, { anchor: 'middle', weight: strong ? 560 : 520, fill: strong ? 'ink' : 'ink-2' }));
  }
  return [...marks, ...chosen];
}
