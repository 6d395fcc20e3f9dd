import type { Chain } from './build.js';
import { ChainError } from './errors.js';
import { select } from './names.js';
import { drawnInputs, wantedOutputs, type DrawnInput, type VaryInput } from './sampling/inputs.js';
import { Kept } from './sampling/kept.js';
import { bind, compile, sharedColumns, zeroIfFinite, type Failures, type Program } from './sampling/program.js';
import { Scratch } from './sampling/scratch.js';
import { sharesOf, type Shares } from './sampling/shares.js';
import { ScrambledSobol } from './sampling/sobol.js';
import { spreadOf, wantedRanks, wantedShares, type Spread } from './sampling/summary.js';
import { engineOf, type State } from './state.js';

export interface VaryRequest {
  /** Default: every root that states a standard deviation, is not observed, and bears upon the outputs. Drawn independently. */
  readonly inputs?: readonly VaryInput[];
  /** Quantities, `id` or `id[label]`; a vector stands for all its elements. */
  readonly outputs: readonly string[];
  /** How many, default 8192; rounded up so that each of the `scrambles` is a power of two. */
  readonly samples?: number;
  /** Independent scrambles of the point set, from whose scatter the errors come; default 4. With 1 the errors are those of random draws. */
  readonly scrambles?: number;
  /** The same seed gives the same result; default 1. */
  readonly seed?: number;
  /** Which input the spread comes from; default true. Costs `shareSamples` · (inputs + 2) runs of what lies behind. */
  readonly shares?: boolean;
  /** Base points for the shares, default 8192 or `samples` where that is less. */
  readonly shareSamples?: number;
  /** The outer percentiles (2.5 and 97.5) with their intervals too; default true. Without, they are NaN, and the rest is quicker. */
  readonly outer?: boolean;
  /** Memory to use again, for variations that follow each other. */
  readonly scratch?: Scratch;
  /** Called between blocks with the part of the work done, 0 to 1. */
  readonly onProgress?: (done: number) => void;
  readonly signal?: AbortSignal;
}

export interface Variation {
  readonly samples: number;
  readonly inputs: readonly string[];
  readonly outputs: readonly (Spread & { readonly shares?: Shares })[];
  /** How often a step refused a sample, and the first that it said. */
  readonly failures: Readonly<Failures>;
}

/** Samples of a block: its columns stay in the cache. */
const BLOCK = 2048;

/**
 * How far the outputs scatter when the inputs do, and which input it comes from.
 * Evenly spread points (a scrambled Sobol sequence) need far fewer samples than random draws for the same error of the mean.
 *
 * @throws ChainError for unknown names, contradictory spreads, NO_VALUE where an output has no value, CANCELLED by the signal
 */
export function vary(chain: Chain, state: State, request: VaryRequest): Variation {
  return drive(steps(chain, state, request), request);
}

/** The same, giving way to other work about every frame, so that a page stays alive and the signal is heard. */
export async function varyAsync(chain: Chain, state: State, request: VaryRequest): Promise<Variation> {
  const work = steps(chain, state, request);
  try {
    let rested = performance.now();
    for (;;) {
      const { done, value } = work.next();
      if (done) return value;
      tell(request, value);
      if (performance.now() - rested > 12) {
        await new Promise((resume) => setTimeout(resume, 0));
        rested = performance.now();
      }
    }
  } finally {
    work.return(undefined as never); // gives back what a cancelled variation holds
  }
}

function drive<T>(work: Generator<number, T>, request: Pick<VaryRequest, 'onProgress' | 'signal'>): T {
  try {
    for (;;) {
      const { done, value } = work.next();
      if (done) return value;
      tell(request, value);
    }
  } finally {
    work.return(undefined as never);
  }
}

function tell({ onProgress, signal }: Pick<VaryRequest, 'onProgress' | 'signal'>, done: number): void {
  onProgress?.(done);
  if (signal?.aborted) throw new ChainError('CANCELLED', `The variation was cancelled after ${Math.round(done * 100)} % of the samples`);
}

function* steps(chain: Chain, state: State, request: VaryRequest): Generator<number, Variation> {
  const outputs = wantedOutputs(chain, state, request.outputs);
  const inputs = drawnInputs(chain, state, request.inputs, outputs);
  const scrambles = whole('scrambles', request.scrambles ?? 4);
  const perScramble = powerOfTwo(whole('samples', request.samples ?? 8192) / scrambles);
  const samples = scrambles * perScramble;
  const seed = request.seed ?? 1;
  const program = compile(engineOf(state), inputs.map(({ name }) => name), inputs.map(({ middle }) => middle), outputs); // prettier-ignore
  const failures: Failures = { count: 0, message: undefined };
  const withShares = request.shares ?? true;
  if (withShares && scrambles < 2)
    throw new ChainError('BAD_REQUEST', 'Shares of the spread need at least 2 scrambles, to tell their errors');
  const sharePoints = powerOfTwo(Math.min(request.shareSamples ?? 8192, samples) / scrambles);
  const shareCost = withShares ? sharePoints * scrambles * (inputs.length + 2) : 0;
  const total = samples + shareCost;

  const block = Math.min(BLOCK, perScramble);
  const draw = drawScrambled(inputs, perScramble, block, seed);
  const scratch = request.scratch ?? new Scratch();
  const spreads = yield* part(
    run({ program, samples, block, groups: scrambles, draw, failures, scratch, outer: request.outer ?? true }),
    total,
  );
  if (!withShares) return { samples, inputs: inputs.map(({ name }) => name.name), outputs: spreads, failures };
  const shares = yield* sharesOf(program, inputs, scrambles, sharePoints, seed, failures, samples / total);
  return {
    samples,
    inputs: inputs.map(({ name }) => name.name),
    outputs: spreads.map((spread, o) => ({ ...spread, shares: shares[o]! })),
    failures,
  };
}

/** Passes on the progress of one part of the work, as a share of all of it. */
function* part<T>(work: Generator<number, T>, total: number): Generator<number, T> {
  for (;;) {
    const { done, value } = work.next();
    if (done) return value;
    yield value / total;
  }
}

/** Gives the draws of a block, one array of `count` numbers for each input: samples from `start` on. */
type Draw = (start: number, count: number) => readonly Float64Array[];

function drawScrambled(inputs: readonly DrawnInput[], perScramble: number, block: number, seed: number): Draw {
  const columns = inputs.map(() => new Float64Array(block));
  let points: ScrambledSobol | undefined;
  return (start, count) => {
    if (start % perScramble === 0) points = new ScrambledSobol(inputs.length, seed * 1009 + start / perScramble);
    points!.next(columns, count);
    inputs.forEach(({ shape }, i) => shape(columns[i]!, count));
    return columns;
  };
}

interface Run {
  readonly program: Program;
  readonly samples: number;
  readonly block: number;
  /** Independent parts of equal size, for the errors. */
  readonly groups: number;
  readonly draw: Draw;
  /** Looks through the draws of a block, since a step may turn what is no number into one; throws. */
  readonly verify?: (columns: readonly Float64Array[], count: number) => void;
  readonly failures: Failures;
  readonly scratch: Scratch;
  readonly outer: boolean;
}

/** Runs a program block by block and sums up its outputs. Yields how many samples are done. */
function* run({ program, samples, block, groups, draw, verify, failures, scratch, outer }: Run): Generator<number, Spread[]> {
  const columns = sharedColumns(program, block);
  const draws = program.drawColumns.map((c) => columns[c]!);
  const outputs = program.outputColumns.map((c) => columns[c]!);
  const windows = program.outputs.map(({ index }) => program.chain.quantities[index]!.window);
  const mine = scratch.take(outputs.length * Kept.room(samples));
  try {
    const kept = program.middle.map(
      (middle, o) => new Kept(samples, middle, { shares: wantedShares(outer), window: windows[o], ...(mine ? { scratch } : {}) }),
    );
    const constants = outputs.map(({ constant }) =>
      constant === undefined ? undefined : new Float64Array(block).fill(constant as number),
    );
    const pass = function* (failed: Failures, see: (o: number, column: Float64Array, count: number) => void) {
      const operations = program.operations.map((operation) => bind(operation, columns, block, failed));
      for (let start = 0; start < samples; start += block) {
        const count = Math.min(block, samples - start);
        const drawn = draw(start, count);
        drawn.forEach((numbers, i) => (draws[i]!.numbers = numbers));
        for (const operation of operations) operation(count);
        verify?.(drawn, count); // now that the steps have brought them into the cache
        for (let o = 0; o < outputs.length; o++) see(o, constants[o] ?? outputs[o]!.numbers!, count);
        yield start + count;
      }
    };
    yield* pass(failures, (o, column, count) => kept[o]!.add(column, count));
    const open = new Set(kept.filter((one) => !one.holds(wantedRanks(one.count, outer))));
    if (open.size > 0) {
      for (const one of open) one.lookAgain(wantedRanks(one.count, outer));
      const told: Failures = { count: 0, message: undefined }; // the first pass has counted them
      for (const _ of pass(told, (o, column, count) => open.has(kept[o]!) && kept[o]!.addAgain(column, count))) yield samples;
    }
    return program.outputs.map(({ name }, o) => spreadOf(name, kept[o]!, groups, windows[o], outer));
  } finally {
    if (mine) scratch.release();
  }
}

export interface DrawsRequest {
  /** Draws by input, `id` or `id[label]`, all of one length: from the plant's own log, or from another source of numbers. */
  readonly columns: Readonly<Record<string, Float64Array>>;
  readonly outputs: readonly string[];
  /** The outer percentiles (2.5 and 97.5) with their intervals too; default true. Without, they are NaN, and the rest is quicker. */
  readonly outer?: boolean;
  /** Memory to use again, for variations that follow each other. */
  readonly scratch?: Scratch;
  readonly onProgress?: (done: number) => void;
  readonly signal?: AbortSignal;
}

/** How far the outputs scatter over given draws. Errors are those of independent draws; dependence among the inputs is kept. */
export function varyWithDraws(chain: Chain, state: State, request: DrawsRequest): Variation {
  const outputs = wantedOutputs(chain, state, request.outputs);
  const names = Object.keys(request.columns);
  const given = names.map((name) => request.columns[name]!);
  const samples = given[0]?.length ?? 0;
  if (samples === 0) throw new ChainError('BAD_REQUEST', 'No draws came; give at least one column with at least one number');
  const odd = names.findIndex((_, i) => given[i]!.length !== samples);
  if (odd >= 0) {
    throw new ChainError(
      'BAD_REQUEST',
      `Draws of ${names[odd]} are ${given[odd]!.length}, but ${names[0]} has ${samples}; lengths must agree`,
    );
  }
  const inputs = names.map((name) => select(chain, name));
  const middles = given.map((column) => column.subarray(0, 1000).reduce((sum, x) => sum + x, 0) / Math.min(1000, samples));
  const notFinite = (i: number) =>
    new ChainError('BAD_VALUE', `Draws of ${names[i]} hold a number that is not finite; leave such samples out`);
  if (!middles.every(Number.isFinite)) throw notFinite(middles.findIndex((x) => !Number.isFinite(x)));
  const program = compile(engineOf(state), inputs, middles, outputs);
  const failures: Failures = { count: 0, message: undefined };
  const draw: Draw = (start, count) => given.map((column) => column.subarray(start, start + count));
  const verify = (columns: readonly Float64Array[], count: number) => {
    const bad = columns.findIndex((column) => zeroIfFinite(column, count) !== 0);
    if (bad >= 0) throw notFinite(bad);
  };
  const scratch = request.scratch ?? new Scratch();
  const work = run({
    program,
    samples,
    block: Math.min(BLOCK, samples),
    groups: 1,
    draw,
    verify,
    failures,
    scratch,
    outer: request.outer ?? true,
  });
  return { samples, inputs: names, outputs: drive(part(work, samples), request), failures };
}

function whole(what: string, n: number): number {
  if (Number.isInteger(n) && n >= 1) return n;
  throw new ChainError('BAD_REQUEST', `${what} is ${n}, but a whole number of at least 1 is expected`);
}

function powerOfTwo(n: number): number {
  return 2 ** Math.max(3, Math.ceil(Math.log2(n)));
}
