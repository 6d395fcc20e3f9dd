import { cellArea, inCell, type Cell } from '../geometry/cell.js';
import { seeded } from '../geometry/random.js';
import type { Hole } from './flow.js';
import { inKernel, type Kernel } from './kernel.js';

/** Voids of a layer as round holes among its kernels; their summed area is the share asked, counted without the kernels. */
export function placeHoles(cell: Cell, share: number, kernels: readonly Kernel[], taken: number, seed: number): Hole[] {
  const goal = share * (cellArea(cell) - taken);
  if (!(goal > 0)) return [];
  const random = seeded(seed ^ 0x51ed);
  const out: Hole[] = [];
  let sum = 0;
  let widest = Math.min(0.72, cell.h * 0.3);
  for (let tries = 0; sum < goal && tries < 4000; tries += 1) {
    if (tries % 400 === 399) widest *= 0.82;
    let r = widest * (0.34 + 0.66 * random());
    const left = goal - sum;
    if (Math.PI * r * r > left) r = Math.sqrt(left / Math.PI);
    if (r < 0.06) {
      // what is left is too little for a hole of its own: the first takes it
      const first = out[0];
      if (first !== undefined) out[0] = { ...first, r: Math.sqrt(first.r * first.r + left / Math.PI) };
      break;
    }
    const x = random() * cell.w;
    const y = random() * cell.h;
    if (!inCell(cell, x, y, r + 0.06)) continue;
    if (out.some((hole) => Math.hypot(hole.x - x, hole.y - y) < hole.r + r + 0.12)) continue;
    if (kernels.some((kernel) => inKernel(kernel, x, y, r + 0.08))) continue;
    out.push({ x, y, r });
    sum += Math.PI * r * r;
  }
  return out;
}
