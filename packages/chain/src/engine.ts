import { consumersOf, makerOf, type Chain } from './build.js';
import type { Finding, Observation, Step, Value } from './types.js';

/** A value stands; its own step (or root) gave none; something upstream has none. */
export const OK = 0;
export const FAILED = 1;
export const NEEDS = 2;

type Run = (...inputs: Value[]) => Value | readonly Value[];

/**
 * The numbers of a chain and the work of keeping them right. For each quantity it holds what the chain itself gives
 * (`own`) and what counts (`values`): the observation where there is one, else the same. So releasing an observation
 * needs no step run again, and a measured value can be shown beside the computed one.
 */
export class Engine {
  readonly values: Value[];
  readonly own: Value[];
  readonly status: Uint8Array;
  readonly ownStatus: Uint8Array;
  readonly observations: Map<number, Observation>;
  /** Steps that gave no value where they should have, by their place. */
  readonly failures: Map<number, Finding>;
  /** What each step says, kept until its inputs or outputs change. */
  readonly said: (readonly Finding[] | undefined)[];
  private readonly dirty: Uint8Array;
  private firstDirty: number;
  private lastDirty = -1;

  constructor(
    readonly chain: Chain,
    from?: Engine,
  ) {
    const count = chain.quantities.length;
    const stepCount = chain.steps.length;
    this.dirty = new Uint8Array(stepCount);
    this.firstDirty = stepCount;
    if (from) {
      this.values = from.values.slice();
      this.own = from.own.slice();
      this.status = from.status.slice();
      this.ownStatus = from.ownStatus.slice();
      this.observations = new Map(from.observations);
      this.failures = new Map(from.failures);
      this.said = from.said.slice();
      return;
    }
    this.values = new Array<Value>(count);
    this.own = new Array<Value>(count);
    this.status = new Uint8Array(count);
    this.ownStatus = new Uint8Array(count);
    this.observations = new Map();
    this.failures = new Map();
    this.said = new Array<undefined>(stepCount);
    const { roots } = chain;
    for (let q = 0; q < roots.length; q++) {
      const value = roots[q]!.value;
      const status = hasValue(value) ? OK : FAILED;
      this.own[q] = this.values[q] = status === OK ? value : NaN;
      this.ownStatus[q] = this.status[q] = status;
    }
  }

  clone(): Engine {
    return new Engine(this.chain, this);
  }

  /** Runs every step once, in order. */
  runAll(): void {
    const count = this.chain.steps.length;
    for (let s = 0; s < count; s++) this.runStep(s);
    if (this.lastDirty >= 0) this.dirty.fill(0);
    this.firstDirty = count;
    this.lastDirty = -1;
  }

  /** Puts an observation in place of a value, or takes it away; the steps downstream run at the next `settle`. */
  override(q: number, observation: Observation | undefined): void {
    if (observation) this.observations.set(q, observation);
    else this.observations.delete(q);
    const value = observation ? observation.value : this.own[q]!;
    const status = observation ? OK : this.ownStatus[q]!;
    if (status === this.status[q] && same(value, this.values[q]!)) return;
    this.values[q] = value;
    this.status[q] = status;
    const maker = makerOf(this.chain, q);
    if (maker >= 0) this.said[maker] = undefined;
    this.touch(q);
  }

  /** Puts a bare number in place of a value, as `override` does, without keeping a record of it: for search loops. */
  poke(q: number, value: Value): void {
    if (this.status[q] === OK && same(value, this.values[q]!)) return;
    if (!this.observations.has(q)) this.observations.set(q, { value, origin: 'entered' });
    this.values[q] = value;
    this.status[q] = OK;
    this.touch(q);
  }

  /**
   * Runs the steps downstream of what changed, each once, and none behind a step whose outputs stayed the same.
   * @param changed - receives the quantities whose value or status changed, where given
   */
  settle(changed?: number[]): void {
    const { dirty } = this;
    for (let s = this.firstDirty; s <= this.lastDirty; s++) {
      if (dirty[s] === 0) continue;
      dirty[s] = 0;
      this.runStep(s, true, changed);
    }
    this.firstDirty = dirty.length;
    this.lastDirty = -1;
  }

  private touch(q: number): void {
    const { start, steps } = consumersOf(this.chain);
    for (let i = start[q]!; i < start[q + 1]!; i++) {
      const s = steps[i]!;
      this.dirty[s] = 1;
      if (s < this.firstDirty) this.firstDirty = s;
      if (s > this.lastDirty) this.lastDirty = s;
    }
  }

  private runStep(s: number, spread = false, changed?: number[]): void {
    const { inputs, inputStart, outputStart, steps } = this.chain;
    const { status, values } = this;
    const a = inputStart[s]!;
    const b = inputStart[s + 1]!;
    const first = outputStart[s]!;
    const last = outputStart[s + 1]!;
    this.said[s] = undefined;
    if (this.failures.size > 0) this.failures.delete(s);
    let ready = OK;
    for (let i = a; i < b; i++) if (status[inputs[i]!] !== OK) ready = NEEDS;
    if (ready === NEEDS || first === last) {
      for (let q = first; q < last; q++) if (this.put(q, NaN, NEEDS) && spread) this.tell(q, changed);
      return;
    }
    const step = steps[s]!;
    let result: Value | readonly Value[];
    let failure: Finding | undefined;
    try {
      result = callStep(step, values, inputs, a, b);
    } catch (error) {
      failure = findingOf(step, error);
      result = NaN;
    }
    const outputCount = last - first;
    if (outputCount > 1 && !failure && !(Array.isArray(result) && result.length === outputCount)) {
      failure = fault(step, 'WRONG_OUTPUTS', `gave ${shapeOf(result)}, but ${outputCount} values were expected`);
    }
    for (let q = first; q < last; q++) {
      const value = failure ? NaN : outputCount === 1 ? (result as Value) : (result as readonly Value[])[q - first]!;
      const ok = !failure && hasValue(value);
      if (!ok && !this.failures.has(s)) this.failures.set(s, failure ?? noValue(step, step.outputs[q - first]!.id, value));
      if (this.put(q, ok ? value : NaN, ok ? OK : FAILED) && spread) this.tell(q, changed);
    }
  }

  private tell(q: number, changed: number[] | undefined): void {
    changed?.push(q);
    this.touch(q);
  }

  /** Takes what the chain gives for a quantity; true when what counts has changed by it. */
  private put(q: number, value: Value, status: number): boolean {
    this.own[q] = value;
    this.ownStatus[q] = status;
    if (this.observations.size > 0 && this.observations.has(q)) return false;
    const before = this.values[q];
    if (this.status[q] === status && before !== undefined && same(value, before)) return false;
    this.values[q] = value;
    this.status[q] = status;
    return true;
  }
}

/** Direct calls for the usual numbers of inputs: no list is made for the arguments. */
export function callStep(step: Step, v: readonly Value[], ix: Int32Array, a: number, b: number): Value | readonly Value[] {
  const maker = step as unknown as { run: Run };
  switch (b - a) {
    case 0:
      return maker.run();
    case 1:
      return maker.run(v[ix[a]!]!);
    case 2:
      return maker.run(v[ix[a]!]!, v[ix[a + 1]!]!);
    case 3:
      return maker.run(v[ix[a]!]!, v[ix[a + 1]!]!, v[ix[a + 2]!]!);
    case 4:
      return maker.run(v[ix[a]!]!, v[ix[a + 1]!]!, v[ix[a + 2]!]!, v[ix[a + 3]!]!);
    case 5:
      return maker.run(v[ix[a]!]!, v[ix[a + 1]!]!, v[ix[a + 2]!]!, v[ix[a + 3]!]!, v[ix[a + 4]!]!);
    case 6:
      return maker.run(v[ix[a]!]!, v[ix[a + 1]!]!, v[ix[a + 2]!]!, v[ix[a + 3]!]!, v[ix[a + 4]!]!, v[ix[a + 5]!]!);
    default: {
      const values: Value[] = [];
      for (let i = a; i < b; i++) values.push(v[ix[i]!]!);
      return maker.run(...values);
    }
  }
}

/** True for a finite number and for a vector of them. */
export function hasValue(value: unknown): value is Value {
  if (typeof value === 'number') return value - value === 0;
  if (!(value instanceof Float64Array)) return false;
  for (let i = 0; i < value.length; i++) if (value[i]! - value[i]! !== 0) return false;
  return true;
}

/** Equal to the last bit, element by element; two missing values are equal. */
export function same(a: Value, b: Value): boolean {
  if (a === b) return true;
  if (typeof a === 'number' || typeof b === 'number') return a !== a && b !== b;
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

function findingOf(step: Step, error: unknown): Finding {
  const thrown = error as { code?: unknown; message?: unknown; level?: unknown };
  const code = typeof thrown?.code === 'string' ? thrown.code : 'STEP_FAILED';
  const message = typeof thrown?.message === 'string' ? thrown.message : String(error);
  const level = thrown?.level === 'incident' || thrown?.level === 'note' ? thrown.level : 'query';
  return signed(step, { code, level, message, ...firstOutput(step) });
}

function fault(step: Step, code: string, message: string): Finding {
  return signed(step, { code, level: 'query', message: `${step.title} ${message}`, ...firstOutput(step) });
}

function firstOutput(step: Step): { quantity?: string } {
  const first = step.outputs[0];
  return first ? { quantity: first.id } : {};
}

function noValue(step: Step, quantity: string, value: unknown): Finding {
  const message = `${step.title} gave ${shapeOf(value)} for ${quantity}, but a finite value was expected`;
  return signed(step, { code: 'NOT_FINITE', level: 'query', message, quantity });
}

function shapeOf(value: unknown): string {
  if (typeof value === 'number') return String(value);
  if (value instanceof Float64Array) {
    const at = value.findIndex((x) => !Number.isFinite(x));
    return at < 0 ? `a vector of ${value.length}` : `a vector with ${value[at]} at position ${at}`;
  }
  return Array.isArray(value) ? `a list of ${value.length}` : value === undefined ? 'nothing' : `a ${typeof value}`;
}

/** Adds the step and its place to what it said. */
export function signed(step: Step, finding: Finding): Finding {
  const place = finding.place ?? step.place;
  return { ...finding, step: finding.step ?? step.id, ...(place === undefined ? {} : { place }) };
}
