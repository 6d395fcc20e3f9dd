import { inCell, reach, type Cell } from '../geometry/cell.js';
import { seeded } from '../geometry/random.js';
import { Pen } from '../pen.js';

type Taken = (x: number, y: number, r: number) => boolean;

/**
 * Biscuit crumb: short chords in all directions, a few open pores; denser crumb has more chords.
 * @param grain - size against the full drawing
 */
export function crumb(cell: Cell, seed: number, grain: number, scale: number, taken: Taken): string {
  const random = seeded(seed);
  const pitch = 0.52 * grain;
  const pen = new Pen();
  const rows = Math.floor(cell.h / pitch);
  const columns = Math.floor(cell.w / pitch);
  for (let j = 0; j < rows; j += 1) {
    for (let i = 0; i < columns; i += 1) {
      const x = (i + 0.5 + (random() - 0.5) * 0.9) * (cell.w / columns);
      const y = cell.h - (j + 0.5 + (random() - 0.5) * 0.9) * (cell.h / rows);
      const a = (random() - 0.5) * Math.PI;
      const half = (0.12 + 0.16 * random()) * grain;
      const pore = random();
      if (!inCell(cell, x, y, half + 0.02) || taken(x, y, half)) continue;
      if (pore < 0.07) {
        pen.ring(x * scale, y * scale, half * 0.62 * scale);
        continue;
      }
      const bow = (random() - 0.5) * half;
      const dx = Math.cos(a) * half;
      const dy = Math.sin(a) * half;
      pen
        .move((x - dx) * scale, (y - dy) * scale)
        .cubic(
          (x - dx / 3 - dy * 0.6 + bow * 0.2) * scale,
          (y - dy / 3 + bow) * scale,
          (x + dx / 3) * scale,
          (y + dy / 3 + bow) * scale,
          (x + dx) * scale,
          (y + dy) * scale,
        );
    }
  }
  return pen.d;
}

export interface WaferLines {
  /** Skins of the sheets. */
  readonly skins: string;
  /** Struts of the open crumb between two skins. */
  readonly struts: string;
  /** Dots of the filling. */
  readonly filling: string;
}

/** Wafer: thin parallel sheets, each two skins with an open crumb of short chords between, filling between the sheets. */
export function wafer(cell: Cell, sheets: number, fillingShare: number, seed: number, grain: number, scale: number): WaferLines {
  const random = seeded(seed);
  const skins = new Pen();
  const struts = new Pen();
  const filling = new Pen();
  const gaps = Math.max(1, sheets - 1);
  const thick = (cell.h * (1 - (sheets > 1 ? fillingShare : 0))) / sheets;
  const between = sheets > 1 ? (cell.h * fillingShare) / gaps : 0;
  for (let s = 0; s < sheets; s += 1) {
    const top = s * (thick + between);
    const low = top + thick;
    for (const y of [top, low]) {
      if (y < 0.05 || y > cell.h - 0.05) continue; // the layer's own line is there already
      const [x0, x1] = reach(cell, y);
      skins.segment(x0 * scale, y * scale, x1 * scale, y * scale);
    }
    const pitch = Math.max(0.3 * grain, 2.6 / scale);
    for (let x = pitch * 0.4; x < cell.w - pitch * 0.3; x += pitch * (0.75 + 0.5 * random())) {
      const lean = (random() - 0.5) * 1.5 * thick;
      const from = top + thick * (random() < 0.35 ? 0.3 * random() : 0.06);
      const to = low - thick * (random() < 0.35 ? 0.3 * random() : 0.06);
      const x1 = Math.min(cell.w - 0.06, Math.max(0.06, x + lean / 2));
      const x0 = Math.min(cell.w - 0.06, Math.max(0.06, x - lean / 2));
      if (!inCell(cell, x0, from, 0) || !inCell(cell, x1, to, 0)) continue;
      struts.segment(x0 * scale, from * scale, x1 * scale, to * scale);
    }
    if (s + 1 < sheets && between * scale > 3.2) dotsIn(cell, low, low + between, grain, scale, filling, random);
  }
  return { skins: skins.d, struts: struts.d, filling: filling.d };
}

function dotsIn(cell: Cell, y0: number, y1: number, grain: number, scale: number, pen: Pen, random: () => number): void {
  const pitch = Math.max(0.3 * grain, 3.4 / scale);
  const rows = Math.max(1, Math.round((y1 - y0) / pitch - 0.4));
  for (let j = 0; j < rows; j += 1) {
    const y = y0 + ((j + 0.5) / rows) * (y1 - y0);
    for (let x = pitch * (0.5 + (j % 2) * 0.5); x < cell.w - 0.1; x += pitch) {
      const px = x + (random() - 0.5) * pitch * 0.3;
      if (inCell(cell, px, y, 0.05)) pen.segment(px * scale, y * scale, px * scale + 0.01, y * scale);
    }
  }
}

/** Dots at even, unruly distances: pastes, fondant, creams. */
export function stipple(cell: Cell, pitch: number, seed: number, scale: number, taken: Taken): string {
  const random = seeded(seed);
  const pen = new Pen();
  const rowStep = pitch * 0.866;
  const rows = Math.floor(cell.h / rowStep);
  for (let j = 0; j < rows; j += 1) {
    const y = cell.h - (j + 0.5) * (cell.h / rows) + (random() - 0.5) * pitch * 0.3;
    for (let x = pitch * (j % 2 === 0 ? 0.4 : 0.9); x < cell.w; x += pitch) {
      const px = x + (random() - 0.5) * pitch * 0.4;
      if (inCell(cell, px, y, 0.07) && !taken(px, y, 0.07)) pen.segment(px * scale, y * scale, px * scale + 0.01, y * scale);
    }
  }
  return pen.d;
}

/** Jelly: level lines with one slanting gap of light. */
export function jellyLines(cell: Cell, pitch: number, scale: number, taken: Taken): string {
  const pen = new Pen();
  const count = Math.max(1, Math.round(cell.h / pitch));
  const gap = Math.min(1.5, cell.w * 0.06);
  for (let k = 0; k < count; k += 1) {
    const y = ((k + 0.5) / count) * cell.h;
    const [x0, x1] = reach(cell, y);
    const light = cell.w * 0.27 - (y - cell.h / 2) * 0.7;
    const stops: [number, number][] = [
      [x0, light - gap / 2],
      [light + gap / 2, light + gap * 1.15],
      [light + gap * 1.5, x1],
    ];
    for (const [from, to] of stops) {
      let start: number | undefined;
      const steps = Math.max(1, Math.ceil((to - from) / 0.12));
      for (let i = 0; i <= steps; i += 1) {
        const x = from + ((to - from) * i) / steps;
        const shut = taken(x, y, 0.09);
        if (!shut && start === undefined) start = x;
        if (start !== undefined && (shut || i === steps)) {
          if (x - start > 0.08) pen.segment(start * scale, y * scale, x * scale, y * scale);
          start = undefined;
        }
      }
    }
  }
  return pen.d;
}
