import { isVector, type Chain } from './build.js';
import type { State } from './state.js';
import type { Value, Window } from './types.js';

/** A quantity outside its window. */
export interface BrokenWindow {
  readonly id: string;
  readonly value: Value;
  readonly window: Window;
  readonly side: 'low' | 'high';
  /** How far outside, in the unit of the quantity; for a vector its worst element. */
  readonly by: number;
}

/**
 * How far inside its window a value lies: the distance to the nearer end, negative outside, in the unit of the value.
 * A vector counts as its worst element. Infinity for a window without ends, NaN without a value.
 */
export function marginOf(value: Value, window: Window): { readonly margin: number; readonly side: 'low' | 'high' } {
  if (!isVector(value)) return marginOfNumber(value, window);
  let worst: { margin: number; side: 'low' | 'high' } = { margin: Infinity, side: 'low' };
  for (const element of value) {
    const one = marginOfNumber(element, window);
    if (!(one.margin >= worst.margin)) worst = one;
  }
  return worst;
}

function marginOfNumber(value: number, window: Window): { margin: number; side: 'low' | 'high' } {
  const below = value - (window.low ?? -Infinity);
  const above = (window.high ?? Infinity) - value;
  return below <= above ? { margin: below, side: 'low' } : { margin: above, side: 'high' };
}

/** The size by which moves and margins in a window are judged: its width, else its end, else the value; never 0. */
export function scaleOf(window: Window | undefined, value: number): number {
  const { low, high } = window ?? {};
  if (low !== undefined && high !== undefined && high > low) return high - low;
  return Math.abs(low ?? high ?? 0) || Math.abs(value) || 1;
}

/** Every quantity that lies outside its window, in the order of the chain. Quantities without a value are not judged. */
export function brokenWindows(state: State): readonly BrokenWindow[] {
  const broken: BrokenWindow[] = [];
  for (const { id, window } of windowedQuantities(state.chain)) {
    const value = state.value(id);
    const { margin, side } = marginOf(value, window);
    if (margin < 0) broken.push({ id, value, window, side, by: -margin });
  }
  return broken;
}

const windowed = new WeakMap<Chain, readonly { readonly id: string; readonly index: number; readonly window: Window }[]>();

/** The quantities that have a window with at least one end. */
export function windowedQuantities(chain: Chain): readonly { readonly id: string; readonly index: number; readonly window: Window }[] {
  let list = windowed.get(chain);
  if (!list) {
    list = chain.quantities.flatMap(({ id, window }, index) =>
      window && (window.low !== undefined || window.high !== undefined) ? [{ id, index, window }] : [],
    );
    windowed.set(chain, list);
  }
  return list;
}
