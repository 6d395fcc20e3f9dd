import { isVector, makerOf, requireUnit, type Chain } from './build.js';
import { Engine, FAILED, hasValue, OK, signed } from './engine.js';
import { ChainError } from './errors.js';
import { select, type Selected } from './names.js';
import type { Finding, Observation, Origin, Quantity, Value } from './types.js';

/** Values to put in place of what the chain has, by id or `id[label]`. A bare value counts as entered, as in a what-if. */
export type Overrides = Readonly<Record<string, Observation | Value>>;

/** Whether a quantity has a value; if not, why, and the finding or findings at the root of it. */
export type Status =
  | { readonly ok: true }
  | {
      readonly ok: false;
      /** A sentence: the fault itself, or 'cannot tell: needs …'. */
      readonly reason: string;
      /** Quantities without a value at the root of it. */
      readonly needs: readonly string[];
      readonly cause: Finding;
      readonly causes: readonly Finding[];
    };

/** Every value of a chain at one moment. Does not change; a session gives a new one. */
export interface State {
  readonly chain: Chain;
  /** By id, or `id[label]` for one element of a vector; NaN where there is no value. */
  value(id: string): Value;
  /** The same where one number is needed. @throws ChainError NOT_A_NUMBER for a whole vector */
  number(id: string): number;
  /** What the chain itself gives, also where an observation stands in its place. */
  computed(id: string): Value;
  origin(id: string): Origin;
  observation(id: string): Observation | undefined;
  status(id: string): Status;
  /** Half-width of the 95 % interval that the model of this quantity states, in its unit; undefined where none is stated. */
  uncertainty(id: string): number | undefined;
  /** What the steps say, in the order of the chain; each fault once, at its root. */
  findings(): readonly Finding[];
}

/**
 * Computes a chain from its roots.
 * @param overrides - observations and what-if values; steps behind them use these
 * @throws ChainError UNKNOWN_QUANTITY, UNKNOWN_ELEMENT, UNIT_CLASH or BAD_VALUE; a failing step does not throw, see `status`
 */
export function evaluate(chain: Chain, overrides?: Overrides): State {
  const engine = new Engine(chain);
  if (!overrides) {
    engine.runAll();
    return new Reading(engine);
  }
  const names = Object.keys(overrides).map((name) => select(chain, name));
  const put = (name: Selected) => engine.override(name.index, observationFor(engine, name, overrides[name.name]!, 'entered'));
  names.filter((name) => name.element < 0).forEach(put);
  engine.runAll();
  names.filter((name) => name.element >= 0).forEach(put);
  engine.settle();
  return new Reading(engine);
}

/** A state upon an engine. */
export class Reading implements State {
  constructor(protected readonly engine: Engine) {}

  get chain(): Chain {
    return this.engine.chain;
  }

  value(id: string): Value {
    const index = this.chain.index.get(id);
    return index === undefined ? pick(this.engine.values, select(this.chain, id)) : this.engine.values[index]!;
  }

  number(id: string): number {
    const value = this.value(id);
    if (!isVector(value)) return value;
    const labels = this.chain.quantities[this.chain.index.get(id)!]!.labels;
    throw new ChainError('NOT_A_NUMBER', `${id} has ${value.length} elements; name one, as in ${id}[${labels?.[0] ?? 0}]`, [id]);
  }

  computed(id: string): Value {
    return pick(this.engine.own, select(this.chain, id));
  }

  origin(id: string): Origin {
    const { index } = select(this.chain, id);
    const observation = this.engine.observations.get(index);
    return observation ? (observation.origin ?? 'measured') : (this.chain.roots[index]?.origin ?? 'computed');
  }

  observation(id: string): Observation | undefined {
    return this.engine.observations.get(select(this.chain, id).index);
  }

  status(id: string): Status {
    const { index } = select(this.chain, id);
    return statusOf(this.engine, index);
  }

  uncertainty(id: string): number | undefined {
    const { index } = select(this.chain, id);
    const maker = makerOf(this.chain, index);
    if (maker < 0 || this.engine.observations.has(index)) return undefined;
    const step = this.chain.steps[maker]!;
    const around = surroundings(this.engine, maker);
    const width = around && step.uncertainty?.(around.inputs, around.outputs)[index - this.chain.outputStart[maker]!];
    return width !== undefined && width > 0 ? width : undefined;
  }

  findings(): readonly Finding[] {
    const { engine } = this;
    const list: Finding[] = [];
    for (let q = 0; q < this.chain.roots.length; q++) if (engine.status[q] !== OK) list.push(notGiven(this.chain, q));
    for (let s = 0; s < this.chain.steps.length; s++) {
      for (const finding of (engine.said[s] ??= stepFindings(engine, s))) list.push(finding);
    }
    return list;
  }
}

/** The engine under a state, for the verbs that work on a copy of it. */
export function engineOf(state: State): Engine {
  return (state as unknown as { engine: Engine }).engine;
}

/**
 * The observation that puts a given value in place of a quantity, or of one element of it.
 * @throws ChainError UNIT_CLASH or BAD_VALUE
 */
export function observationFor(engine: Engine, name: Selected, given: Observation | Value, origin: 'measured' | 'entered'): Observation {
  const observation: Observation = typeof given === 'number' || given instanceof Float64Array ? { value: given, origin } : given;
  const quantity = engine.chain.quantities[name.index]!;
  if (observation.unit !== undefined) requireUnit(engine.chain, quantity.id, observation.unit);
  const refuse = (what: string, expected: string) =>
    new ChainError('BAD_VALUE', `${name.name} is given ${what}, but ${expected} is expected`, [name.name]);
  if (!hasValue(observation.value)) throw refuse(describe(observation.value), `a finite value in ${quantity.unit}`);
  if (name.element < 0) {
    const came = isVector(observation.value) ? `${observation.value.length} numbers` : 'one number';
    const expected = expectedShape(quantity, engine.own[name.index]);
    if (expected !== undefined && expected !== came && !(expected === 'a vector' && came !== 'one number')) throw refuse(came, expected);
    return observation;
  }
  const whole = engine.values[name.index]!;
  if (isVector(observation.value)) throw refuse('a vector', 'one number');
  if (!isVector(whole)) throw refuse('one element', 'a value to put it in; the vector has none now');
  const changed = whole.slice();
  if (name.element >= changed.length)
    throw new ChainError('UNKNOWN_ELEMENT', `${name.id} has ${changed.length} elements, not ${name.element + 1}`, [name.id]);
  changed[name.element] = observation.value;
  return { ...observation, value: changed };
}

/** How many numbers a quantity takes; undefined while nothing tells. */
function expectedShape(quantity: Quantity, own: Value | undefined): string | undefined {
  const size = quantity.labels?.length ?? quantity.axis?.length;
  if (size !== undefined) return `${size} numbers`;
  if (own === undefined || Number.isNaN(own)) return undefined;
  return isVector(own) ? 'a vector' : 'one number';
}

function describe(value: unknown): string {
  return value instanceof Float64Array ? 'a vector with a missing element' : String(value);
}

function pick(values: readonly Value[], name: Selected): Value {
  const value = values[name.index]!;
  return name.element < 0 ? value : isVector(value) ? (value[name.element] ?? NaN) : NaN;
}

/** Inputs of a step and what counts for its outputs; undefined unless all have a value. */
function surroundings(engine: Engine, s: number): { inputs: Value[]; outputs: Value[] } | undefined {
  const { inputs, inputStart, outputStart } = engine.chain;
  const given: Value[] = [];
  const outputs: Value[] = [];
  for (let i = inputStart[s]!; i < inputStart[s + 1]!; i++) {
    if (engine.status[inputs[i]!] !== OK) return undefined;
    given.push(engine.values[inputs[i]!]!);
  }
  for (let q = outputStart[s]!; q < outputStart[s + 1]!; q++) {
    if (engine.status[q] !== OK) return undefined;
    outputs.push(engine.values[q]!);
  }
  return { inputs: given, outputs };
}

const silence: readonly Finding[] = [];

function stepFindings(engine: Engine, s: number): readonly Finding[] {
  const step = engine.chain.steps[s]!;
  const failure = failureOf(engine, s);
  if (failure) return [failure];
  const around = step.findings && surroundings(engine, s);
  if (!step.findings || !around) return silence;
  try {
    return step.findings(around.inputs, around.outputs).map((finding) => signed(step, finding));
  } catch (error) {
    return [
      signed(step, {
        code: 'FINDINGS_FAILED',
        level: 'query',
        message: `${step.title} cannot judge its values: ${(error as Error).message}`,
      }),
    ];
  }
}

/** Why a step gave no value; silent where observations stand in place of all that is missing. */
function failureOf(engine: Engine, s: number): Finding | undefined {
  const failure = engine.failures.get(s);
  if (!failure) return undefined;
  const { outputStart } = engine.chain;
  for (let q = outputStart[s]!; q < outputStart[s + 1]!; q++) if (engine.status[q] === FAILED) return failure;
  return undefined;
}

function notGiven(chain: Chain, q: number): Finding {
  const root = chain.roots[q]!;
  const place = root.place === undefined ? {} : { place: root.place };
  return { code: 'NOT_GIVEN', level: 'note', message: `${root.meaning} is not given`, quantity: root.id, ...place };
}

/** Follows missing values upstream to where they begin. */
export function statusOf(engine: Engine, index: number): Status {
  if (engine.status[index] === OK) return { ok: true };
  const { chain } = engine;
  const seen = new Set([index]);
  const needs: string[] = [];
  const causes = new Set<Finding>();
  for (const q of seen) {
    const maker = makerOf(chain, q);
    if (engine.status[q] === FAILED) {
      needs.push(chain.quantities[q]!.id);
      causes.add(maker < 0 ? notGiven(chain, q) : engine.failures.get(maker)!);
    } else {
      for (let i = chain.inputStart[maker]!; i < chain.inputStart[maker + 1]!; i++) {
        const input = chain.inputs[i]!;
        if (engine.status[input] !== OK) seen.add(input);
      }
    }
  }
  const list = [...causes];
  const cause = list[0]!;
  const reason = engine.status[index] === FAILED ? cause.message : `cannot tell: needs ${needs.join(', ')}`;
  return { ok: false, reason, needs, cause, causes: list };
}
