import type { Cell } from '../geometry/cell.js';
import { cellArea } from '../geometry/cell.js';
import { seeded } from '../geometry/random.js';
import { kernelArea, shapes, type Kernel, type PieceKind } from './kernel.js';

/** Pieces of one kind in a layer. */
export interface Pieces {
  readonly kind: PieceKind;
  /** Share of the layer's face they cover, 0 to 0.7. */
  readonly share: number;
  /** Shortest and longest piece in the cut, mm; default by kind. Chopped nuts are simply shorter. */
  readonly length?: readonly [number, number];
}

/**
 * Lays the pieces out: their summed area is the asked share exactly, they stay in the cell, and they are pushed apart until
 * they no longer touch. The same seed gives the same pieces at nearly the same places when dose or thickness move a little.
 */
export function place(cell: Cell, asked: readonly Pieces[], seed: number): Kernel[] {
  const kernels = asked.flatMap((pieces, at) => choose(cell, pieces, seed + at * 7919));
  if (kernels.length === 0) return [];
  scatter(cell, kernels, seed);
  settle(cell, kernels);
  return kernels;
}

function choose(cell: Cell, pieces: Pieces, seed: number): Kernel[] {
  const form = shapes[pieces.kind];
  const goal = pieces.share * cellArea(cell);
  if (!(goal > 0)) return [];
  const random = seeded(seed);
  // no piece may be thicker than the layer can hold with a film above and below
  const tallest = (0.86 * cell.h) / form.wide;
  const crowd = pieces.share > 0.45 ? 0.8 : 1; // a crowded face takes smaller pieces
  const longest = Math.min((pieces.length ?? form.length)[1] * crowd, tallest, 0.31 * cell.w);
  const shortest = Math.min((pieces.length ?? form.length)[0], longest * 0.62);
  const out: Kernel[] = [];
  let sum = 0;
  while (sum < goal && out.length < 400) {
    const length = shortest + (longest - shortest) * Math.pow(random(), 0.8);
    const kernel: Kernel = {
      kind: pieces.kind,
      x: 0,
      y: 0,
      turn: (random() - 0.5) * 1.9,
      length,
      flip: random() < 0.5,
      mark: Math.floor(random() * 1e6),
    };
    sum += kernelArea(kernel);
    out.push(kernel);
  }
  const last = out[out.length - 1]!;
  const over = sum - goal;
  // the last piece takes up the difference if it stays a believable size, else all share it
  const rest = kernelArea(last) - over;
  if (rest > 0.3 * kernelArea(last)) last.length *= Math.sqrt(rest / kernelArea(last));
  else {
    if (out.length > 1 && rest < 0.3 * kernelArea(last)) {
      sum -= kernelArea(last);
      out.pop();
    }
    const by = Math.sqrt(goal / sum);
    for (const kernel of out) kernel.length *= by;
  }
  return out;
}

/** First places: side by side along the layer with even gaps, two deep where they are many, alternately high and low. */
function scatter(cell: Cell, kernels: Kernel[], seed: number): void {
  const random = seeded(seed ^ 0x9e37);
  const order = kernels.map((_, at) => ({ at, key: random() })).sort((a, b) => a.key - b.key);
  const long = kernels.reduce((sum, kernel) => sum + kernel.length, 0);
  const gap = (cell.w - long) / kernels.length;
  let x = 0;
  order.forEach(({ at }, rank) => {
    const kernel = kernels[at]!;
    const step = kernel.length + gap; // negative gaps let neighbours overlap; settling parts them
    kernel.x = Math.min(cell.w - kernel.length * 0.5, Math.max(kernel.length * 0.5, x + step * (0.5 + 0.16 * (random() - 0.5))));
    x += step;
    const rise = kernel.length * shapes[kernel.kind].wide * 0.5;
    const v = rank % 2 === 0 ? 0.12 + 0.3 * random() : 0.58 + 0.3 * random();
    kernel.y = rise + v * Math.max(0, cell.h - 2 * rise);
  });
}

const discs = [-0.4, -0.2, 0, 0.2, 0.38] as const;

/** Pushes kernels out of each other and off the walls; each is five discs along its axis. */
function settle(cell: Cell, kernels: Kernel[]): void {
  const count = discs.length;
  const x = new Float64Array(kernels.length * count);
  const y = new Float64Array(kernels.length * count);
  const r = new Float64Array(kernels.length * count);
  const film = Math.min(0.16, cell.h * 0.03);
  const radii = kernels.map((kernel) => discs.map((u) => halfWidth(kernel.kind, u)));
  for (let round = 0; round < 140; round += 1) {
    kernels.forEach((kernel, k) => {
      const cos = Math.cos(kernel.turn);
      const sin = Math.sin(kernel.turn);
      const form = shapes[kernel.kind];
      discs.forEach((u, i) => {
        const a = (kernel.flip ? -u : u) * kernel.length;
        const b = middleLine(form.above, form.below, u) * kernel.length;
        x[k * count + i] = kernel.x + a * cos - b * sin;
        y[k * count + i] = kernel.y + a * sin + b * cos;
        r[k * count + i] = radii[k]![i]! * kernel.length + film;
      });
    });
    const pushes = kernels.map(() => ({ x: 0, y: 0, turn: 0, count: 0 }));
    const push = (k: number, i: number, fx: number, fy: number): void => {
      const on = pushes[k]!;
      const kernel = kernels[k]!;
      on.x += fx;
      on.y += fy;
      on.turn += ((x[i]! - kernel.x) * fy - (y[i]! - kernel.y) * fx) / (kernel.length * kernel.length);
      on.count += 1;
    };
    for (let k = 0; k < kernels.length; k += 1) {
      const one = kernels[k]!;
      for (let m = k + 1; m < kernels.length; m += 1) {
        const other = kernels[m]!;
        const near = (one.length + other.length) * 0.55 + film;
        if (Math.abs(one.x - other.x) > near || Math.abs(one.y - other.y) > near) continue;
        for (let i = k * count; i < (k + 1) * count; i += 1) {
          for (let j = m * count; j < (m + 1) * count; j += 1) {
            const dx = x[j]! - x[i]!;
            const dy = y[j]! - y[i]!;
            const reach = r[i]! + r[j]! - film;
            const d2 = dx * dx + dy * dy;
            if (d2 >= reach * reach) continue;
            const d = Math.sqrt(d2) || 1e-6;
            const part = (reach - d) * 0.5;
            push(k, i, (-dx / d) * part, (-dy / d) * part);
            push(m, j, (dx / d) * part, (dy / d) * part);
          }
        }
      }
      for (let i = k * count; i < (k + 1) * count; i += 1) {
        const px = Math.max(0, r[i]! - x[i]!) - Math.max(0, x[i]! + r[i]! - cell.w);
        const py = Math.max(0, r[i]! - y[i]!) - Math.max(0, y[i]! + r[i]! - cell.h);
        if (px !== 0 || py !== 0) push(k, i, px, py);
      }
    }
    let moved = 0;
    kernels.forEach((kernel, k) => {
      const { x: fx, y: fy, turn, count: contacts } = pushes[k]!;
      if (contacts === 0) return;
      // the mean of all pushes, a little more than once, never a leap
      const share = 1.6 / contacts;
      const leap = kernel.length * 0.12;
      kernel.x += bounded(fx * share, leap);
      kernel.y += bounded(fy * share, leap);
      kernel.turn += bounded(turn * share * 3, 0.1);
      moved += Math.abs(fx) + Math.abs(fy);
    });
    if (moved < 0.01) return;
  }
}

const bounded = (value: number, most: number): number => Math.min(most, Math.max(-most, value));

function halfWidth(kind: PieceKind, u: number): number {
  const form = shapes[kind];
  return (sample(form.above, u) + sample(form.below, u)) / 2;
}

function middleLine(above: Float64Array, below: Float64Array, u: number): number {
  return (sample(below, u) - sample(above, u)) / 2;
}

function sample(values: Float64Array, u: number): number {
  return values[Math.round((u + 0.5) * (values.length - 1))]!;
}
