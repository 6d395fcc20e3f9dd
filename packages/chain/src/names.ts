import { ChainError } from './errors.js';
import type { Quantity } from './types.js';

/** The known name that is nearest to a mistyped one, or undefined when none is near. */
export function nearestName(wanted: string, known: Iterable<string>): string | undefined {
  let best: string | undefined;
  let least = Math.max(2, Math.floor(wanted.length / 3)) + 1;
  for (const name of known) {
    const distance = editDistance(wanted, name, least);
    if (distance < least) {
      least = distance;
      best = name;
    }
  }
  return best;
}

/** Insertions, deletions and replacements that lead from one word to the other (Levenshtein); `limit` or more counts as `limit`. */
function editDistance(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) >= limit) return limit;
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const replaced = row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(replaced, row[j]! + 1, next[j - 1]! + 1));
    }
    row = next;
  }
  return Math.min(limit, row[b.length]!);
}

/** Which number of a chain is meant: a quantity by its index and, for `id[label]`, one element of its vector (else -1). */
export interface Selected {
  readonly name: string;
  readonly id: string;
  readonly index: number;
  readonly element: number;
}

interface Named {
  readonly quantities: readonly Quantity[];
  readonly index: ReadonlyMap<string, number>;
}

/**
 * Reads `id` or `id[label]`; without a label of that name, `id[3]` is the fourth element.
 * @throws ChainError UNKNOWN_QUANTITY or UNKNOWN_ELEMENT, naming the nearest that exists
 */
export function select(chain: Named, name: string): Selected {
  const whole = chain.index.get(name);
  if (whole !== undefined) return { name, id: name, index: whole, element: -1 };
  const bracket = name.endsWith(']') ? name.indexOf('[') : -1;
  const id = bracket > 0 ? name.slice(0, bracket) : name;
  const index = chain.index.get(id);
  if (index === undefined) throw unknownQuantity(chain, id);
  const label = name.slice(bracket + 1, -1);
  const labels = chain.quantities[index]!.labels ?? [];
  const element = labels.includes(label) ? labels.indexOf(label) : /^\d+$/.test(label) ? Number(label) : -1;
  if (element < 0) {
    const near = nearestName(label, labels);
    const expected = near ? `did you mean '${near}'?` : labels.length ? `it has ${labels.join(', ')}` : 'it has no labelled elements';
    throw new ChainError('UNKNOWN_ELEMENT', `${id} has no element '${label}'; ${expected}`, [id]);
  }
  return { name, id, index, element };
}

/** The error for a name that no quantity of the chain bears. */
export function unknownQuantity(chain: Named, id: string): ChainError {
  const near = nearestName(id, chain.index.keys());
  return new ChainError('UNKNOWN_QUANTITY', `No quantity '${id}' in this chain${near ? `; did you mean '${near}'?` : ''}`, [id]);
}
