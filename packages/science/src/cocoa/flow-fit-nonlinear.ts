import { studentQuantile } from '../statistics/index.js';
import { stressOf, type FlowLaw } from './flow-laws.js';
import { fitBingham, quality, type Fitted, type FlowFit, type FlowPoint } from './flow-fit.js';

/** Parameters that must be positive are fitted as their logarithms; the yield value by its square root, so 0 is reachable. */
interface Shape {
  readonly names: readonly string[];
  readonly lawOf: (p: readonly number[]) => FlowLaw;
  /** From the free variable to the parameter. */
  readonly out: readonly ((z: number) => number)[];
}

const square = (z: number) => z * z;

const herschelBulkley: Shape = {
  names: ['yield_value_pa', 'consistency_pa_sn', 'flow_index'],
  out: [square, Math.exp, Math.exp],
  lawOf: ([t, k, n]) => ({ law: 'herschel-bulkley', yieldValue: t!, consistency: k!, index: n! }),
};

const windhab: Shape = {
  names: ['yield_value_pa', 'structured_yield_pa', 'breakdown_rate_s', 'end_viscosity_pa_s'],
  out: [square, square, Math.exp, Math.exp],
  lawOf: ([t, t1, g, e]) => ({ law: 'windhab', yieldValue: t!, structuredYield: t! + t1!, breakdownRate: g!, endViscosity: e! }),
};

/** Herschel-Bulkley fit, τ = τ0 + K γⁿ, relative residuals weighted alike. At least 4 points. */
export function fitHerschelBulkley(points: readonly FlowPoint[]): FlowFit {
  const start = fitBingham(points).law;
  const yieldStart = 'yieldValue' in start ? Math.max(0.2 * points[0]!.stress, 0.5 * start.yieldValue) : 1;
  const last = points.reduce((a, b) => (b.rate > a.rate ? b : a));
  const consistency = Math.max(1e-3, last.stress - yieldStart) / last.rate ** 0.8;
  return best(herschelBulkley, points, [
    [Math.sqrt(yieldStart), Math.log(consistency), Math.log(0.8)],
    [Math.sqrt(0.05 * yieldStart + 1e-6), Math.log(last.stress / last.rate ** 0.5), Math.log(0.5)],
  ]);
}

/** Windhab fit, τ = τ0 + (τ1 - τ0)(1 - e^(-γ/γ*)) + η∞ γ, relative residuals weighted alike. At least 5 points. */
export function fitWindhab(points: readonly FlowPoint[]): FlowFit {
  const end = points.filter((p) => p.rate >= median(points.map((q) => q.rate)));
  const straight = fitBingham(end.length >= 3 ? end : points).law;
  const structured = 'yieldValue' in straight ? Math.max(straight.yieldValue, 1e-3) : 1;
  const slope = 'plasticViscosity' in straight ? Math.max(straight.plasticViscosity, 1e-3) : 1;
  return best(
    windhab,
    points,
    [2, 6, 15].map((rate) => [Math.sqrt(0.4 * structured), Math.sqrt(0.6 * structured), Math.log(rate), Math.log(slope)]),
  );
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)]!;
}

/** The best of several starts. */
function best(shape: Shape, points: readonly FlowPoint[], starts: readonly (readonly number[])[]): FlowFit {
  const fits = starts.map((start) => solve(shape, points, start));
  const found = fits.reduce((a, b) => (b.cost < a.cost ? b : a));
  return report(shape, points, found.z);
}

function parametersOf(shape: Shape, z: readonly number[]): number[] {
  return z.map((value, i) => shape.out[i]!(value));
}

function residualsOf(shape: Shape, points: readonly FlowPoint[], z: readonly number[]): number[] {
  const law = shape.lawOf(parametersOf(shape, z));
  return points.map((p) => stressOf(law, p.rate) / p.stress - 1);
}

const costOf = (residuals: readonly number[]) => residuals.reduce((sum, r) => sum + r * r, 0);

/** Levenberg-Marquardt with a numerical Jacobian. */
function solve(shape: Shape, points: readonly FlowPoint[], start: readonly number[]): { z: number[]; cost: number } {
  let z = [...start];
  let residuals = residualsOf(shape, points, z);
  let cost = costOf(residuals);
  let damping = 1e-2;
  for (let round = 0; round < 200; round++) {
    const { normal, gradient } = normalEquations(jacobian(shape, points, z, residuals), residuals);
    let improved = false;
    for (let tries = 0; tries < 12 && !improved; tries++) {
      const damped = normal.map((row, i) => row.map((v, j) => (i === j ? v * (1 + damping) + 1e-14 : v)));
      const step = solveLinear(damped, gradient);
      const next = z.map((v, i) => v - step[i]!);
      const nextResiduals = residualsOf(shape, points, next);
      const nextCost = costOf(nextResiduals);
      if (nextCost < cost) {
        improved = true;
        const gain = (cost - nextCost) / cost;
        z = next;
        residuals = nextResiduals;
        cost = nextCost;
        damping = Math.max(1e-12, damping / 5);
        if (gain < 1e-13) return { z, cost };
      } else damping *= 4;
    }
    if (!improved) break;
  }
  return { z, cost };
}

function jacobian(shape: Shape, points: readonly FlowPoint[], z: readonly number[], at: readonly number[]): number[][] {
  const columns = z.map((value, i) => {
    const step = 1e-6 * Math.max(1e-2, Math.abs(value));
    const shifted = residualsOf(
      shape,
      points,
      z.map((v, j) => (j === i ? value + step : v)),
    );
    return shifted.map((r, k) => (r - at[k]!) / step);
  });
  return at.map((_, k) => columns.map((column) => column[k]!));
}

function normalEquations(rows: readonly (readonly number[])[], residuals: readonly number[]): { normal: number[][]; gradient: number[] } {
  const n = rows[0]!.length;
  const normal = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  const gradient = new Array<number>(n).fill(0);
  rows.forEach((row, k) => {
    for (let i = 0; i < n; i++) {
      gradient[i]! += row[i]! * residuals[k]!;
      for (let j = 0; j < n; j++) normal[i]![j]! += row[i]! * row[j]!;
    }
  });
  return { normal, gradient };
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

/** Limits from the linearised covariance, taken in the free variable and carried to the parameter. */
function report(shape: Shape, points: readonly FlowPoint[], z: readonly number[]): FlowFit {
  const residuals = residualsOf(shape, points, z);
  const freedom = points.length - z.length;
  const { normal } = normalEquations(jacobian(shape, points, z, residuals), residuals);
  const variance = costOf(residuals) / freedom;
  const t = studentQuantile(0.975, freedom);
  const values = parametersOf(shape, z);
  const parameters: Record<string, Fitted> = {};
  z.forEach((value, i) => {
    const unit = z.map((_, j) => (i === j ? 1 : 0));
    const half = t * Math.sqrt(Math.max(0, solveLinear(normal, unit)[i]! * variance));
    const isSquare = shape.out[i] === square;
    const middle = isSquare ? Math.abs(value) : value;
    const low = shape.out[i]!(isSquare ? Math.max(0, middle - half) : middle - half);
    const high = shape.out[i]!(middle + half);
    parameters[shape.names[i]!] = { value: values[i]!, low, high };
  });
  const law = shape.lawOf(values);
  const structured = parameters['structured_yield_pa'];
  if (structured) {
    const yieldValue = values[0]!;
    parameters['structured_yield_pa'] = {
      value: structured.value + yieldValue,
      low: structured.low + yieldValue,
      high: structured.high + yieldValue,
    };
  }
  return { law, parameters, ...quality(law, points, z.length) };
}
