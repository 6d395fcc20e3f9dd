/** A drawing was asked for something that cannot be drawn; the message names the place, what came and what was expected. */
export class DrawingError extends RangeError {
  readonly code = 'CANNOT_DRAW';
  constructor(place: string, came: unknown, expected: string) {
    super(`${place} is ${String(came)}, but ${expected} was expected`);
  }
}

/** Throws DrawingError unless lo <= value <= hi; NaN fails too. */
export function requireBetween(place: string, value: number, lo: number, hi: number, unit = ''): void {
  if (!(value >= lo && value <= hi)) {
    const range = hi === Infinity ? `a number of at least ${lo}` : `a number from ${lo} to ${hi}`;
    throw new DrawingError(place, value, `${range}${unit === '' ? '' : ` ${unit}`}`);
  }
}

/** Throws DrawingError unless the value is a finite number. */
export function requireFinite(place: string, value: number): void {
  if (!Number.isFinite(value)) throw new DrawingError(place, value, 'a finite number');
}
