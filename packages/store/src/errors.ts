/** What a program may branch on. The server maps each to one HTTP status. */
export const storeErrorCodes = [
  'PLANT_NOT_FOUND',
  'PLANT_EXISTS',
  'VERSION_NOT_FOUND',
  'CONFLICT',
  'UNCHANGED',
  'BAD_FILE',
  'BAD_ENTRY',
  'STORE_BUSY',
  'STORE_FULL',
  'STORE_TOO_NEW',
  'STORE_UNUSABLE',
  'STORE_REFUSED',
] as const;
export type StoreErrorCode = (typeof storeErrorCodes)[number];

/** A refusal of the store: a stable code, one sentence with what came and what was expected, and facts for programs. */
export class StoreError extends Error {
  constructor(
    readonly code: StoreErrorCode,
    message: string,
    readonly details: Readonly<Record<string, unknown>> = {},
    options?: ErrorOptions,
  ) {
    super(message, options);
    this.name = 'StoreError';
  }
}

/** The one place that knows how the driver words its errors. What it does not know stays as it came. */
export function storeErrorFrom(error: unknown, place: string): unknown {
  if (!(error instanceof Error) || error instanceof StoreError) return error;
  const code = 'code' in error && typeof error.code === 'string' ? error.code : '';
  const cause = { cause: error };
  if (code.startsWith('SQLITE_BUSY') || code.startsWith('SQLITE_LOCKED')) {
    return new StoreError('STORE_BUSY', `${place} is being written by another program; try again in a moment`, {}, cause);
  }
  if (code === 'SQLITE_FULL') {
    return new StoreError(
      'STORE_FULL',
      `The disk that holds ${place} is full; nothing was saved. Free some space and save again`,
      {},
      cause,
    );
  }
  if (code === 'SQLITE_CONSTRAINT_TRIGGER') return new StoreError('STORE_REFUSED', error.message, {}, cause);
  if (code === 'SQLITE_NOTADB' || code.startsWith('SQLITE_CORRUPT')) {
    const advice = 'Move it away and put the last copy of it in its place, or start with an empty folder';
    return new StoreError('STORE_UNUSABLE', `${place} is damaged or is not a database (${error.message}). ${advice}`, {}, cause);
  }
  if (/^SQLITE_(CANTOPEN|READONLY|IOERR|PERM|AUTH)/.test(code) || error.message.startsWith('ConnectionFailed')) {
    return new StoreError('STORE_UNUSABLE', `${place} cannot be opened for writing (${error.message})`, {}, cause);
  }
  return error;
}
