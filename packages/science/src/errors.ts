/** A value that is physically impossible, not a number, or where a model means nothing. */
export class OutOfRange extends RangeError {
  readonly code = 'OUT_OF_RANGE';
  constructor(
    readonly quantity: string,
    readonly value: number,
    readonly valid: readonly [number, number],
    readonly source: string,
    /** What the value may have been meant as, as a clause. */
    hint = '',
  ) {
    super(`${quantity} is ${value}, but ${source} covers ${valid[0]} to ${valid[1]}${hint && `; ${hint}`}`);
  }
}

/** Throws OutOfRange unless lo <= value <= hi. NaN fails too, because the test is written positively. */
export function requireRange(quantity: string, value: number, valid: readonly [number, number], source: string): void {
  if (!(value >= valid[0] && value <= valid[1])) throw new OutOfRange(quantity, value, valid, source);
}

/** An equation has no solution inside the bracket that physics allows. */
export class NoSolution extends RangeError {
  readonly code = 'NO_SOLUTION';
}

/** Input that is not what the model takes: a missing or unknown key, a word where a number is due. */
export class BadInput extends TypeError {
  readonly code = 'BAD_INPUT';
}
