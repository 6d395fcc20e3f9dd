import { isVector, type Chain } from '../build.js';
import { engineOf, type State } from '../state.js';
import { uses } from '../explain.js';
import { ChainError } from '../errors.js';
import { select, type Selected } from '../names.js';
import { numberAt } from '../probe.js';
import { normalQuantile, shapeNormal } from './normal.js';

/** How an input varies, in its unit. Without numbers: by the standard deviation that its root states. */
export interface VaryInput {
  /** `id` or `id[label]`; a computed quantity may be varied too, and is then drawn instead of computed. */
  readonly id: string;
  /** Default: normal where `sd` is given, else uniform. */
  readonly distribution?: 'normal' | 'uniform' | 'triangular';
  readonly sd?: number;
  /** Ends of a uniform or triangular spread; of a normal one the limits of its middle 95 %. */
  readonly low?: number;
  readonly high?: number;
  /** Mean of a normal, peak of a triangular spread; default: the value in the state, else the middle of low and high. */
  readonly centre?: number;
}

/** An input made ready: turns even draws between 0 and 1 into draws of the quantity, in place. */
export interface DrawnInput {
  readonly name: Selected;
  readonly middle: number;
  readonly shape: (u: Float64Array, count: number) => void;
}

const MIDDLE_95 = 2 * normalQuantile(0.975);

/** @throws ChainError for unknown names and for spreads that say too little or contradict themselves */
export function drawnInputs(
  chain: Chain,
  state: State,
  inputs: readonly VaryInput[] | undefined,
  outputs: readonly Selected[],
): DrawnInput[] {
  const list = inputs ?? statedInputs(chain, state, outputs);
  if (list.length === 0) {
    throw new ChainError(
      'BAD_REQUEST',
      'Nothing varies: no input was named and no root upstream of the outputs states a standard deviation',
    );
  }
  return list.map((input) => drawn(chain, state, input));
}

/** Roots that state a standard deviation, bear upon the outputs, and were not replaced by an observation. */
function statedInputs(chain: Chain, state: State, outputs: readonly Selected[]): VaryInput[] {
  const wanted = new Set(outputs.map(({ id }) => id));
  return chain.roots.flatMap(({ id, sd, value }) => {
    if (!sd || isVector(value) || state.observation(id)) return [];
    return wanted.has(id) || uses(chain, id).some((used) => wanted.has(used)) ? [{ id, sd }] : [];
  });
}

function drawn(chain: Chain, state: State, input: VaryInput): DrawnInput {
  const name = select(chain, input.id);
  const now = numberAt(engineOf(state), name);
  const whole = state.value(name.id);
  if (name.element < 0 && isVector(whole)) state.number(name.name);
  if (name.element >= 0 && !isVector(whole)) throw bad(name, 'has no vector now, so that no element of it can be varied');
  const { low, high } = input;
  const both = low !== undefined && high !== undefined;
  if (both && !(low < high)) throw bad(name, `is to vary from ${low} to ${high}, but a low below a high is expected`);
  const sd = input.sd ?? (both ? undefined : chain.roots[name.index]?.sd);
  const distribution = input.distribution ?? (sd !== undefined ? 'normal' : 'uniform');

  if (distribution === 'normal') {
    const spread = sd ?? (both ? (high - low) / MIDDLE_95 : undefined);
    const mean = input.centre ?? (input.sd === undefined && both ? (low + high) / 2 : Number.isNaN(now) && both ? (low + high) / 2 : now);
    if (spread === undefined || !(spread >= 0))
      throw bad(name, `needs a standard deviation, or low and high; it came with ${spread ?? 'neither'}`);
    if (Number.isNaN(mean)) throw bad(name, 'has no value now; state a centre');
    return { name, middle: mean, shape: (u, count) => shapeNormal(u, count, mean, spread) };
  }
  if (!both) throw bad(name, `needs low and high for a ${distribution} spread`);
  if (distribution === 'uniform') return { name, middle: (low + high) / 2, shape: (u, count) => shapeUniform(u, count, low, high) };
  const peak = input.centre ?? (now >= low && now <= high ? now : (low + high) / 2);
  if (!(peak >= low && peak <= high)) throw bad(name, `has its peak at ${peak}, outside ${low} to ${high}`);
  return { name, middle: (low + high + peak) / 3, shape: (u, count) => shapeTriangle(u, count, low, peak, high) };
}

function shapeUniform(u: Float64Array, count: number, low: number, high: number): void {
  for (let i = 0; i < count; i++) u[i] = low + (high - low) * u[i]!;
}

function shapeTriangle(u: Float64Array, count: number, low: number, peak: number, high: number): void {
  const width = high - low;
  const left = (peak - low) / width;
  for (let i = 0; i < count; i++) {
    const p = u[i]!;
    u[i] = p < left ? low + Math.sqrt(p * width * (peak - low)) : high - Math.sqrt((1 - p) * width * (high - peak));
  }
}

function bad({ name, id }: Selected, what: string): ChainError {
  return new ChainError('BAD_REQUEST', `${name} ${what}`, [id]);
}

/** Outputs by name; a vector stands for each of its elements. */
export function wantedOutputs(chain: Chain, state: State, names: readonly string[]): Selected[] {
  if (names.length === 0) throw new ChainError('BAD_REQUEST', 'No output was named; name at least one');
  return names.flatMap((name) => {
    const selected = select(chain, name);
    const value = state.value(selected.id);
    if (selected.element >= 0 || !isVector(value)) return [selected];
    const { labels } = chain.quantities[selected.index]!;
    return Array.from(value, (_, element) => ({ ...selected, name: `${name}[${labels?.[element] ?? element}]`, element }));
  });
}
