import type { DrawnInput } from './inputs.js';
import { bind, ownColumns, type Bound, type Column, type Failures, type Program } from './program.js';
import { ScrambledSobol } from './sobol.js';
import { halfWidth } from './summary.js';

/** What part of an output's variance comes from one input. Estimates may fall a little outside 0 to 1; nothing is clipped. */
export interface Share {
  readonly id: string;
  /** By itself: the variance that would go if this input were known (first-order index). */
  readonly first: number;
  /** With all in which it takes part: the variance that would stay if all others were known (total index). */
  readonly total: number;
  /** What it does only together with others: total less first. */
  readonly interaction: number;
  /** Half-widths of the 95 % intervals. */
  readonly firstError: number;
  readonly totalError: number;
}

export interface Shares {
  /** Largest total first. Empty when the output does not vary. */
  readonly ranked: readonly Share[];
  /** Variance that no input brings about by itself: one less the sum of the first-order indices. */
  readonly interaction: number;
}

const BLOCK = 512;

/** Running sums of one scramble: for each output, and for each input and output. */
interface Sums {
  count: number;
  sum: number;
  squares: number;
  readonly first: Float64Array;
  readonly total: Float64Array;
}

/**
 * First-order and total Sobol' indices: points A and B and, for each input, A with that input from B. First order after
 * A. Saltelli et al., Comput. Phys. Commun. 181 (2010) 259, eq. 16 with values centred; total after M. J. W. Jansen, Comput.
 * Phys. Commun. 117 (1999) 35. Only the steps behind an input run again for it. Holds for independent inputs.
 */
export function* sharesOf(
  program: Program,
  inputs: readonly DrawnInput[],
  scrambles: number,
  points: number,
  seed: number,
  failures: Failures,
  doneBefore: number,
): Generator<number, Shares[]> {
  const k = inputs.length;
  const size = Math.min(BLOCK, points);
  const machine = assemble(program, size, failures);
  const draws = Array.from({ length: 2 * k }, () => new Float64Array(size));
  const outputs = program.outputs.length;
  const estimates: Sums[][] = [];
  for (let scramble = 0; scramble < scrambles; scramble++) {
    const sobol = new ScrambledSobol(2 * k, seed * 1013 + 7919 + scramble);
    const sums = Array.from({ length: outputs }, (): Sums => ({
      count: 0,
      sum: 0,
      squares: 0,
      first: new Float64Array(k),
      total: new Float64Array(k),
    }));
    for (let start = 0; start < points; start += size) {
      sobol.next(draws, size);
      inputs.forEach(({ shape }, i) => {
        shape(draws[i]!, size);
        shape(draws[k + i]!, size);
      });
      machine(draws, size, sums);
      yield doneBefore + (1 - doneBefore) * ((scramble * points + start + size) / (scrambles * points));
    }
    estimates.push(sums);
  }
  return program.outputs.map((_, o) =>
    combine(
      inputs,
      estimates.map((sums) => sums[o]!),
    ),
  );
}

/** Makes the function that runs A, B and the mixtures for one block and adds to the sums. */
function assemble(
  program: Program,
  size: number,
  failures: Failures,
): (draws: readonly Float64Array[], count: number, sums: readonly Sums[]) => void {
  const { drawColumns, operations, outputColumns, middle } = program;
  const k = drawColumns.length;
  const base = ownColumns(program, size);
  const changed = ownColumns(program, size);
  const runBase = operations.map((operation) => bind(operation, base, size, failures));
  const mixtures = drawColumns.map((drawColumn) => {
    const columns: Column[] = base.slice();
    const moved = new Set([drawColumn]);
    columns[drawColumn] = changed[drawColumn]!;
    const run: Bound[] = [];
    for (const operation of operations) {
      if (!operation.inputs.some((c) => moved.has(c))) continue;
      for (const c of operation.outputs) {
        moved.add(c);
        columns[c] = changed[c]!;
      }
      run.push(bind(operation, columns, size, failures));
    }
    return { run, columns, moved };
  });
  const fA = outputColumns.map(() => new Float64Array(size));
  const fB = outputColumns.map(() => new Float64Array(size));
  const fill = (draws: readonly Float64Array[]) => drawColumns.forEach((c, i) => base[c]!.numbers!.set(draws[i]!));
  const keep = (into: readonly Float64Array[]) =>
    outputColumns.forEach((c, o) => (base[c]!.numbers ? into[o]!.set(base[c]!.numbers) : into[o]!.fill(base[c]!.constant as number)));

  return (draws, count, sums) => {
    fill(draws.slice(k));
    for (const step of runBase) step(count);
    keep(fB);
    fill(draws);
    for (const step of runBase) step(count);
    keep(fA);
    sums.forEach((sum, o) => addMoments(sum, fA[o]!, fB[o]!, count, middle[o]!));
    mixtures.forEach(({ run, columns, moved }, i) => {
      columns[drawColumns[i]!]!.numbers!.set(draws[k + i]!);
      for (const step of run) step(count);
      outputColumns.forEach((c, o) => {
        if (moved.has(c)) addProducts(sums[o]!, i, fA[o]!, fB[o]!, columns[c]!.numbers!, count, middle[o]!);
      });
    });
  };
}

/** Values are taken from the middle one, so that the mean takes no digits from the spread. */
function addMoments(sums: Sums, a: Float64Array, b: Float64Array, count: number, middle: number): void {
  for (let i = 0; i < count; i++) {
    const x = a[i]! - middle;
    const y = b[i]! - middle;
    if (x !== x || y !== y) continue;
    sums.count += 2;
    sums.sum += x + y;
    sums.squares += x * x + y * y;
  }
}

function addProducts(
  sums: Sums,
  input: number,
  a: Float64Array,
  b: Float64Array,
  mixed: Float64Array,
  count: number,
  middle: number,
): void {
  const centre = middle + sums.sum / sums.count;
  let first = 0;
  let total = 0;
  for (let i = 0; i < count; i++) {
    const difference = mixed[i]! - a[i]!;
    const product = (b[i]! - centre) * difference;
    if (product !== product) continue;
    first += product;
    total += difference * difference;
  }
  sums.first[input]! += first;
  sums.total[input]! += total;
}

function combine(inputs: readonly DrawnInput[], scrambles: readonly Sums[]): Shares {
  const variances = scrambles.map(({ count, sum, squares }) => (squares - (sum * sum) / count) / count);
  const variance = average(variances);
  if (!(variance > 0)) return { ranked: [], interaction: 0 };
  const several = scrambles.length > 1;
  const ranked = inputs.map(({ name }, i): Share => {
    // Both points of each pair are in `count`.
    const firsts = scrambles.map(({ count, first }) => (2 * first[i]!) / count);
    const totals = scrambles.map(({ count, total }) => total[i]! / count);
    const [first, total] = [average(firsts) / variance, average(totals) / variance];
    const error = (parts: readonly number[]) => (several ? halfWidth(parts.map((part, s) => part / variances[s]!)) : NaN);
    return { id: name.name, first, total, interaction: total - first, firstError: error(firsts), totalError: error(totals) };
  });
  ranked.sort((a, b) => b.total - a.total);
  return { ranked, interaction: 1 - ranked.reduce((sum, { first }) => sum + first, 0) };
}

function average(numbers: readonly number[]): number {
  return numbers.reduce((a, b) => a + b, 0) / numbers.length;
}
