import type { Mesh } from './tunnel-mesh.js';

/** Thomas' elimination of one direction, worked out once per zone: T = (store T + inner T(before) + known)/pivot, then back with gain. */
export interface Sweep {
  readonly store: Float64Array;
  readonly inner: Float64Array;
  readonly known: Float64Array;
  readonly inversePivot: Float64Array;
  readonly gain: Float64Array;
}

/** Arrays for one direction. */
export function emptySweep(count: number): Sweep {
  const make = () => new Float64Array(count);
  return { store: make(), inner: make(), known: make(), inversePivot: make(), gain: make() };
}

/** Conductance between a cell and the next, or the medium outside, W/(m² K). */
function conductance(here: number, beyond: number): number {
  return here === Infinity || beyond === Infinity ? 0 : 1 / (here + beyond);
}

/** Factors for lines of cells `stride` apart, from the first face (coefficient, temperature) to the last. */
export function factor(
  sweep: Sweep,
  mesh: Mesh,
  dt: number,
  direction: 'width' | 'height',
  first: { readonly h: number; readonly t: number },
  last: { readonly h: number; readonly t: number },
): void {
  const { nx, ny, capacity, conductivity } = mesh;
  const across = direction === 'width';
  const [lines, length, stride, jump, size] = across ? [ny, nx, 1, nx, mesh.dx] : [nx, ny, nx, 1, mesh.dy];
  for (let line = 0; line < lines; line++) {
    let inner = 0;
    for (let k = 0; k < length; k++) {
      const at = line * jump + k * stride;
      const half = size[k]! / (2 * conductivity[at]!);
      const toLast = k === length - 1;
      const outer = conductance(half, toLast ? 1 / last.h : size[k + 1]! / (2 * conductivity[at + stride]!));
      const toFirst = k === 0 ? conductance(half, 1 / first.h) : 0;
      const store = (capacity[at]! * size[k]!) / dt;
      const back = k > 0 ? inner * sweep.gain[at - stride]! : 0;
      const pivot = store + inner + outer + toFirst - back;
      sweep.store[at] = store;
      sweep.inner[at] = inner;
      sweep.known[at] = toFirst * first.t + (toLast ? outer * last.t : 0);
      sweep.inversePivot[at] = 1 / pivot;
      sweep.gain[at] = toLast ? 0 : outer / pivot;
      inner = outer;
    }
  }
}

/** One implicit step along every line. */
export function apply(sweep: Sweep, t: Float64Array, lines: number, length: number, stride: number, jump: number): void {
  const { store, inner, known, inversePivot, gain } = sweep;
  for (let line = 0; line < lines; line++) {
    let at = line * jump;
    t[at] = (store[at]! * t[at]! + known[at]!) * inversePivot[at]!;
    for (let k = 1; k < length; k++) {
      at += stride;
      t[at] = (store[at]! * t[at]! + known[at]! + inner[at]! * t[at - stride]!) * inversePivot[at]!;
    }
    for (let k = 1; k < length; k++) {
      at -= stride;
      t[at]! += gain[at]! * t[at + stride]!;
    }
  }
}
