import { NoSolution, requireRange } from '../../errors.js';
import type { KilogramPerCubicMetre, Metre, Pascal, PascalSecond, Second } from '../../units.js';

const gravity = 9.80665;

/** What can be a slab of food for some while: m, kg/m³, Pa s, Pa, s. */
export const slumpRanges = {
  size: [1e-5, 100],
  density: [1, 1e5],
  viscosity: [1e-4, 1e15],
  yieldStress: [0, 1e9],
  time: [0, 1e11],
} as const;

export interface SlumpSlab {
  /** Height and full width of the slab at the start, m. */
  readonly height: Metre;
  readonly width: Metre;
  readonly density: KilogramPerCubicMetre;
  readonly viscosity: PascalSecond;
  /** Stress below which it does not flow, Pa; 0 for a Newtonian mass. */
  readonly yieldStress?: Pascal;
}

/** Half of the slab, from the middle to the foot: `x` are the edges of strips of equal mass, `height` their heights. */
export interface SlumpShape {
  readonly x: Float64Array;
  readonly height: Float64Array;
  /** Half width at the foot, m. */
  readonly front: Metre;
  /** Height in the middle, m. */
  readonly centre: Metre;
}

/**
 * Shape of a long slab that sags under its own weight on a surface it sticks to (thin viscous layer, Bingham if it has a yield
 * stress). The strips between the edges keep their mass, so mass is conserved to the last digit and the foot is an edge.
 *
 * ∂h/∂t + ∂(u h)/∂x = 0, u = -(ρ g / 3 η) h² ∂h/∂x; with yield u shrinks by y²(3h - y)/2h³, y = h - τ/(ρ g |∂h/∂x|).
 *
 * @param slab - sizes and properties; thin means height below about a third of the width, else the lubrication equation spreads too fast
 * @param time - s, 0 or more
 * @param strips - strips in half the slab
 * @throws OutOfRange when a size, density or viscosity is not positive
 * @see huppert-1982; liu-mei-1989 for the yield
 */
export function slump(slab: SlumpSlab, time: Second, strips = 60): SlumpShape {
  const { height, width, density, viscosity, yieldStress = 0 } = slab;
  requireRange('height', height, slumpRanges.size, 'huppert-1982');
  requireRange('width', width, slumpRanges.size, 'huppert-1982');
  requireRange('density', density, slumpRanges.density, 'huppert-1982');
  requireRange('viscosity', viscosity, slumpRanges.viscosity, 'huppert-1982');
  requireRange('yield stress', yieldStress, slumpRanges.yieldStress, 'huppert-1982');
  requireRange('time', time, slumpRanges.time, 'huppert-1982');
  const weight = density * gravity;
  const yieldLength = yieldStress / weight;
  const stripMass = (height * width) / 2 / strips;
  const x = new Float64Array(strips + 1);
  for (let i = 0; i <= strips; i++) x[i] = (i * width) / 2 / strips;

  // In the scaled time s = ρ g t / 3 η the motion has no other constants: dx/ds = -∂(h³/3)/∂x.
  const end = (weight * time) / (3 * viscosity);
  const first = (1e-3 * (width / 2) ** 2) / height ** 3 / strips;
  const solver = newSolver(strips, stripMass, yieldLength);
  for (let done = 0, step = Math.min(first, end); end - done > 1e-12 * end;) {
    if (!solver.advance(x, step)) {
      step /= 4;
      if (step < 1e-15 * end) throw new NoSolution('The shape of the slab cannot be followed: its yield stress is too sharp for its size');
      continue;
    }
    done += step;
    step = Math.min(step * 1.1, Math.max(first, 0.04 * done), end - done);
  }
  const heights = new Float64Array(strips);
  for (let i = 0; i < strips; i++) heights[i] = stripMass / (x[i + 1]! - x[i]!);
  return { x, height: heights, front: x[strips]!, centre: heights[0]! };
}

/** Implicit steps by Newton's method, with buffers that are made once. */
function newSolver(strips: number, stripMass: number, yieldLength: number) {
  const old = new Float64Array(strips + 1);
  const cubes = new Float64Array(strips + 1); // h³ of each strip; 0 beyond the foot
  const squares = new Float64Array(strips + 1);
  const widths = new Float64Array(strips + 1).fill(1);
  const upper = new Float64Array(strips + 1);
  const change = new Float64Array(strips + 2);

  function readStrips(x: Float64Array): void {
    for (let i = 0; i < strips; i++) {
      const w = x[i + 1]! - x[i]!;
      const h = stripMass / w;
      widths[i] = w;
      squares[i] = h * h;
      cubes[i] = h * h * h;
    }
  }

  /** Newton's step for x_i - old_i + step m(Δ²) Δ³ / (3 gap) = 0; the tridiagonal system is eliminated while it is set up. */
  function newtonStep(x: Float64Array, step: number): void {
    for (let i = 1; i <= strips; i++) {
      const last = i === strips;
      const gap = (last ? widths[i - 1]! : widths[i]! + widths[i - 1]!) / 2;
      const cubeFall = cubes[i]! - cubes[i - 1]!;
      const drive = (squares[i - 1]! - squares[i]!) / (2 * gap); // h |dh/dx|, signed; finite at the foot
      // How far the yield stress slows the edge: 1 Newtonian, 0 at rest; and how that changes with the drive.
      const yielded = yieldLength > 0 ? Math.max(0, 1 - yieldLength / Math.abs(drive)) : 1;
      const mobility = (yielded * yielded * (3 - yielded)) / 2;
      const slope = yielded > 0 && yielded < 1 ? ((3 * yielded - 1.5 * yielded * yielded) * yieldLength) / (drive * Math.abs(drive)) : 0;
      const factor = step / (3 * gap);
      // Derivatives of the residual: by the cubes (k), by the drive through the mobility (d), by the gap (g).
      const k = factor * mobility;
      const d = (factor * cubeFall * slope) / (2 * gap);
      const g = (-k * cubeFall - 2 * d * gap * drive) / gap;
      const left = k * 3 * cubes[i - 1]! + d * -2 * squares[i - 1]!; // by the width of the left strip, which holds -h³ and +h²
      const right = k * -3 * cubes[i]! + d * 2 * squares[i]!;
      const byLeft = left / widths[i - 1]!;
      const byRight = last ? 0 : right / widths[i]!;
      const a = -byLeft - g / 2;
      const b = 1 + byLeft - byRight + (last ? g / 2 : 0);
      const c = last ? 0 : byRight + g / 2;
      const residual = x[i]! - old[i]! + factor * mobility * cubeFall;
      const pivot = b - a * upper[i - 1]!;
      upper[i] = c / pivot;
      change[i] = (-residual - a * change[i - 1]!) / pivot;
    }
    for (let i = strips - 1; i >= 1; i--) change[i]! -= upper[i]! * change[i + 1]!;
  }

  /** One implicit step; false, with x as before, when Newton's method does not settle. */
  function advance(x: Float64Array, step: number): boolean {
    old.set(x);
    for (let iteration = 0; iteration < 25; iteration++) {
      readStrips(x);
      newtonStep(x, step);
      let damping = 1; // never close a strip by more than half
      let largest = 0;
      for (let i = 1; i <= strips; i++) {
        const shrink = change[i - 1]! - change[i]!;
        if (shrink * damping > widths[i - 1]! / 2) damping = widths[i - 1]! / 2 / shrink;
        largest = Math.max(largest, Math.abs(change[i]!));
      }
      for (let i = 1; i <= strips; i++) x[i]! += damping * change[i]!;
      if (damping === 1 && largest < 1e-9 * x[strips]!) return true;
    }
    x.set(old);
    return false;
  }
  return { advance };
}

/**
 * Foot of a two-dimensional viscous gravity current that has forgotten its start (Huppert's similarity solution), m:
 * 1.411 (ρ g A³ t / 3 η)^(1/5), A the section of one side, m².
 */
export function similarityFront(section: number, density: KilogramPerCubicMetre, viscosity: PascalSecond, time: Second): Metre {
  return 1.411 * ((density * gravity * section ** 3 * time) / (3 * viscosity)) ** 0.2;
}

/** Half width at which a slab with a yield stress comes to rest, m: h² falls in a straight line, A = ⅔ √(2 τ / ρ g) x^(3/2). */
export function restingFront(section: number, density: KilogramPerCubicMetre, yieldStress: Pascal): Metre {
  requireRange('yield stress', yieldStress, [1e-300, Infinity], 'liu-mei-1989');
  return ((1.5 * section) / Math.sqrt((2 * yieldStress) / (density * gravity))) ** (2 / 3);
}
