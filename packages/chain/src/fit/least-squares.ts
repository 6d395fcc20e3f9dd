import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { invert, normalMatrix } from './cholesky.js';

/** Parameters run from 0 to 1 between their limits; readings and answers are in units of their own scatter. */
export interface Problem {
  readonly readings: readonly number[];
  /** Answers of the model, NaN where it refuses. */
  readonly model: (parameters: readonly number[]) => readonly number[];
  readonly start: readonly number[];
}

export interface Fit {
  readonly parameters: readonly number[];
  readonly answers: readonly number[];
  /** One row for each reading, one column for each parameter. */
  readonly slopes: readonly (readonly number[])[];
  readonly sumOfSquares: number;
  readonly iterations: number;
}

const STEP = 1e-5;
const ROUND = 20;
/** A model that refuses counts as this far off, so that the search turns back. */
const FAR = 1e3;

/**
 * Least squares between limits: rounds of Levenberg and Marquardt's method until one brings nothing, then Gauss and Newton's
 * steps, halved while they do not help, to the last digits.
 */
export function fit(problem: Problem): Fit {
  const { readings } = problem;
  const size = problem.start.length;
  const answersAt = (parameters: readonly number[]) => problem.model(parameters).map((y, i) => (Number.isNaN(y) ? readings[i]! + FAR : y));
  const slopesAt = (parameters: readonly number[]) => slopes(answersAt, parameters);
  const costAt = (parameters: readonly number[]) => sumOfSquares(readings, answersAt(parameters));
  let best = [...problem.start];
  let cost = costAt(best);
  let iterations = 0;
  // The method asks point by point; one run of the model answers for all points.
  const curve = (parameters: number[]) => {
    const answers = answersAt(parameters);
    return (i: number) => answers[i]!;
  };
  const jacobianFunction = (parameters: number[]) => {
    const rows = slopesAt(parameters);
    return (i: number) => rows[i]! as number[];
  };
  const data = { x: readings.map((_, i) => i), y: [...readings] };
  for (let round = 0; round < 10 && cost > 0; round++) {
    const result = levenbergMarquardt(data, curve, {
      initialValues: best,
      minValues: best.map(() => 0),
      maxValues: best.map(() => 1),
      maxIterations: ROUND,
      errorTolerance: Number.MIN_VALUE,
      damping: 10 ** -round,
      jacobianFunction,
    });
    iterations += result.iterations;
    const before = cost;
    const found = costAt(result.parameterValues);
    if (found < cost) {
      best = result.parameterValues;
      cost = found;
    }
    if (!(cost < before * (1 - 1e-6))) break;
  }
  for (let i = 0; i < 30; i++) {
    const step = gaussNewtonStep(readings, answersAt(best), slopesAt(best), best);
    if (!step) break;
    let part = 1;
    let next = best;
    let nextCost = Infinity;
    for (; part > 1e-4; part /= 2) {
      next = best.map((p, k) => Math.min(1, Math.max(0, p + part * step[k]!)));
      nextCost = costAt(next);
      if (nextCost <= cost) break;
    }
    iterations++;
    if (!(nextCost < cost)) break;
    best = next;
    cost = nextCost;
  }
  return { parameters: best, answers: answersAt(best), slopes: slopes(answersAt, best, size), sumOfSquares: cost, iterations };
}

/** Difference quotients, central where both neighbours lie between the limits. */
function slopes(
  answersAt: (parameters: readonly number[]) => readonly number[],
  parameters: readonly number[],
  size = parameters.length,
): number[][] {
  const columns = Array.from({ length: size }, (_, k) => {
    const [low, high] = [Math.max(0, parameters[k]! - STEP), Math.min(1, parameters[k]! + STEP)];
    const below = answersAt(parameters.map((p, i) => (i === k ? low : p)));
    const above = answersAt(parameters.map((p, i) => (i === k ? high : p)));
    return above.map((y, i) => (y - below[i]!) / (high - low));
  });
  return columns[0]!.map((_, i) => columns.map((column) => column[i]!));
}

/** Towards the least squares of the straightened model; parameters held at a limit stay out. Undefined when it is singular. */
function gaussNewtonStep(
  readings: readonly number[],
  answers: readonly number[],
  rows: readonly (readonly number[])[],
  at: readonly number[],
): number[] | undefined {
  const pull = at.map((_, k) => rows.reduce((sum, row, i) => sum + row[k]! * (readings[i]! - answers[i]!), 0));
  const free = at.flatMap((p, k) => ((p <= 0 && pull[k]! < 0) || (p >= 1 && pull[k]! > 0) ? [] : [k]));
  const freeRows = rows.map((row) => free.map((k) => row[k]!));
  const inverse = invert(normalMatrix(freeRows, free.length), 1e-13);
  if (!inverse.ok) return undefined;
  const step = at.map(() => 0);
  free.forEach((k, i) => (step[k] = inverse.inverse[i]!.reduce((sum, x, j) => sum + x * pull[free[j]!]!, 0)));
  return step;
}

function sumOfSquares(readings: readonly number[], answers: readonly number[]): number {
  return readings.reduce((sum, y, i) => sum + (y - answers[i]!) ** 2, 0);
}
