import { Kept } from '../geometry/cache.js';
import { cellArea, cellOutline, reach, type Cell } from '../geometry/cell.js';
import { path, type Mark } from '../mark.js';
import { Pen } from '../pen.js';
import { crumb, jellyLines, stipple, wafer } from './bakes.js';
import { linings, slabLines, type Chocolate } from './contours.js';
import { flowLines, type Hole } from './flow.js';
import { foam } from './foam.js';
import { placeHoles } from './holes.js';
import { inKernel, kernelArea, type Kernel } from './kernel.js';
import { pieceLines } from './piece-lines.js';
import { place, type Pieces } from './placing.js';

/** Texture of a layer's mass, named by its structure. */
export type LayerTexture = 'nougat' | 'caramel' | 'jelly' | 'wafer' | 'biscuit' | 'paste' | 'plain' | `${Chocolate}-chocolate`;

/** What fills a layer. Shares are of the face cut open, which for a random cut is the share of volume. */
export interface Filling {
  readonly texture: LayerTexture;
  /** Share of air whipped in, 0 to 0.95, counted without pieces and voids. */
  readonly air?: number;
  readonly pieces?: readonly Pieces[];
  /** Share of accidental voids, 0 to 0.3, counted without pieces. */
  readonly voids?: number;
  /** Number of wafer sheets, 1 or more; default 4. */
  readonly sheets?: number;
  /** Share of the wafer layer that is filling between the sheets, 0 to 0.8; default 0.45. */
  readonly fillingShare?: number;
}

/** Areas really drawn, mm², for tests and for captions. */
export interface Drawn {
  readonly cell: number;
  readonly air: number;
  readonly pieces: number;
  readonly voids: number;
}
export interface Face {
  readonly marks: readonly Mark[];
  readonly drawn: Drawn;
  readonly kernels: readonly Kernel[];
}

const faces = new Kept<Face>(48);
const layouts = new Kept<{ readonly kernels: Kernel[]; readonly holes: Hole[] }>(48);

/**
 * A layer's face in local coordinates (0, 0 is its upper left corner), px. Same input, same picture; kept, so that layers a
 * drag does not touch cost nothing.
 * @param scale - px per mm
 * @param grain - size of the texture against the full drawing, 1 or more; share of area does not change with it
 */
export function face(cell: Cell, filling: Filling, seed: number, scale: number, grain: number): Face {
  const key = `${JSON.stringify(cell)}${JSON.stringify(filling)}${seed}/${scale}/${grain}`;
  return faces.get(key, () => drawFace(cell, filling, seed, scale, grain));
}

function drawFace(cell: Cell, filling: Filling, seed: number, scale: number, grain: number): Face {
  const { kernels, holes } = layouts.get(`${JSON.stringify([cell, filling.pieces, filling.voids])}${seed}`, () => {
    const laid = place(cell, filling.pieces ?? [], seed);
    const covered = laid.reduce((sum, kernel) => sum + kernelArea(kernel), 0);
    return { kernels: laid, holes: placeHoles(cell, filling.voids ?? 0, laid, covered, seed) };
  });
  const pieces = kernels.reduce((sum, kernel) => sum + kernelArea(kernel), 0);
  const voids = holes.reduce((sum, hole) => sum + Math.PI * hole.r * hole.r, 0);
  const hit = (x: number, y: number, r: number): boolean =>
    kernels.some((kernel) => inKernel(kernel, x, y, r)) || holes.some((hole) => Math.hypot(hole.x - x, hole.y - y) < hole.r + r);
  const fine = scale >= 12;
  const thin = fine ? 0.95 : 0.7;
  const marks: Mark[] = [];
  const put = (d: string, width: number, round = false): void => {
    if (d !== '') marks.push(path(d, { stroke: 'draw', width, ...(round ? { cap: 'round' } : {}) }));
  };
  const bubbles = foam(cell, { air: filling.air ?? 0, seed, grain }, scale, { area: pieces + voids, hit });

  switch (filling.texture) {
    case 'caramel':
      put(flowLines(cell, kernels, holes, Math.max(0.36 * grain, 3.1 / scale), seed, scale), thin);
      break;
    case 'jelly':
      put(jellyLines(cell, Math.max(0.4 * grain, 3.4 / scale), scale, hit), thin);
      break;
    case 'biscuit':
      put(crumb(cell, seed, Math.max(grain, 11 / scale), scale, hit), thin);
      break;
    case 'wafer': {
      const lines = wafer(cell, filling.sheets ?? 4, filling.fillingShare ?? 0.45, seed, grain, scale);
      put(lines.skins, fine ? 1.2 : 0.8);
      put(lines.struts, thin * 0.9);
      put(lines.filling, fine ? 1.3 : 0.9, true);
      break;
    }
    case 'paste':
      put(stipple(cell, Math.max(0.42 * grain, 4 / scale), seed, scale, hit), fine ? 1.3 : 1, true);
      break;
    case 'milk-chocolate':
    case 'dark-chocolate':
    case 'white-chocolate':
      marks.push(...slab(cell, filling.texture, seed, scale));
      break;
    case 'nougat':
    case 'plain':
      break;
  }
  put(bubbles.d, thin * 0.9);
  if (kernels.length > 0) {
    const lines = pieceLines(kernels, scale, fine);
    put(lines.outline, fine ? 1.7 : 1);
    put(lines.inner, thin);
    put(lines.dots, fine ? 1.2 : 0.8, true);
  }
  if (holes.length > 0) {
    const pen = new Pen();
    for (const hole of holes) pen.ring(hole.x * scale, hole.y * scale, hole.r * scale);
    marks.push(path(pen.d, { stroke: 'draw', width: thin * 0.85, dash: [2.6, 2] }));
  }
  return { marks, drawn: { cell: cellArea(cell), air: bubbles.area, pieces, voids }, kernels };
}

function slab(cell: Cell, texture: `${Chocolate}-chocolate`, seed: number, scale: number): Mark[] {
  const kind = texture.split('-')[0] as Chocolate;
  const lining = linings[kind];
  const count = Math.max(1, Math.round((cell.h * scale) / lining.pitch) - 1);
  const rows = Array.from({ length: count }, (_, k) => {
    const y = ((k + 1) / (count + 1)) * cell.h;
    const [x0, x1] = reach(cell, y);
    return { x0: x0 * scale + 0.8, x1: x1 * scale - 0.8, y: y * scale };
  });
  const lines = slabLines(rows, kind, seed);
  const tone = cellOutline(cell).map(([x, y]) => [x * scale, y * scale] as const);
  const out: Mark[] = kind === 'white' ? [] : [path(new Pen().through(tone, true).d, { fill: 'coat' })];
  out.push(path(lines.thin, { stroke: 'draw', width: lining.widths[0] }));
  if (lines.thick !== '') out.push(path(lines.thick, { stroke: 'draw', width: lining.widths[1] }));
  return out;
}
