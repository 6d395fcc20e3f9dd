import { line, path, text, type Box, type Ink, type Mark } from './mark.js';
import { Pen } from './pen.js';
import { textWidth } from './text-width.js';

/**
 * Moves positions apart until neighbours keep their distance, as little as possible in the sum of squares, order kept.
 * @param wanted - where each would like to be, in any order
 * @param apart - least distance between neighbours i and i+1 in sorted order, or one for all
 * @returns positions in the order of `wanted`, kept between lo and hi where they fit
 */
export function spread(
  wanted: readonly number[],
  apart: number | ((before: number, after: number) => number),
  lo = -Infinity,
  hi = Infinity,
): number[] {
  const order = wanted.map((at, index) => ({ at, index })).sort((a, b) => a.at - b.at || a.index - b.index);
  const gap = (before: number, after: number): number => (typeof apart === 'number' ? apart : apart(before, after));
  // blocks of neighbours that touch move together to the mean of what they want
  const blocks: { members: { index: number; offset: number }[]; sum: number; length: number }[] = [];
  const place = (block: (typeof blocks)[number]): number => {
    const mean = block.sum / block.members.length;
    return Math.max(lo, Math.min(mean, hi - block.length));
  };
  for (const { at, index } of order) {
    blocks.push({ members: [{ index, offset: 0 }], sum: at, length: 0 });
    for (;;) {
      const last = blocks[blocks.length - 1]!;
      const before = blocks[blocks.length - 2];
      if (before === undefined) break;
      const step = gap(before.members[before.members.length - 1]!.index, last.members[0]!.index);
      if (place(before) + before.length + step <= place(last)) break;
      const shift = before.length + step;
      for (const member of last.members) before.members.push({ index: member.index, offset: member.offset + shift });
      before.sum += last.sum - shift * last.members.length;
      before.length = shift + last.length;
      blocks.pop();
    }
  }
  const out = wanted.slice();
  for (const block of blocks) for (const { index, offset } of block.members) out[index] = place(block) + offset;
  return out;
}

/** A word at a place on a drawing, tied to it by a hair when it had to move aside. */
export interface SideLabel {
  readonly id: string;
  readonly text: string;
  /** Number or unit set before or after the word, in the stronger weight. */
  readonly figure?: string;
  /** Height of the thing named, px. */
  readonly y: number;
  readonly fill?: Ink;
}

/** Names beside a drawing, fanned out at 15 px or more, each with a leader hair to its thing. */
export function sideLabels(
  labels: readonly SideLabel[],
  edge: number,
  side: 'left' | 'right',
  size = 14,
  lo = -Infinity,
  hi = Infinity,
): { readonly marks: Mark[]; readonly boxes: readonly (Box & { readonly id: string })[] } {
  const ys = spread(
    labels.map((label) => label.y),
    Math.max(15, size + 2),
    lo,
    hi,
  );
  const away = side === 'left' ? -1 : 1;
  const hairs = new Pen();
  const marks: Mark[] = [];
  const boxes: (Box & { id: string })[] = [];
  labels.forEach((label, at) => {
    const y = ys[at]!;
    hairs.move(edge + away * 2, label.y).to(edge + away * 12, y);
    const figureWide = label.figure === undefined ? 0 : textWidth(label.figure, size + 1, 560) + 10;
    const anchor = side === 'left' ? 'end' : 'start';
    const x = edge + away * 16;
    if (label.figure !== undefined)
      marks.push(text(x, y + size * 0.34, label.figure, size + 1, { weight: 560, anchor, fill: label.fill ?? 'ink' }));
    marks.push(text(x + away * figureWide, y + size * 0.34, label.text, size, { anchor, fill: label.fill ?? 'ink-2' }));
    const w = figureWide + textWidth(label.text, size);
    boxes.push({ id: label.id, x: side === 'left' ? x - w : x, y: y - size / 2 - 0.5, w, h: size + 1 });
  });
  if (!hairs.empty) marks.unshift(path(hairs.d, { stroke: 'rule', width: 0.8 }));
  return { marks, boxes };
}

/** A note that hangs above or below a point on a leader. */
export interface Note {
  readonly id: string;
  readonly x: number;
  /** Where the leader touches the drawing. */
  readonly y: number;
  readonly text: string;
  /** Second line, smaller. */
  readonly note?: string;
  readonly fill?: Ink;
  readonly up: boolean;
  /** Leader width; default a hair. */
  readonly strong?: boolean;
}

const overlap = (a: Box, b: Box): boolean => a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h;

/**
 * Places notes above or below a drawing so that no two overlap and none covers an obstacle; each stands to the right of its
 * leader, or to the left where the sheet ends.
 */
export function placeNotes(
  notes: readonly Note[],
  obstacles: readonly Box[],
  sheet: Box,
): { readonly marks: Mark[]; readonly boxes: readonly (Box & { readonly id: string })[] } {
  const taken: Box[] = [...obstacles];
  const marks: Mark[] = [];
  const boxes: (Box & { id: string })[] = [];
  const order = notes.slice().sort((a, b) => b.x - a.x);
  for (const note of order) {
    const w = Math.max(textWidth(note.text, 15, 560), note.note === undefined ? 0 : textWidth(note.note, 13)) + 4;
    const h = note.note === undefined ? 19 : 36;
    const { box, side } = seat(note, w, h, sheet, taken, boxes);
    taken.push(
      { x: box.x - 6, y: box.y - 3, w: box.w + 12, h: box.h + 6 },
      { x: note.x - 3, y: Math.min(box.y, note.y), w: 6, h: Math.abs(box.y - note.y) },
    );
    boxes.push({ id: note.id, ...box });
    const end = side === 'middle' ? (note.up ? box.y + h : box.y) : note.up ? box.y + 2 : box.y + 14;
    marks.push(line(note.x, note.y, note.x, end, { stroke: note.fill ?? 'rule', width: note.strong === true ? 2 : 1 }));
    const x = side === 'left' ? note.x - 8 : side === 'right' ? note.x + 8 : box.x;
    const anchor = side === 'left' ? 'end' : 'start';
    marks.push(text(x, box.y + 14, note.text, 15, { weight: 560, anchor, fill: note.fill ?? 'ink', id: note.id }));
    if (note.note !== undefined) marks.push(text(x, box.y + 31, note.note, 13, { anchor, fill: 'ink-2' }));
  }
  return { marks, boxes };
}

type Side = 'right' | 'left' | 'middle';

/** The nearest free seat: right of the leader, else above its end, else left of it; as a last resort over other things or with a leader behind a note, never over another note. */
function seat(
  note: Note,
  w: number,
  h: number,
  sheet: Box,
  taken: readonly Box[],
  notes: readonly Box[],
): { readonly box: Box; readonly side: Side } {
  let last: { box: Box; side: Side } | undefined;
  for (const pass of [0, 1, 2]) {
    const blocked = pass === 0 ? taken : notes;
    for (let step = 0; step < 90; step += 1) {
      const gap = 12 + step * 8;
      const y = note.up ? note.y - gap - h : note.y + gap;
      if (y < sheet.y || y + h > sheet.y + sheet.h) break;
      for (const side of ['right', 'middle', 'left'] as const) {
        const free =
          side === 'right'
            ? note.x + 8
            : side === 'left'
              ? note.x - 8 - w
              : Math.min(sheet.x + sheet.w - w, Math.max(sheet.x, note.x - w / 2));
        const box: Box = { x: free, y, w, h };
        if (box.x < sheet.x || box.x + w > sheet.x + sheet.w) continue;
        last ??= { box, side };
        const leader: Box = { x: note.x - 1, y: note.up ? y + h : note.y + 3, w: 2, h: Math.max(1, gap - 4) };
        if (blocked.some((other) => overlap(box, other)) || (pass < 2 && notes.some((other) => overlap(leader, other)))) continue;
        return { box, side };
      }
    }
  }
  return last ?? { box: { x: Math.max(sheet.x, Math.min(note.x + 8, sheet.x + sheet.w - w)), y: sheet.y, w, h }, side: 'right' };
}
