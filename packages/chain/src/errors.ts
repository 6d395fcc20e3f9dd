/** Every way a chain refuses a request. The codes are stable; the sentences may change. */
export type ChainErrorCode =
  | 'CYCLE'
  | 'MISSING_INPUT'
  | 'DUPLICATE_QUANTITY'
  | 'DUPLICATE_STEP'
  | 'UNIT_MISSING'
  | 'UNIT_CLASH'
  | 'UNKNOWN_QUANTITY'
  | 'UNKNOWN_ELEMENT'
  | 'NOT_A_NUMBER'
  | 'BAD_VALUE'
  | 'NO_VALUE'
  | 'NO_RANGE'
  | 'BAD_REQUEST'
  | 'CANCELLED';

/** A chain that cannot be built, or a question that cannot be asked of it. */
export class ChainError extends Error {
  override readonly name = 'ChainError';
  /**
   * @param code - stable, for machines
   * @param message - one sentence: place, what came, what was expected
   * @param ids - the quantities or steps concerned, in order; for CYCLE the way round
   */
  constructor(
    readonly code: ChainErrorCode,
    message: string,
    readonly ids: readonly string[] = [],
  ) {
    super(message);
  }
}
