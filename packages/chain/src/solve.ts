import { isVector, type Chain } from './build.js';
import { compare, type Difference } from './compare.js';
import { FAILED, OK } from './engine.js';
import { ChainError } from './errors.js';
import { uses } from './explain.js';
import { select, type Selected } from './names.js';
import { inWords, numberAt, pokeNumber } from './probe.js';
import { searchZero } from './search.js';
import { engineOf, observationFor, Reading, statusOf, type State } from './state.js';
import { brokenWindows, type BrokenWindow } from './windows.js';

/** What must this knob be for that result? Ids may name an element: `id[label]`. Values in the units of the quantities. */
export interface SolveRequest {
  readonly target: string;
  readonly value: number;
  readonly knob: string;
  /** Where to look; default: the window of the knob. */
  readonly low?: number;
  readonly high?: number;
  /** How finely the range is scanned for zeros, default 33. */
  readonly points?: number;
  /** How near counts as reached, relative to the larger of the value asked for and the span met; default 1e-9. */
  readonly tolerance?: number;
}

/** A quantity, other than target and knob, that changes with the knob. */
export interface SideEffect extends Difference {
  /** Its window, where the change breaks it. */
  readonly breaks?: BrokenWindow;
  /** It was outside its window and no longer is. */
  readonly mends?: true;
}

interface Asked {
  readonly target: string;
  readonly value: number;
  readonly knob: string;
  readonly low: number;
  readonly high: number;
  /** Value of the knob and the target now; NaN for none. */
  readonly knobNow: number;
  readonly targetNow: number;
  /** How often the chain was asked. */
  readonly iterations: number;
}

export interface Solved extends Asked {
  readonly found: true;
  readonly knobValue: number;
  readonly reached: number;
  /** Most changed first. */
  readonly sideEffects: readonly SideEffect[];
  /** Windows that hold now and would not with the knob set so: also those of target and knob. */
  readonly broken: readonly BrokenWindow[];
  /** The state with the knob set so. */
  readonly state: State;
}

export interface Unsolved extends Asked {
  readonly found: false;
  readonly code: 'UNREACHABLE';
  /** A sentence. */
  readonly reason: string;
  /** How near it comes, and where; undefined when the target has no value anywhere in the range. */
  readonly nearest?: { readonly knobValue: number; readonly reached: number };
}

export type Solution = Solved | Unsolved;

/**
 * Finds the value of a knob, the nearest to the present one, at which a target takes the value asked for.
 * @throws ChainError UNKNOWN_QUANTITY, UNKNOWN_ELEMENT, NO_RANGE (the knob has no window with two ends and none was stated),
 * NOT_A_NUMBER (a vector without an element named), BAD_REQUEST
 */
export function solve(chain: Chain, state: State, request: SolveRequest): Solution {
  const engine = engineOf(state).clone();
  const target = scalar(chain, state, request.target);
  const knob = scalar(chain, state, request.knob);
  const { low, high } = rangeOf(chain, knob, request);
  const { value } = request;
  if (!Number.isFinite(value))
    throw new ChainError('BAD_REQUEST', `${target.name} is asked to be ${value}, but a finite value is expected`);
  const [knobNow, targetNow] = [numberAt(engine, knob), numberAt(engine, target)];
  const asked = { target: target.name, value, knob: knob.name, low, high, knobNow, targetNow };
  const refused = (reason: string, iterations = 0, at?: { x: number; f: number }): Unsolved => ({
    ...asked,
    found: false,
    code: 'UNREACHABLE',
    reason,
    iterations,
    ...(at ? { nearest: { knobValue: at.x, reached: at.f + value } } : {}),
  });

  const present = Number.isNaN(targetNow) ? undefined : { x: knobNow, f: targetNow - value };
  if (knob.index !== target.index) {
    if (!uses(chain, knob.id).includes(target.id)) return refused(`${target.name} does not depend on ${knob.name}`, 0, present);
    if (engine.observations.has(target.index)) {
      return refused(`${target.name} is held by an observation at ${inWords(chain, target, targetNow)}; release it first`, 0, present);
    }
  }
  let fault = '';
  const ask = (x: number): number => {
    pokeNumber(engine, knob, x);
    engine.settle();
    const reached = numberAt(engine, target);
    if (fault === '' && engine.status[target.index] !== OK) fault = sentenceFor(engine, target.index);
    return reached - value;
  };
  const start = Number.isNaN(knobNow) ? (low + high) / 2 : knobNow;
  const near = (request.tolerance ?? 1e-9) * Math.max(Math.abs(value), Math.abs(targetNow - value) || 0, Number.MIN_VALUE);
  const { found, nearest, spread, iterations } = searchZero(ask, start, low, high, request.points ?? 33, near);
  const span = `for ${knob.name} from ${inWords(chain, knob, low)} to ${inWords(chain, knob, high)}`;
  if (!nearest) return refused(`${target.name} has no value ${span}: ${fault}`, iterations);
  if (!found && !(Math.abs(nearest.f) <= (request.tolerance ?? 1e-9) * spread)) {
    const flat = spread === 0 ? `does not change ${span}; it stays at` : `comes no nearer to ${inWords(chain, target, value)} than`;
    const where = spread === 0 ? '' : ` ${span}, at ${inWords(chain, knob, nearest.x)}`;
    return refused(`${target.name} ${flat} ${inWords(chain, target, nearest.f + value)}${where}`, iterations, nearest);
  }

  const after = engineOf(state).clone();
  after.override(knob.index, observationFor(after, knob, nearest.x, 'entered'));
  after.settle();
  const then = new Reading(after);
  return {
    ...asked,
    found: true,
    knobValue: nearest.x,
    reached: numberAt(after, target),
    iterations,
    ...consequences(state, then, [target.id, knob.id]),
    state: then,
  };
}

/** What else changes from one state to another, and which windows it breaks. */
export function consequences(
  before: State,
  after: State,
  except: readonly string[],
): { readonly sideEffects: readonly SideEffect[]; readonly broken: readonly BrokenWindow[] } {
  const brokenBefore = new Set(brokenWindows(before).map(({ id }) => id));
  const brokenAfter = new Map(brokenWindows(after).map((broken) => [broken.id, broken]));
  const sideEffects = compare(before, after)
    .differences.filter(({ id }) => !except.includes(id))
    .map((difference): SideEffect => {
      const breaks = brokenBefore.has(difference.id) ? undefined : brokenAfter.get(difference.id);
      if (breaks) return { ...difference, breaks };
      const mends = brokenBefore.has(difference.id) && !brokenAfter.has(difference.id) && difference.kind !== 'lost';
      return mends ? { ...difference, mends } : difference;
    });
  return { sideEffects, broken: [...brokenAfter.values()].filter(({ id }) => !brokenBefore.has(id)) };
}

function sentenceFor(engine: ReturnType<typeof engineOf>, index: number): string {
  const status = statusOf(engine, index);
  return status.ok ? '' : engine.status[index] === FAILED ? status.reason : status.cause.message;
}

/** A name that stands for one number. */
export function scalar(chain: Chain, state: State, name: string): Selected {
  const selected = select(chain, name);
  if (selected.element < 0 && isVector(state.value(name))) state.number(name);
  return selected;
}

/** The range stated, or the window of the knob. */
export function rangeOf(
  chain: Chain,
  knob: Selected,
  stated: { readonly low?: number; readonly high?: number },
): { low: number; high: number } {
  const { window } = chain.quantities[knob.index]!;
  const low = stated.low ?? window?.low;
  const high = stated.high ?? window?.high;
  if (low === undefined || high === undefined) {
    throw new ChainError('NO_RANGE', `${knob.name} has no window with two ends; state low and high`, [knob.id]);
  }
  if (!(low < high) || !Number.isFinite(high - low)) {
    throw new ChainError('BAD_REQUEST', `The range of ${knob.name} is ${low} to ${high}, but a low below a high is expected`, [knob.id]);
  }
  return { low, high };
}
