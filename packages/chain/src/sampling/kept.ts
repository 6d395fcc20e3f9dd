import type { Window } from '../types.js';
import { orderStatistics } from './order-statistics.js';
import { Scratch } from './scratch.js';

/** Equal bins into which samples are counted as they come; the first and the last also take what lies beyond. */
const BINS = 2048;
/** Places so far from the bins do not fit into a whole number of 32 bits any more. */
const FAR = 2 ** 30;
/** After so many samples it is clear enough near which values the percentiles will lie; only samples there are kept on. */
const LOOK = 8192;
/** So many standard deviations a percentile of the first samples may miss that of all. */
const SURE = 5;

interface BlockSums {
  readonly end: number;
  readonly count: number;
  readonly sum: number;
  readonly squares: number;
}

/** The bin of a sample that differs by `d` from the middle; of one without a value the first. Never falls as `d` rises. */
function binOf(d: number, scale: number, shift: number): number {
  const bin = (d * scale + shift) | 0;
  return bin >>> 0 < BINS ? bin : bin < 0 ? 0 : BINS - 1;
}

/** Parts of `count` samples with a value, from and to, ascending, in whose neighbourhood places will be asked for. */
export type Shares = (count: number) => readonly (readonly [number, number])[];

interface KeptOptions {
  readonly shares?: Shares;
  /** Samples outside are counted. */
  readonly window?: Window | undefined;
  /** Where to take the memory from. */
  readonly scratch?: Scratch;
}

/**
 * What is kept of the samples of one output. Sums, and how many samples each bin has, are taken block by block while the
 * block is in the cache. Of the samples themselves only those are kept that lie in bins where, by the first `LOOK` samples, a
 * wanted percentile may lie. Should one turn out to lie elsewhere, as with draws that drift, `holds` says so; then
 * `lookAgain`, and add all blocks once more.
 */
export class Kept {
  /** Of each bin twice how many samples it has, and 1 more where they are kept. */
  private readonly cells = new Int32Array(BINS).fill(1);
  private kept: Float64Array;
  private keptCount = 0;
  private readonly blocks: BlockSums[] = [];
  private added = 0;
  /** A sample's place among the bins is its difference from the middle times `scale` plus `shift`. */
  private scale = 0;
  private shift = 0;
  /** Some sample lies too far out for the bins, which then tell nothing. */
  private far = false;
  /** Every sample so far is kept. */
  private whole = true;
  private readonly shares: Shares;
  private readonly window: Window | undefined;
  private readonly beyond = { low: 0, high: 0 };

  /**
   * @param samples - how many will be added
   * @param middle - a typical value; sums are of differences from it, so that they keep their digits
   */
  constructor(
    readonly samples: number,
    private readonly middle: number,
    { scratch = new Scratch(), shares = () => [], window }: KeptOptions = {},
  ) {
    this.kept = scratch.numbers(Kept.room(samples));
    this.shares = shares;
    this.window = window;
  }

  /** How many numbers of memory are enough in the usual case. */
  static room(samples: number): number {
    return Math.min(samples, 2 * LOOK + Math.ceil(samples / 4)) + 1;
  }

  /** Takes in the first `count` of a column. What is not finite has no value. */
  add(column: Float64Array, count: number): void {
    if (this.added === 0) this.setBins(column, count);
    let sums = this.addGood(column, count);
    if (!Number.isFinite(sums.sum)) sums = this.mend(column, count);
    if (!(Math.sqrt(sums.squares) * this.scale < FAR)) this.far = true;
    this.blocks.push(sums);
    if (this.window) this.countBeyond(column, count, this.window);
    if (this.whole && !this.far && this.added >= LOOK && this.samples > 2 * LOOK) this.choose();
  }

  /** Bins twice as wide as the first block, about its middle. */
  private setBins(column: Float64Array, count: number): void {
    let least = Infinity;
    let most = -Infinity;
    for (let i = 0; i < count; i++) {
      const x = column[i]!;
      if (x < least && x !== -Infinity) least = x;
      if (x > most && x !== Infinity) most = x;
    }
    const width = most - least;
    const scale = BINS / (2 * width);
    const shift = (this.middle - (least - width / 2)) * scale;
    if (!(width > 0 && scale > 0 && scale < Infinity && Math.abs(shift) < FAR)) return;
    this.scale = scale;
    this.shift = shift;
  }

  /**
   * The usual case: all have a value. A sample without one makes the sum NaN.
   * Four in a row, since a turn of the loop has its own cost; each is put behind those kept, and stays if its bin is kept.
   */
  private addGood(column: Float64Array, count: number): BlockSums {
    const kept = this.roomFor(count);
    const { middle, scale, shift, cells } = this;
    let k = this.keptCount;
    let sum = 0;
    let squares = 0;
    let i = 0;
    for (; i < count - 3; i += 4) {
      const xa = column[i]!;
      const xb = column[i + 1]!;
      const xc = column[i + 2]!;
      const xd = column[i + 3]!;
      const a = xa - middle;
      const b = xb - middle;
      const c = xc - middle;
      const d = xd - middle;
      sum += a + b + (c + d);
      squares += a * a + b * b + (c * c + d * d);
      const binA = binOf(a, scale, shift);
      const cellA = cells[binA]!;
      cells[binA] = cellA + 2;
      kept[k] = xa;
      k += cellA & 1;
      const binB = binOf(b, scale, shift);
      const cellB = cells[binB]!;
      cells[binB] = cellB + 2;
      kept[k] = xb;
      k += cellB & 1;
      const binC = binOf(c, scale, shift);
      const cellC = cells[binC]!;
      cells[binC] = cellC + 2;
      kept[k] = xc;
      k += cellC & 1;
      const binD = binOf(d, scale, shift);
      const cellD = cells[binD]!;
      cells[binD] = cellD + 2;
      kept[k] = xd;
      k += cellD & 1;
    }
    for (; i < count; i++) {
      const x = column[i]!;
      const d = x - middle;
      sum += d;
      squares += d * d;
      const bin = binOf(d, scale, shift);
      const cell = cells[bin]!;
      cells[bin] = cell + 2;
      kept[k] = x;
      k += cell & 1;
    }
    this.keptCount = k;
    this.added += count;
    return { end: this.added, count, sum, squares };
  }

  /** The list of kept samples with room for `more` and one beyond. */
  private roomFor(more: number): Float64Array {
    const needed = this.keptCount + more + 1;
    if (this.kept.length < needed) {
      const larger = new Float64Array(Math.max(needed, Math.min(2 * this.kept.length, this.samples + 1)));
      larger.set(this.kept.subarray(0, this.keptCount));
      this.kept = larger;
    }
    return this.kept;
  }

  /** Takes samples without a value out of the first bin, into which they were counted, and sums up the others. */
  private mend(column: Float64Array, count: number): BlockSums {
    const { cells, middle } = this;
    let [sum, squares, good] = [0, 0, 0];
    for (let i = 0; i < count; i++) {
      const x = column[i]!;
      if (!Number.isFinite(x)) {
        cells[0]! -= 2; // whole numbers have no infinity: like NaN it fell into the first bin
        continue;
      }
      const d = x - middle;
      sum += d;
      squares += d * d;
      good++;
    }
    return { end: this.added, count: good, sum, squares };
  }

  /** From here on keeps only what lies in bins where the wanted shares may lie. */
  private choose(): void {
    const good = this.count;
    if (good === 0) return;
    const { cells } = this;
    let bin = 0;
    let before = 0;
    const passTo = (rank: number, keep: 0 | 1) => {
      for (; bin < BINS; bin++) {
        const size = cells[bin]! >> 1;
        if (before + (keep === 1 ? 0 : size) > rank) return;
        cells[bin] = size * 2 + keep;
        before += size;
      }
    };
    for (const [from, to] of this.shares(Math.round((good / this.added) * this.samples))) {
      const miss = (share: number) => SURE * Math.sqrt(share * (1 - share) * good) + 1;
      passTo(from * good - miss(from), 0);
      passTo(to * good + miss(to), 1);
    }
    passTo(Infinity, 0);
    this.keepOnly();
  }

  private countBeyond(column: Float64Array, count: number, { low = -Infinity, high = Infinity }: Window): void {
    const { beyond } = this;
    for (let i = 0; i < count; i++) {
      const x = column[i]!;
      if (x < low && x !== -Infinity) beyond.low++;
      else if (x > high && x !== Infinity) beyond.high++;
    }
  }

  /** How many samples are kept, those without a value included. */
  get size(): number {
    return this.keptCount;
  }

  /** Samples with a value so far. */
  get count(): number {
    return this.blocks.reduce((sum, { count }) => sum + count, 0);
  }

  /** Share of the samples with a value that lie outside the window. */
  outside(): { readonly low: number; readonly high: number } {
    return { low: this.beyond.low / this.count, high: this.beyond.high / this.count };
  }

  /** Drops the samples of bins that are not kept. */
  private keepOnly(): void {
    const { cells, kept, middle, scale, shift } = this;
    let k = 0;
    for (let i = 0; i < this.keptCount; i++) {
      const x = kept[i]!;
      kept[k] = x;
      k += cells[binOf(x - middle, scale, shift)]! & 1;
    }
    this.keptCount = k;
    this.whole = false;
  }

  /** Mean and standard deviation of all, and the means of `groups` equal parts. */
  moments(groups: number): { readonly mean: number; readonly sd: number; readonly groupMeans: readonly number[]; readonly count: number } {
    const size = this.samples / groups;
    const parts = Array.from({ length: groups }, () => ({ count: 0, sum: 0 }));
    let [count, sum, squares] = [0, 0, 0];
    for (const block of this.blocks) {
      const part = parts[Math.ceil(block.end / size) - 1]!;
      part.count += block.count;
      part.sum += block.sum;
      count += block.count;
      sum += block.sum;
      squares += block.squares;
    }
    const variance = count > 1 ? Math.max(0, squares - (sum * sum) / count) / (count - 1) : 0;
    const groupMeans = parts.filter((part) => part.count > 0).map((part) => this.middle + part.sum / part.count);
    return { mean: this.middle + sum / count, sd: Math.sqrt(variance), groupMeans, count };
  }

  /** Whether all samples at these places (from 0, ascending) were kept. */
  holds(ranks: readonly number[]): boolean {
    if (this.whole) return true;
    return !this.far && this.binsOf(ranks).every(({ bin }) => (this.cells[bin]! & 1) === 1);
  }

  /** Makes ready for every sample to be added once more, in any blocks, by `addAgain`; sums stay. */
  lookAgain(ranks: readonly number[]): void {
    const { cells } = this;
    for (let bin = 0; bin < BINS; bin++) cells[bin] = (cells[bin]! & ~1) | (this.far ? 1 : 0);
    for (const { bin } of this.binsOf(ranks)) cells[bin]! |= 1;
    this.keptCount = 0;
    this.whole = this.far;
  }

  /** Keeps those of the first `count` of a column that lie in bins with places asked for. */
  addAgain(column: Float64Array, count: number): void {
    const kept = this.roomFor(count);
    const { cells, middle, scale, shift } = this;
    let k = this.keptCount;
    for (let i = 0; i < count; i++) {
      const x = column[i]!;
      kept[k] = x;
      k += cells[binOf(x - middle, scale, shift)]! & 1;
    }
    this.keptCount = k;
  }

  /**
   * The values at given places of the sorted samples, those without a value left out.
   * @param ranks - from 0, ascending, and held
   */
  at(ranks: readonly number[]): Float64Array {
    const { middle, scale, shift } = this;
    const kept = this.kept.subarray(0, this.keptCount);
    if (this.far) {
      return orderStatistics(kept.filter(Number.isFinite), ranks);
    }
    const start = new Int32Array(BINS).fill(-1);
    const parts = this.binsOf(ranks);
    let gathered = 0;
    for (const { bin } of parts) {
      start[bin] = gathered;
      gathered += this.cells[bin]! >> 1;
    }
    const chosen = new Float64Array(gathered);
    for (let i = 0; i < kept.length; i++) {
      const x = kept[i]!;
      const bin = binOf(x - middle, scale, shift);
      const at = start[bin]!;
      if (at < 0 || !Number.isFinite(x)) continue;
      chosen[at] = x;
      start[bin] = at + 1;
    }
    let from = 0;
    return Float64Array.from(
      parts.flatMap(({ bin, inside }) => {
        const part = chosen.subarray(from, (from += this.cells[bin]! >> 1));
        return [...orderStatistics(part, inside)];
      }),
    );
  }

  /** The bins that hold the given places, and which of their samples these are. */
  private binsOf(ranks: readonly number[]): { readonly bin: number; readonly inside: readonly number[] }[] {
    const found: { readonly bin: number; readonly inside: number[] }[] = [];
    let before = 0;
    let r = 0;
    for (let bin = 0; bin < BINS && r < ranks.length; bin++) {
      const size = this.cells[bin]! >> 1;
      if (ranks[r]! < before + size) {
        const inside: number[] = [];
        while (r < ranks.length && ranks[r]! < before + size) inside.push(ranks[r++]! - before);
        found.push({ bin, inside });
      }
      before += size;
    }
    return found;
  }
}
