import { cellArea, inCell, type Cell } from '../geometry/cell.js';
import { Pen } from '../pen.js';
import { gradeFor, grades, ringField, type RingField } from './ring-field.js';
import { honeycomb } from './honeycomb.js';

/** Above this share of air spheres no longer fit and real bubbles press each other flat, so cells are drawn instead of rings. */
export const ringLimit = 0.55;

export interface Foam {
  /** Share of the face that is air, 0 to 0.95, counted without pieces and voids. */
  readonly air: number;
  readonly seed: number;
  /** Size of the bubbles against the full drawing; 1 is normal. Size is not data, area is. */
  readonly grain: number;
}
export interface FoamDrawing {
  readonly d: string;
  /** Area of all rings or cells, mm². */
  readonly area: number;
  readonly count: number;
}

/**
 * Open rings whose summed area is the share of air. In a plane cut the share of area is the share of volume.
 * @param taken - area of the cell not open to bubbles, mm², and the test for it
 * @see delesse-1847: the area share of a phase in a random cut equals its volume share
 */
export function foam(
  cell: Cell,
  { air, seed, grain }: Foam,
  scale: number,
  taken: { area: number; hit: (x: number, y: number, r: number) => boolean },
): FoamDrawing {
  const goal = air * (cellArea(cell) - taken.area);
  if (goal <= 0) return { d: '', area: 0, count: 0 };
  if (air > ringLimit) return honeycomb(cell, air, seed, grain, scale, taken);
  let best: FoamDrawing | undefined;
  // a thin or crowded layer loses rings at its edges: then the next denser field serves
  for (let grade = gradeFor(air); grade < grades && (best === undefined || best.area < 0.995 * goal); grade += 1) {
    best = fill(cell, ringField(seed, grade, grain), goal, scale, taken.hit);
  }
  return best !== undefined && best.area > 0.985 * goal ? best : honeycomb(cell, air, seed, grain, scale, taken);
}

function fill(cell: Cell, field: RingField, goal: number, scale: number, hit: (x: number, y: number, r: number) => boolean): FoamDrawing {
  const pen = new Pen();
  const total = field.rings.length;
  const across = Math.ceil(cell.w / field.w) + 1;
  const down = Math.ceil(cell.h / field.h) + 1;
  let area = 0;
  for (let k = 0; k < total && area < goal; k += 3) {
    const r = field.rings[k + 2]!;
    for (let j = 0; j < down && area < goal; j += 1) {
      for (let i = 0; i < across && area < goal; i += 1) {
        const x = field.rings[k]! + i * field.w;
        // the field hangs from the bottom of the layer: a layer that grows keeps the bubbles it has
        const y = cell.h - (field.rings[k + 1]! + j * field.h);
        if (!inCell(cell, x, y, r + 0.03) || hit(x, y, r + 0.03)) continue;
        const last = Math.min(r, Math.sqrt((goal - area) / Math.PI));
        if (last < 0.02) {
          area = goal;
          break;
        }
        area += Math.PI * last * last;
        pen.ring(x * scale, y * scale, last * scale);
      }
    }
  }
  return { d: pen.d, area, count: pen.pieces };
}
