import type { Point } from './polygon.js';

/** A layer's face in the cut: a rectangle whose upper and lower corners may be rounded. Local coordinates, y down from its top. */
export interface Cell {
  readonly w: number;
  readonly h: number;
  /** Radius of the two upper corners. */
  readonly top: number;
  /** Radius of the two lower corners. */
  readonly bottom: number;
}

/** Whether a disc of radius `margin` around (x, y) lies wholly in the cell. */
export function inCell(cell: Cell, x: number, y: number, margin = 0): boolean {
  if (x < margin || y < margin || x > cell.w - margin || y > cell.h - margin) return false;
  const fromSide = Math.min(x, cell.w - x);
  if (y < cell.top && fromSide < cell.top) return Math.hypot(cell.top - fromSide, cell.top - y) <= cell.top - margin;
  const up = cell.h - y;
  if (up < cell.bottom && fromSide < cell.bottom) return Math.hypot(cell.bottom - fromSide, cell.bottom - up) <= cell.bottom - margin;
  return true;
}

/** Left and right end of the cell at height y. */
export function reach(cell: Cell, y: number): readonly [number, number] {
  const by = Math.max(inset(cell.top, y), inset(cell.bottom, cell.h - y));
  return [by, cell.w - by];
}

/** How far a corner of radius r takes the side in at a depth from its end. */
function inset(r: number, depth: number): number {
  return depth >= r ? 0 : r - Math.sqrt(Math.max(0, r * r - (r - depth) * (r - depth)));
}

/** Area of the cell. */
export function cellArea(cell: Cell): number {
  return cell.w * cell.h - (2 - Math.PI / 2) * (cell.top * cell.top + cell.bottom * cell.bottom);
}

/** Outline of the cell, clockwise on the page. */
export function cellOutline(cell: Cell, steps = 8): Point[] {
  const out: Point[] = [];
  const corner = (cx: number, cy: number, r: number, from: number): void => {
    if (r <= 0) {
      out.push([cx, cy]);
      return;
    }
    for (let i = 0; i <= steps; i += 1) {
      const a = from + (Math.PI / 2) * (i / steps);
      out.push([cx + r * Math.cos(a), cy + r * Math.sin(a)]);
    }
  };
  corner(cell.top, cell.top, cell.top, Math.PI);
  corner(cell.w - cell.top, cell.top, cell.top, -Math.PI / 2);
  corner(cell.w - cell.bottom, cell.h - cell.bottom, cell.bottom, 0);
  corner(cell.bottom, cell.h - cell.bottom, cell.bottom, Math.PI / 2);
  return out;
}
