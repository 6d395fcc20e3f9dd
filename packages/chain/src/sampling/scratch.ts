/**
 * Memory that one variation after another can use: fresh memory costs more than the sums made in it. Give the same one to
 * variations that follow each other; results do not refer to it. While a variation has it, others take fresh memory.
 */
export class Scratch {
  private buffer = new ArrayBuffer(0);
  private used = 0;
  private busy = false;

  /** Makes room for `count` numbers; false when another variation has it. */
  take(count: number): boolean {
    if (this.busy) return false;
    this.busy = true;
    if (this.buffer.byteLength < count * 8) this.buffer = new ArrayBuffer(count * 8);
    return true;
  }

  release(): void {
    this.busy = false;
    this.used = 0;
  }

  numbers(count: number): Float64Array {
    const from = this.used;
    if (!this.busy || from + count * 8 > this.buffer.byteLength) return new Float64Array(count);
    this.used += count * 8;
    return new Float64Array(this.buffer, from, count);
  }
}
