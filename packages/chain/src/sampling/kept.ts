import { orderStatistics } from './order-statistics.js';

/** Equal bins into which samples are counted as they come; the first and the last also take what lies beyond. */
const BINS = 4096;
/** Code of a sample without a value. */
const NONE = BINS;

interface BlockSums {
  readonly end: number;
  readonly count: number;
  readonly sum: number;
  readonly squares: number;
}

/**
 * Memory that one variation after another can use: fresh memory costs more than the sums made in it. Give the same one to
 * variations that follow each other; results do not refer to it. While a variation has it, others take fresh memory.
 */
export class Scratch {
  private numberBuffer = new ArrayBuffer(0);
  private codeBuffer = new ArrayBuffer(0);
  private numbersUsed = 0;
  private codesUsed = 0;
  private busy = false;

  /** Makes room for `count` lists of `samples`; false when another variation has it. */
  take(count: number, samples: number): boolean {
    if (this.busy) return false;
    this.busy = true;
    if (this.numberBuffer.byteLength < count * samples * 8) {
      this.numberBuffer = new ArrayBuffer(count * samples * 8);
      this.codeBuffer = new ArrayBuffer(count * samples * 2);
    }
    return true;
  }

  release(): void {
    this.busy = false;
    this.numbersUsed = this.codesUsed = 0;
  }

  numbers(samples: number): Float64Array {
    const from = this.numbersUsed;
    if (!this.busy || from + samples * 8 > this.numberBuffer.byteLength) return new Float64Array(samples);
    this.numbersUsed += samples * 8;
    return new Float64Array(this.numberBuffer, from, samples);
  }

  codes(samples: number): Uint16Array {
    const from = this.codesUsed;
    if (!this.busy || from + samples * 2 > this.codeBuffer.byteLength) return new Uint16Array(samples);
    this.codesUsed += samples * 2;
    return new Uint16Array(this.codeBuffer, from, samples);
  }
}

/**
 * The samples of one output. Sums, and the bin of each sample, are taken block by block while the block is in the cache;
 * percentiles then look only into the bins that hold them.
 */
export class Kept {
  readonly values: Float64Array;
  private readonly codes: Uint16Array;
  private readonly sizes = new Int32Array(BINS + 1);
  private readonly blocks: BlockSums[] = [];
  private low = 0;
  private scale = 0;

  /**
   * @param middle - a typical value; sums are of differences from it, so that they keep their digits
   * @param scratch - where to take the memory from
   */
  constructor(
    samples: number,
    private readonly middle: number,
    scratch = new Scratch(),
  ) {
    this.values = scratch.numbers(samples);
    this.codes = scratch.codes(samples);
  }

  /** Takes notice of samples that were written to `values`, from the first on. */
  add(start: number, count: number): void {
    const end = start + count;
    if (start === 0) this.setBins(count);
    const sums = this.addGood(start, end);
    this.blocks.push(Number.isFinite(sums.sum) ? sums : this.mend(start, end));
  }

  /** Bins twice as wide as the first block, about its middle. */
  private setBins(count: number): void {
    let least = Infinity;
    let most = -Infinity;
    for (let i = 0; i < count; i++) {
      const x = this.values[i]!;
      if (x < least) least = x;
      if (x > most) most = x;
    }
    const width = most - least;
    const scale = BINS / (2 * width);
    if (!(width > 0 && scale > 0 && scale < Infinity)) return;
    this.low = least - width / 2;
    this.scale = scale;
  }

  /** The usual case: all have a value. A sample without one makes the sum NaN. */
  private addGood(start: number, end: number): BlockSums {
    const { codes, low, middle, scale, sizes, values } = this;
    let sum = 0;
    let squares = 0;
    for (let i = start; i < end; i++) {
      const x = values[i]!;
      const d = x - middle;
      sum += d;
      squares += d * d;
      let place = (x - low) * scale;
      if (!(place > 0)) place = 0;
      if (place > BINS - 1) place = BINS - 1;
      const bin = place | 0;
      codes[i] = bin;
      sizes[bin] = sizes[bin]! + 1;
    }
    return { end, count: end - start, sum, squares };
  }

  /** Takes samples without a value out of the first bin, into which they were counted, and sums up the others. */
  private mend(start: number, end: number): BlockSums {
    const { codes, middle, sizes, values } = this;
    let [sum, squares, count] = [0, 0, 0];
    for (let i = start; i < end; i++) {
      if (Number.isNaN(values[i]!)) {
        sizes[codes[i]!]!--;
        codes[i] = NONE;
        continue;
      }
      const d = values[i]! - middle;
      sum += d;
      squares += d * d;
      count++;
    }
    return { end, count, sum, squares };
  }

  /** Mean and standard deviation of all, and the means of `groups` equal parts. */
  moments(groups: number): { readonly mean: number; readonly sd: number; readonly groupMeans: readonly number[]; readonly count: number } {
    const size = this.values.length / groups;
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

  /**
   * The values at given places of the sorted samples, those without a value left out.
   * @param ranks - from 0, ascending
   */
  at(ranks: readonly number[]): Float64Array {
    const { codes, sizes, values } = this;
    const start = new Int32Array(BINS + 1).fill(-1);
    const parts: { readonly start: number; readonly size: number; readonly ranks: readonly number[] }[] = [];
    let before = 0;
    let gathered = 0;
    let r = 0;
    for (let bin = 0; bin < BINS && r < ranks.length; bin++) {
      const size = sizes[bin]!;
      const inside: number[] = [];
      while (r < ranks.length && ranks[r]! < before + size) inside.push(ranks[r++]! - before);
      if (inside.length > 0) {
        parts.push({ start: gathered, size, ranks: inside });
        start[bin] = gathered;
        gathered += size;
      }
      before += size;
    }
    const chosen = new Float64Array(gathered);
    gather(values, codes, start, chosen);
    return Float64Array.from(
      parts.flatMap((part) => [...orderStatistics(chosen.subarray(part.start, part.start + part.size), part.ranks)]),
    );
  }
}

function gather(values: Float64Array, codes: Uint16Array, start: Int32Array, chosen: Float64Array): void {
  for (let i = 0; i < codes.length; i++) {
    const bin = codes[i]!;
    const at = start[bin]!;
    if (at < 0) continue;
    chosen[at] = values[i]!;
    start[bin] = at + 1;
  }
}
