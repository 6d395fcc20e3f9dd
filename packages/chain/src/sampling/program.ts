import type { Chain } from '../build.js';
import type { Engine } from '../engine.js';
import { callStep, hasValue, OK } from '../engine.js';
import { ChainError } from '../errors.js';
import type { Selected } from '../names.js';
import { pokeNumber } from '../probe.js';
import { Reading } from '../state.js';
import type { Step, Value } from '../types.js';

/** One quantity, for a block of samples: a column of numbers, a list of vectors, or one value for all. */
export interface Column {
  numbers?: Float64Array;
  readonly vectors?: Value[];
  readonly constant?: Value;
  /** Some samples have no value: NaN, or a vector with a gap. Set by whoever writes the column. */
  gaps: boolean;
  /** `numbers` is another array for each block: a part of the draws given. */
  readonly passing?: boolean;
  /** No step reads it: whoever takes it in sees for himself what has no value. */
  readonly last?: boolean;
}

/** A step that must run for each block, with the places of its columns. */
interface Operation {
  readonly step: Step;
  readonly inputs: readonly number[];
  readonly outputs: readonly number[];
}

/**
 * The part of a chain that lies between varied inputs and wanted outputs, made ready to run on blocks of samples.
 * Columns are numbered; `slots` says which may share memory because one is done with before the next begins.
 */
export interface Program {
  readonly chain: Chain;
  readonly inputs: readonly Selected[];
  readonly outputs: readonly Selected[];
  /** The column in which the draws of each input are put, and the one in which each output is found. */
  readonly drawColumns: readonly number[];
  readonly outputColumns: readonly number[];
  readonly operations: readonly Operation[];
  readonly columns: readonly { readonly vector: boolean; readonly constant?: Value }[];
  /** Value of each output with every input in the middle of its range. */
  readonly middle: readonly number[];
}

/**
 * @param middles - a typical value of each input, at which shapes of values are found out
 * @throws ChainError NO_VALUE when an output has no value there; BAD_REQUEST for an output or an input named twice
 */
export function compile(engine: Engine, inputs: readonly Selected[], middles: readonly number[], outputs: readonly Selected[]): Program {
  const { chain } = engine;
  const names = inputs.map(({ name }) => name);
  const twice = names.find((name, i) => names.indexOf(name) !== i);
  if (twice !== undefined) throw new ChainError('BAD_REQUEST', `${twice} is to be varied twice; name each input once`, [twice]);
  const trial = engine.clone();
  inputs.forEach((input, i) => pokeNumber(trial, input, middles[i]!));
  trial.settle();
  for (const { name, index, id } of outputs) {
    if (trial.status[index] === OK) continue;
    const status = new Reading(trial).status(id);
    const reason = status.ok ? '' : status.needs.includes(id) ? status.reason : `${status.reason}: ${status.cause.message}`;
    throw new ChainError('NO_VALUE', `${name} cannot be varied, since it has no value with every input in the middle: ${reason}`, [id]);
  }
  return layOut(chain, trial, engine, inputs, outputs);
}

function layOut(chain: Chain, trial: Engine, engine: Engine, inputs: readonly Selected[], outputs: readonly Selected[]): Program {
  const columns: { vector: boolean; constant?: Value }[] = [];
  const operations: Operation[] = [];
  const add = (column: { vector: boolean; constant?: Value }) => columns.push(column) - 1;
  const columnOf = new Map<number, number>();
  const isVector = (q: number) => typeof trial.values[q] !== 'number';

  // Draws of whole numbers are the quantity itself; draws of elements are put into a copy of their vector.
  const varied = new Set(inputs.map(({ index }) => index));
  const drawColumns = inputs.map((input) => {
    const column = add({ vector: false });
    if (input.element < 0) columnOf.set(input.index, column);
    return column;
  });
  for (const q of varied) {
    const parts = inputs.flatMap(({ index, element }, i) => (index === q && element >= 0 ? [{ element, column: drawColumns[i]! }] : []));
    if (parts.length === 0) continue;
    if (columnOf.has(q)) throw new ChainError('BAD_REQUEST', `${chain.quantities[q]!.id} is to be varied whole and by element`, []);
    const column = add({ vector: true });
    columnOf.set(q, column);
    const base = engine.values[q] as Float64Array;
    operations.push({ step: composing(base, parts), inputs: parts.map((part) => part.column), outputs: [column] });
  }

  const needed = neededSteps(chain, engine, varied, outputs);
  const columnFor = (q: number): number => {
    let column = columnOf.get(q);
    if (column === undefined) columnOf.set(q, (column = add({ vector: isVector(q), constant: trial.values[q]! })));
    return column;
  };
  for (let s = 0; s < chain.steps.length; s++) {
    if (needed[s] === 0) continue;
    const ins = [...chain.inputs.subarray(chain.inputStart[s]!, chain.inputStart[s + 1]!)].map(columnFor);
    const outs: number[] = [];
    for (let q = chain.outputStart[s]!; q < chain.outputStart[s + 1]!; q++) {
      const column = add({ vector: isVector(q) });
      // What is varied or observed keeps its own value; the step writes into a column that nobody reads.
      if (!varied.has(q) && !engine.observations.has(q)) columnOf.set(q, column);
      outs.push(column);
    }
    operations.push({ step: chain.steps[s]!, inputs: ins, outputs: outs });
  }
  const outputColumns = outputs.map((output) => {
    const whole = columnFor(output.index);
    if (output.element < 0) return whole;
    const column = add({ vector: false });
    operations.push({ step: picking(output), inputs: [whole], outputs: [column] });
    return column;
  });
  const middle = outputs.map(({ index, element }) => {
    const value = trial.values[index]!;
    return typeof value === 'number' ? value : value[element]!;
  });
  return { chain, inputs, outputs, drawColumns, outputColumns, operations, columns, middle };
}

/** 1 for each step that depends on a varied input and bears upon a wanted output. */
function neededSteps(chain: Chain, engine: Engine, varied: ReadonlySet<number>, outputs: readonly Selected[]): Uint8Array {
  const { inputs, inputStart, outputStart, steps } = chain;
  const moves = new Uint8Array(chain.quantities.length);
  const held = (q: number) => varied.has(q) || engine.observations.has(q);
  for (const q of varied) moves[q] = 1;
  const needed = new Uint8Array(steps.length);
  for (let s = 0; s < steps.length; s++) {
    for (let i = inputStart[s]!; i < inputStart[s + 1]!; i++) if (moves[inputs[i]!] === 1) needed[s] = 1;
    for (let q = outputStart[s]!; q < outputStart[s + 1]!; q++) if (needed[s] === 1 && !held(q)) moves[q] = 1;
  }
  const wanted = new Uint8Array(chain.quantities.length);
  for (const { index } of outputs) wanted[index] = 1;
  for (let s = steps.length - 1; s >= 0; s--) {
    let bears = 0;
    for (let q = outputStart[s]!; q < outputStart[s + 1]!; q++) if (wanted[q] === 1 && !held(q)) bears = 1;
    needed[s] = needed[s]! & bears;
    if (needed[s] === 1) for (let i = inputStart[s]!; i < inputStart[s + 1]!; i++) wanted[inputs[i]!] = 1;
  }
  return needed;
}

function composing(base: Float64Array, parts: readonly { element: number }[]): Step {
  const run = (...values: number[]) => {
    const whole = base.slice();
    parts.forEach(({ element }, i) => (whole[element] = values[i]!));
    return whole;
  };
  return { id: 'compose', title: 'Putting elements together', inputs: [], outputs: [], run: run as never, equation: '' };
}

function picking({ name, element }: Selected): Step {
  const run = (whole: Float64Array) => whole[element] ?? NaN;
  return { id: `pick ${name}`, title: `Picking ${name}`, inputs: [], outputs: [], run: run as never, equation: '' };
}

/** Why samples have no value: how many times a step failed, and the first that it said. */
export interface Failures {
  count: number;
  message: string | undefined;
}

/** An operation on its columns: computes the first `count` samples of a block. */
export type Bound = (count: number) => void;

/** Fixes an operation to the columns that it reads and writes. */
export function bind({ step, inputs, outputs }: Operation, columns: readonly Column[], size: number, failures: Failures): Bound {
  const ins = inputs.map((c) => columns[c]!);
  const outs = outputs.map((c) => columns[c]!);
  const oneByOne = () => bindRun(step, ins, outs, failures);
  const numeric = ins.every(({ numbers, constant }) => numbers ?? typeof constant === 'number') && outs.every(({ numbers }) => numbers);
  if (!step.block || !numeric) return oneByOne();

  const read = ins.map(({ numbers, constant }) => numbers ?? new Float64Array(size).fill(constant as number));
  const write = outs.map(({ numbers }) => numbers!);
  const passingIns = ins.flatMap((column, k) => (column.passing ? [k] : []));
  const { block } = step;
  let fallback: Bound | undefined;
  return (count) => {
    for (const k of passingIns) read[k] = ins[k]!.numbers!;
    try {
      block(read, write, count);
    } catch {
      (fallback ??= oneByOne())(count); // some sample is refused; one by one tells which
      return;
    }
    for (let o = 0; o < outs.length; o++) {
      outs[o]!.gaps = false;
      for (let k = 0; k < ins.length; k++) if (ins[k]!.gaps) copyGaps(read[k]!, write[o]!, count);
      if (!outs[o]!.last && zeroIfFinite(write[o]!, count) !== 0) {
        outs[o]!.gaps = true;
        markGaps(write[o]!, count);
      }
    }
  };
}

/**
 * 0 when the first `count` are finite, else NaN. A sum is finite only where all are; eight at once, since each addition waits for
 * the one before. Finite numbers whose sum is not are looked at one by one.
 */
export function zeroIfFinite(x: Float64Array, count: number): number {
  let a = 0;
  let b = 0;
  let c = 0;
  let d = 0;
  let e = 0;
  let f = 0;
  let g = 0;
  let h = 0;
  const eights = count & ~7;
  for (let i = 0; i < eights; i += 8) {
    a += x[i]!;
    b += x[i + 1]!;
    c += x[i + 2]!;
    d += x[i + 3]!;
    e += x[i + 4]!;
    f += x[i + 5]!;
    g += x[i + 6]!;
    h += x[i + 7]!;
  }
  for (let i = eights; i < count; i++) a += x[i]!;
  if (Number.isFinite(a + b + c + d + (e + f + g + h))) return 0;
  let sum = 0;
  for (let i = 0; i < count; i++) sum += x[i]! * 0;
  return sum;
}

function copyGaps(from: Float64Array, to: Float64Array, count: number): void {
  for (let i = 0; i < count; i++) if (Number.isNaN(from[i]!)) to[i] = NaN;
}

function markGaps(x: Float64Array, count: number): void {
  for (let i = 0; i < count; i++) if (!Number.isFinite(x[i]!)) x[i] = NaN;
}

/** Runs a step sample by sample; a sample that it refuses, or whose inputs have gaps, has no value. */
function bindRun(step: Step, ins: readonly Column[], outs: readonly Column[], failures: Failures): Bound {
  const values: Value[] = ins.map(({ constant }) => constant ?? 0);
  const places = Int32Array.from(ins, (_, i) => i);
  const moving = ins.flatMap((column, k) => (column.constant === undefined ? [{ k, column }] : []));
  const many = outs.length > 1;
  return (count) => {
    const careful = ins.some(({ gaps }) => gaps);
    for (const out of outs) out.gaps = false;
    for (let i = 0; i < count; i++) {
      let ready = true;
      for (const { k, column } of moving) {
        const value = (column.numbers ?? column.vectors)![i]!;
        values[k] = value;
        if (careful && !hasValue(value)) ready = false;
      }
      let result: Value | readonly Value[] | undefined;
      if (ready) {
        try {
          result = callStep(step, values, places, 0, places.length);
        } catch (error) {
          failures.count++;
          failures.message ??= (error as Error).message;
        }
      }
      for (let o = 0; o < outs.length; o++) {
        const value = result === undefined ? NaN : many ? (result as readonly Value[])[o]! : (result as Value);
        put(outs[o]!, i, value);
      }
    }
  };
}

function put(column: Column, i: number, value: Value): void {
  const good = hasValue(value);
  if (!good) column.gaps = true;
  if (column.numbers) column.numbers[i] = good && typeof value === 'number' ? value : NaN;
  else column.vectors![i] = good ? value : NaN;
}

/** Columns for every number of a program, without sharing. */
export function ownColumns({ columns }: Program, size: number): Column[] {
  return columns.map(({ vector, constant }) => {
    if (constant !== undefined) return { constant, gaps: false };
    return vector ? { vectors: new Array<Value>(size), gaps: false } : { numbers: new Float64Array(size), gaps: false };
  });
}

/**
 * Columns that share memory where one is done with before another begins, so that a block stays in the cache. Outputs stay
 * to the end; draws pass: whoever runs the program puts their arrays in.
 */
export function sharedColumns(program: Program, size: number): Column[] {
  const { columns, drawColumns, operations, outputColumns } = program;
  const passing = new Set(drawColumns);
  const lastUse = new Int32Array(columns.length).fill(-1);
  operations.forEach(({ inputs }, o) => inputs.forEach((c) => (lastUse[c] = o)));
  const unread = new Set(outputColumns.filter((c) => lastUse[c] === -1));
  for (const c of outputColumns) lastUse[c] = operations.length;
  const free: Float64Array[] = [];
  const none = new Float64Array();
  const result = new Array<Column>(columns.length);
  const give = (c: number) => {
    const { vector, constant } = columns[c]!;
    if (constant !== undefined) result[c] = { constant, gaps: false };
    else if (passing.has(c) && !vector) result[c] = { numbers: none, gaps: false, passing: true };
    else
      result[c] = vector
        ? { vectors: new Array<Value>(size), gaps: false }
        : { numbers: free.pop() ?? new Float64Array(size), gaps: false, ...(unread.has(c) ? { last: true } : {}) };
  };
  columns.forEach(({ constant }, c) => constant !== undefined && give(c));
  drawColumns.forEach(give);
  operations.forEach(({ inputs, outputs }, o) => {
    outputs.forEach(give);
    for (const c of new Set([...inputs, ...outputs])) {
      const { numbers, passing: passes } = result[c]!;
      if (numbers && !passes && lastUse[c]! <= o) free.push(numbers);
    }
  });
  return result;
}
