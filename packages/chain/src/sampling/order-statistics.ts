/**
 * The values that would stand at given places if the list were sorted, without sorting it: values are counted into equal
 * bins, and only bins that hold a place asked for are looked into, again by bins where they are large. Two passes for
 * well-spread values; a far outlier costs passes over what shares a bin.
 *
 * @param values - finite; none is moved
 * @param least - the smallest of them
 * @param most - the largest
 * @param ranks - places from 0, ascending, each below the number of values
 */
export function orderStatistics(values: Float64Array, least: number, most: number, ranks: readonly number[]): Float64Array {
  const found = new Float64Array(ranks.length);
  look(values, least, most, { ranks, from: 0, to: ranks.length, before: 0, found });
  return found;
}

/** Below this many, sorting is quicker. */
const FEW = 512;

interface Wanted {
  readonly ranks: readonly number[];
  /** Which of the ranks lie among these values. */
  readonly from: number;
  readonly to: number;
  /** How many values of the whole list lie below these. */
  readonly before: number;
  readonly found: Float64Array;
}

function look(values: Float64Array, least: number, most: number, wanted: Wanted): void {
  const { before, found, from, ranks, to } = wanted;
  const bins = values.length > 16_384 ? 4096 : 512;
  const scale = bins / (most - least);
  if (least === most) {
    found.fill(least, from, to);
    return;
  }
  if (values.length <= FEW || !(scale > 0 && scale < Infinity)) {
    const sorted = values.slice().sort();
    for (let r = from; r < to; r++) found[r] = sorted[ranks[r]! - before]!;
    return;
  }
  const sizes = new Int32Array(bins + 1);
  count(values, least, scale, sizes);
  sizes[bins - 1]! += sizes[bins]!; // the largest value itself falls just beyond the last bin
  const start = new Int32Array(bins + 1).fill(-1);
  const parts: (Wanted & { readonly start: number; readonly size: number })[] = [];
  let below = before;
  let gathered = 0;
  let r = from;
  for (let bin = 0; bin < bins && r < to; bin++) {
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
  gather(values, least, scale, start, chosen);
  for (const part of parts) {
    const some = chosen.subarray(part.start, part.start + part.size);
    let low = some[0]!;
    let high = low;
    for (let i = 1; i < some.length; i++) {
      low = Math.min(low, some[i]!);
      high = Math.max(high, some[i]!);
    }
    look(some, low, high, part);
  }
}

function count(values: Float64Array, least: number, scale: number, sizes: Int32Array): void {
  for (let i = 0; i < values.length; i++) sizes[((values[i]! - least) * scale) | 0]!++;
}

/** Copies the values of the bins that have a start, side by side. */
function gather(values: Float64Array, least: number, scale: number, start: Int32Array, chosen: Float64Array): void {
  const last = start.length - 2;
  let top = start[last]!;
  const wantsTop = top >= 0;
  for (let i = 0; i < values.length; i++) {
    const x = values[i]!;
    const bin = ((x - least) * scale) | 0;
    if (bin >= last) {
      if (wantsTop) chosen[top++] = x;
      continue;
    }
    const at = start[bin]!;
    if (at < 0) continue;
    chosen[at] = x;
    start[bin] = at + 1;
  }
}

/** Place of a percentile by linear interpolation between neighbours (definition 7 of Hyndman and Fan, 1996). */
export function placeOf(p: number, count: number): { readonly below: number; readonly part: number } {
  const place = p * (count - 1);
  const below = Math.min(Math.floor(place), Math.max(0, count - 2));
  return { below, part: place - below };
}
