/** Up to this many, sorting is quicker. */
const FEW = 512;
const BINS = 512;

/**
 * The values that would stand at given places if the list were sorted, without sorting a long one: values are counted into
 * equal bins, and only bins that hold a place asked for are looked into, again by bins where they are large.
 *
 * @param values - finite; none is moved
 * @param ranks - places from 0, ascending, each below the number of values
 */
export function orderStatistics(values: Float64Array, ranks: readonly number[]): Float64Array {
  const found = new Float64Array(ranks.length);
  look(values, { ranks, from: 0, to: ranks.length, before: 0, found });
  return found;
}

interface Wanted {
  readonly ranks: readonly number[];
  /** Which of the ranks lie among these values. */
  readonly from: number;
  readonly to: number;
  /** How many values of the whole list lie below these. */
  readonly before: number;
  readonly found: Float64Array;
}

function look(values: Float64Array, wanted: Wanted): void {
  const { before, found, from, ranks, to } = wanted;
  const bySorting = () => {
    const sorted = values.slice().sort();
    for (let r = from; r < to; r++) found[r] = sorted[ranks[r]! - before]!;
  };
  if (values.length <= FEW) return bySorting();
  let least = values[0]!;
  let most = least;
  for (let i = 1; i < values.length; i++) {
    const x = values[i]!;
    if (x < least) least = x;
    if (x > most) most = x;
  }
  if (least === most) {
    found.fill(least, from, to);
    return;
  }
  const scale = BINS / (most - least);
  if (!(scale > 0 && scale < Infinity)) return bySorting();
  // The largest value itself falls just beyond the last bin, which takes it in.
  const binOf = (x: number) => Math.min(BINS - 1, ((x - least) * scale) | 0);
  const sizes = new Int32Array(BINS);
  for (let i = 0; i < values.length; i++) sizes[binOf(values[i]!)]!++;
  const start = new Int32Array(BINS).fill(-1);
  const parts: (Wanted & { readonly start: number; readonly size: number })[] = [];
  let below = before;
  let gathered = 0;
  let r = from;
  for (let bin = 0; bin < BINS && r < to; bin++) {
    const size = sizes[bin]!;
    if (ranks[r]! < below + size) {
      const first = r;
      while (r < to && ranks[r]! < below + size) r++;
      parts.push({ ...wanted, from: first, to: r, before: below, start: gathered, size });
      start[bin] = gathered;
      gathered += size;
    }
    below += size;
  }
  const chosen = new Float64Array(gathered);
  for (let i = 0; i < values.length; i++) {
    const bin = binOf(values[i]!);
    const at = start[bin]!;
    if (at < 0) continue;
    chosen[at] = values[i]!;
    start[bin] = at + 1;
  }
  for (const part of parts) look(chosen.subarray(part.start, part.start + part.size), part);
}

/** Place of a percentile by linear interpolation between neighbours (definition 7 of Hyndman and Fan, 1996). */
export function placeOf(p: number, count: number): { readonly below: number; readonly part: number } {
  const place = p * (count - 1);
  const below = Math.min(Math.floor(place), Math.max(0, count - 2));
  return { below, part: place - below };
}
