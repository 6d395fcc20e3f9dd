import type { Chain } from './build.js';
import { engineOf, type State } from './state.js';
import { select } from './names.js';
import { inWords, numberAt } from './probe.js';
import { rangeOf, scalar, solve, type Solved, type Unsolved } from './solve.js';
import { brokenWindows, scaleOf, type BrokenWindow } from './windows.js';

/** A knob to try, with the range to try it in; without a range its window. */
export interface Knob {
  readonly id: string;
  readonly low?: number;
  readonly high?: number;
}

/**
 * One way to act.
 * set: turn the knob; nothing: leave all as it is; unreachable: this knob alone cannot do it; cannot-tell: a value is missing.
 */
export interface Remedy {
  readonly kind: 'set' | 'nothing' | 'unreachable' | 'cannot-tell';
  readonly knob?: string;
  /** One sentence a person can act on. */
  readonly sentence: string;
  /** Move of the knob over the width of its window or range, 0 to 1; 0 for doing nothing. */
  readonly move: number;
  /** All windows that are broken afterwards; for 'nothing', now. */
  readonly broken: readonly BrokenWindow[];
  readonly solution?: Solved | Unsolved;
}

/**
 * Ways to bring a quantity to a value, least disturbing first: fewest windows broken afterwards, then the smallest move of
 * the knob in its window. Doing nothing is always among them; knobs that cannot do it, or of which nothing can be told, come last.
 *
 * @param value - default: the aim of the target's window, else the end it has crossed, else where it is
 * @throws ChainError for unknown names
 */
export function remedies(
  chain: Chain,
  state: State,
  target: string,
  value: number | undefined,
  knobs: readonly (string | Knob)[],
): readonly Remedy[] {
  const goal = scalar(chain, state, target);
  const now = numberAt(engineOf(state), goal);
  const wanted = value ?? aimOf(chain, goal.index, now);
  const words = (x: number) => inWords(chain, goal, x);
  const nothing: Remedy = {
    kind: 'nothing',
    sentence: Number.isNaN(now) ? `Do nothing: ${target} has no value` : `Do nothing: ${target} stays at ${words(now)}`,
    move: 0,
    broken: brokenWindows(state),
  };
  const ways = knobs.map((given): Remedy => {
    const knob = typeof given === 'string' ? { id: given } : given;
    const name = scalar(chain, state, knob.id);
    const knobNow = numberAt(engineOf(state), name);
    const blank = { knob: knob.id, move: 0, broken: [] };
    if (wanted === undefined) return { ...blank, kind: 'cannot-tell', sentence: cannotTell(state, target) };
    if (Number.isNaN(knobNow)) return { ...blank, kind: 'cannot-tell', sentence: cannotTell(state, knob.id) };
    const window = chain.quantities[name.index]!.window;
    if ((knob.low ?? window?.low) === undefined || (knob.high ?? window?.high) === undefined) {
      return { ...blank, kind: 'cannot-tell', sentence: `Cannot tell what ${knob.id} could do: it has no window with two ends` };
    }
    const { low, high } = rangeOf(chain, name, knob);
    const solution = solve(chain, state, { target, value: wanted, knob: knob.id, low, high });
    if (!solution.found) {
      const kind = solution.nearest ? 'unreachable' : 'cannot-tell';
      return { ...blank, kind, sentence: `${kind === 'unreachable' ? 'Out of reach' : 'Cannot tell'}: ${solution.reason}`, solution };
    }
    const move = Math.abs(solution.knobValue - knobNow) / scaleOf({ low, high }, knobNow);
    const setting = `${inWords(chain, name, solution.knobValue)} (now ${inWords(chain, name, knobNow)})`;
    const sentence = `Set ${knob.id} to ${setting}: ${target} comes to ${words(solution.reached)}`;
    return { kind: 'set', knob: knob.id, sentence, move, broken: brokenWindows(solution.state), solution };
  });
  const rank = (remedy: Remedy) => (remedy.kind === 'unreachable' ? 1 : remedy.kind === 'cannot-tell' ? 2 : 0);
  return [nothing, ...ways].sort((a, b) => rank(a) - rank(b) || a.broken.length - b.broken.length || a.move - b.move);
}

function aimOf(chain: Chain, index: number, now: number): number | undefined {
  const window = chain.quantities[index]!.window;
  if (window?.aim !== undefined) return window.aim;
  if (Number.isNaN(now)) return undefined;
  return Math.min(window?.high ?? Infinity, Math.max(window?.low ?? -Infinity, now));
}

function cannotTell(state: State, id: string): string {
  const status = state.status(select(state.chain, id).id);
  return status.ok ? `Cannot tell: ${id} has no value` : `Cannot tell: ${id} has no value; ${status.reason}`;
}
