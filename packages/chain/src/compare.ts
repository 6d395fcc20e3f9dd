import { isVector } from './build.js';
import type { State } from './state.js';
import type { Quantity, Value } from './types.js';

/** A quantity that is not the same in two states. */
export interface Difference {
  readonly id: string;
  readonly quantity: Quantity;
  readonly before: Value;
  readonly after: Value;
  /**
   * Change over the value before, signed; for a vector of its most changed element, over the largest element before.
   * Infinite when it was 0 before, when a value appeared or was lost, or when the length changed.
   */
  readonly relative: number;
  /** Label or position of the most changed element of a vector. */
  readonly element?: string;
  readonly kind: 'changed' | 'lost' | 'gained';
}

/** What differs between two states, of the same chain or of two versions of it. */
export interface Comparison {
  /** Largest relative change first. */
  readonly differences: readonly Difference[];
  /** Ids that only one of the two has. */
  readonly onlyBefore: readonly string[];
  readonly onlyAfter: readonly string[];
  /** Ids held in different units; their values are not compared. */
  readonly unitChanged: readonly string[];
}

/**
 * @param tolerance - relative changes up to this are rounding, not difference; default 1e-12
 */
export function compare(before: State, after: State, tolerance = 1e-12): Comparison {
  const differences: Difference[] = [];
  const onlyBefore: string[] = [];
  const unitChanged: string[] = [];
  for (const old of before.chain.quantities) {
    const index = after.chain.index.get(old.id);
    if (index === undefined) {
      onlyBefore.push(old.id);
      continue;
    }
    const quantity = after.chain.quantities[index]!;
    if (quantity.unit !== old.unit) unitChanged.push(old.id);
    else {
      const difference = differenceOf(quantity, before.value(old.id), after.value(old.id), tolerance);
      if (difference) differences.push(difference);
    }
  }
  const onlyAfter = after.chain.quantities.filter(({ id }) => !before.chain.index.has(id)).map(({ id }) => id);
  differences.sort((a, b) => Math.abs(b.relative) - Math.abs(a.relative) || 0);
  return { differences, onlyBefore, onlyAfter, unitChanged };
}

function differenceOf(quantity: Quantity, before: Value, after: Value, tolerance: number): Difference | undefined {
  const { id } = quantity;
  const [had, has] = [!Number.isNaN(before), !Number.isNaN(after)];
  if (!had && !has) return undefined;
  const whole = { id, quantity, before, after };
  if (!had) return { ...whole, relative: Infinity, kind: 'gained' };
  if (!has) return { ...whole, relative: -Infinity, kind: 'lost' };
  if (!isVector(before) && !isVector(after)) {
    const relative = relativeChange(after - before, Math.abs(before));
    return Math.abs(relative) > tolerance ? { ...whole, relative, kind: 'changed' } : undefined;
  }
  if (!isVector(before) || !isVector(after) || before.length !== after.length) return { ...whole, relative: Infinity, kind: 'changed' };
  let largest = 0;
  let most = 0;
  before.forEach((value, i) => {
    largest = Math.max(largest, Math.abs(value));
    if (Math.abs(after[i]! - value) > Math.abs(after[most]! - before[most]!)) most = i;
  });
  const relative = before.length === 0 ? 0 : relativeChange(after[most]! - before[most]!, largest);
  if (!(Math.abs(relative) > tolerance)) return undefined;
  return { ...whole, relative, element: quantity.labels?.[most] ?? String(quantity.axis?.[most] ?? most), kind: 'changed' };
}

function relativeChange(change: number, scale: number): number {
  return change === 0 ? 0 : change / scale;
}
