import { studentQuantile } from '../statistics/index.js';
import { stressOf, type FlowLaw } from './flow-laws.js';
import { quality, type Fitted, type FlowFit, type FlowPoint } from './flow-fit.js';

/**
 * A law that is linear in all parameters but one. For each value of that one (the index n, the rate γ*) the others follow from weighted
 * least squares with no value below 0; the one is then searched for. No start values, no local traps.
 */
interface Shape {
  readonly names: readonly string[];
  /** Range of the logarithm of the searched parameter. */
  readonly range: readonly [number, number];
  /** Columns of the linear part at a shear rate. */
  readonly columns: (rate: number, searched: number) => readonly number[];
  /** Parameters in the order of names. */
  readonly parametersOf: (linear: readonly number[], searched: number) => readonly number[];
  readonly lawFrom: (parameters: readonly number[]) => FlowLaw;
}

const herschelBulkley: Shape = {
  names: ['yield_value_pa', 'consistency_pa_sn', 'flow_index'],
  range: [Math.log(0.05), Math.log(2.5)],
  columns: (rate, n) => [1, rate ** n],
  parametersOf: ([t, k], n) => [t!, k!, n],
  lawFrom: ([t, k, n]) => ({ law: 'herschel-bulkley', yieldValue: t!, consistency: k!, index: n! }),
};

const windhab: Shape = {
  names: ['yield_value_pa', 'structured_yield_pa', 'breakdown_rate_s', 'end_viscosity_pa_s'],
  range: [Math.log(0.05), Math.log(200)],
  columns: (rate, g) => [1, -Math.expm1(-rate / g), rate],
  parametersOf: ([t, more, e], g) => [t!, t! + more!, g, e!],
  lawFrom: ([t, t1, g, e]) => ({ law: 'windhab', yieldValue: t!, structuredYield: t1!, breakdownRate: g!, endViscosity: e! }),
};

/** Herschel-Bulkley fit, τ = τ0 + K γⁿ, relative residuals weighted alike. At least 4 points. */
export function fitHerschelBulkley(points: readonly FlowPoint[]): FlowFit {
  return fit(herschelBulkley, points);
}

/** Windhab fit, τ = τ0 + (τ1 - τ0)(1 - e^(-γ/γ*)) + η∞ γ, relative residuals weighted alike. At least 5 points. */
export function fitWindhab(points: readonly FlowPoint[]): FlowFit {
  return fit(windhab, points);
}

interface Tried {
  readonly cost: number;
  readonly linear: readonly number[];
}

function fit(shape: Shape, points: readonly FlowPoint[]): FlowFit {
  const at = (log: number): Tried => linearFit(shape, points, Math.exp(log));
  // A coarse scan finds the valley, golden section its bottom.
  const [low, high] = shape.range;
  const steps = 60;
  let best = 0;
  let lowest = Infinity;
  for (let i = 0; i <= steps; i++) {
    const { cost } = at(low + ((high - low) * i) / steps);
    if (cost < lowest) [best, lowest] = [i, cost];
  }
  const log = golden(
    (x) => at(x).cost,
    low + ((high - low) * Math.max(0, best - 1)) / steps,
    low + ((high - low) * Math.min(steps, best + 1)) / steps,
  );
  return report(shape, points, shape.parametersOf(at(log).linear, Math.exp(log)));
}

function golden(of: (x: number) => number, from: number, to: number): number {
  const g = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [from, to];
  let [c, d] = [b - g * (b - a), a + g * (b - a)];
  let [fc, fd] = [of(c), of(d)];
  for (let i = 0; i < 60; i++) {
    if (fc < fd) {
      [b, d, fd] = [d, c, fc];
      c = b - g * (b - a);
      fc = of(c);
    } else {
      [a, c, fc] = [c, d, fd];
      d = a + g * (b - a);
      fd = of(d);
    }
  }
  return (a + b) / 2;
}

/** Non-negative least squares of two or three columns: the best of all sets of columns whose solution has no value below 0. */
function linearFit(shape: Shape, points: readonly FlowPoint[], searched: number): Tried {
  const rows = points.map((p) => shape.columns(p.rate, searched).map((c) => c / p.stress));
  const n = rows[0]!.length;
  let best: Tried = { cost: points.length, linear: new Array<number>(n).fill(0) };
  for (let set = 1; set < 1 << n; set++) {
    const used = Array.from({ length: n }, (_, i) => i).filter((i) => (set >> i) & 1);
    const normal = used.map((i) => used.map((j) => rows.reduce((sum, row) => sum + row[i]! * row[j]!, 0)));
    const right = used.map((i) => rows.reduce((sum, row) => sum + row[i]!, 0));
    const solution = solveLinear(normal, right);
    if (solution.some((v) => !(v >= 0))) continue;
    const linear = new Array<number>(n).fill(0);
    used.forEach((i, k) => (linear[i] = solution[k]!));
    const cost = rows.reduce((sum, row) => sum + (1 - row.reduce((s, c, i) => s + c * linear[i]!, 0)) ** 2, 0);
    if (cost < best.cost) best = { cost, linear };
  }
  return best;
}

/** Gauss with partial pivots; a vanishing pivot leaves that unknown at 0. */
function solveLinear(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const n = right.length;
  const a = matrix.map((row, i) => [...row, right[i]!]);
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(a[i]![k]!) > Math.abs(a[pivot]![k]!)) pivot = i;
    [a[k], a[pivot]] = [a[pivot]!, a[k]!];
    if (Math.abs(a[k]![k]!) < 1e-300) continue;
    for (let i = k + 1; i < n; i++) {
      const factor = a[i]![k]! / a[k]![k]!;
      for (let j = k; j <= n; j++) a[i]![j]! -= factor * a[k]![j]!;
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let k = n - 1; k >= 0; k--) {
    let sum = a[k]![n]!;
    for (let j = k + 1; j < n; j++) sum -= a[k]![j]! * x[j]!;
    x[k] = Math.abs(a[k]![k]!) < 1e-300 ? 0 : sum / a[k]![k]!;
  }
  return x;
}

/** Limits from the linearised covariance of all parameters; a parameter cannot lie below 0. */
function report(shape: Shape, points: readonly FlowPoint[], values: readonly number[]): FlowFit {
  const law = shape.lawFrom(values);
  const relative = (p: readonly number[]) => points.map((point) => stressOf(shape.lawFrom(p), point.rate) / point.stress);
  const here = relative(values);
  const columns = values.map((value, i) => {
    const step = 1e-5 * Math.max(1e-3, Math.abs(value));
    return relative(values.map((v, j) => (i === j ? value + step : v))).map((r, k) => (r - here[k]!) / step);
  });
  const normal = columns.map((a) => columns.map((b) => a.reduce((sum, v, k) => sum + v * b[k]!, 0)));
  const freedom = points.length - values.length;
  const variance = here.reduce((sum, r) => sum + (r - 1) ** 2, 0) / freedom;
  const t = studentQuantile(0.975, freedom);
  const parameters: Record<string, Fitted> = {};
  values.forEach((value, i) => {
    const unit = values.map((_, j) => (i === j ? 1 : 0));
    const half = t * Math.sqrt(Math.max(0, solveLinear(normal, unit)[i]! * variance));
    parameters[shape.names[i]!] = { value, low: Math.max(0, value - half), high: value + half };
  });
  return { law, parameters, ...quality(law, points, values.length) };
}
