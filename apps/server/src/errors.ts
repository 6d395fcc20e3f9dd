import { STATUS_CODES } from 'node:http';

/** What this server itself refuses; the store, the loader and the models bring their own codes. */
export const serverErrorCodes = [
  'BAD_REQUEST',
  'BAD_JSON',
  'BODY_TOO_LARGE',
  'MEDIA_TYPE',
  'NOT_FOUND',
  'MODEL_NOT_FOUND',
  'UNKNOWN_BAR',
  'DEFINITION_INVALID',
  'HOST_NOT_ALLOWED',
  'ORIGIN_NOT_ALLOWED',
  'WEB_NOT_BUILT',
  'DATA_FOLDER_IN_SOURCE',
  'NO_FREE_PORT',
  'INTERNAL',
] as const;
export type ServerErrorCode = (typeof serverErrorCodes)[number];

/** A refusal of the server: a stable code, one sentence, and members that go into the answer beside them. */
export class ServerError extends Error {
  constructor(
    readonly code: ServerErrorCode,
    message: string,
    readonly details: Readonly<Record<string, unknown>> = {},
  ) {
    super(message);
    this.name = 'ServerError';
  }
}

/** The one place where codes become HTTP statuses. A code that is not here is a defect and answers 500. */
const statuses: Readonly<Record<string, number>> = {
  BAD_REQUEST: 400,
  BAD_JSON: 400,
  BAD_ENTRY: 400,
  BAD_FILE: 400,
  EDIT_ERROR: 400,
  BAD_INPUT: 400,
  ORIGIN_NOT_ALLOWED: 403,
  NOT_FOUND: 404,
  PLANT_NOT_FOUND: 404,
  VERSION_NOT_FOUND: 404,
  MODEL_NOT_FOUND: 404,
  UNKNOWN_BAR: 404,
  CONFLICT: 409,
  PLANT_EXISTS: 409,
  UNCHANGED: 409,
  BODY_TOO_LARGE: 413,
  MEDIA_TYPE: 415,
  HOST_NOT_ALLOWED: 421,
  DEFINITION_INVALID: 422,
  OUT_OF_RANGE: 422,
  NO_SOLUTION: 422,
  STORE_BUSY: 503,
  WEB_NOT_BUILT: 503,
  STORE_FULL: 507,
};

/** The framework's own refusals in our words. */
const frameworkErrors: Readonly<Record<string, readonly [ServerErrorCode, string]>> = {
  FST_ERR_CTP_BODY_TOO_LARGE: ['BODY_TOO_LARGE', 'The request is larger than 5 MB, which is more than any plant needs'],
  FST_ERR_CTP_INVALID_MEDIA_TYPE: ['MEDIA_TYPE', 'The body is expected as application/json'],
  FST_ERR_CTP_EMPTY_JSON_BODY: ['BAD_JSON', 'The body is empty, but JSON is expected'],
  FST_ERR_CTP_INVALID_JSON_BODY: ['BAD_JSON', 'The body is not JSON'],
  FST_ERR_CTP_INVALID_CONTENT_LENGTH: ['BAD_REQUEST', 'The body is not as long as its header says'],
  FST_ERR_BAD_URL: ['BAD_REQUEST', 'The address is not readable'],
};

/** The body of a refusal, RFC 9457, media type application/problem+json. */
export interface ProblemBody {
  readonly type: 'about:blank';
  /** The phrase of the status. */
  readonly title: string;
  readonly status: number;
  /** One sentence for a person. */
  readonly detail: string;
  /** Stable; branch on this. */
  readonly code: string;
  readonly [member: string]: unknown;
}

/** What a client is told of an error. Nothing of an unforeseen one but that it is in the log. */
export function problemFrom(error: unknown): ProblemBody {
  const known = knownError(error);
  if (known === undefined) {
    return body(500, 'INTERNAL', 'The server met something it was not written for; nothing was saved. Its log has the particulars');
  }
  return body(statuses[known.code]!, known.code, known.message, known.details);
}

/** True where the error is a defect or a failing machine, so that the log must have it whole. */
export function isUnforeseen(error: unknown): boolean {
  return knownError(error) === undefined;
}

function body(status: number, code: string, detail: string, details: Readonly<Record<string, unknown>> = {}): ProblemBody {
  return { ...details, type: 'about:blank', title: STATUS_CODES[status] ?? 'Error', status, detail, code };
}

interface Known {
  readonly code: string;
  readonly message: string;
  readonly details?: Readonly<Record<string, unknown>>;
}

function knownError(error: unknown): Known | undefined {
  if (!(error instanceof Error)) return undefined;
  const { code, validation, details } = error as { code?: unknown; validation?: unknown; details?: Known['details'] };
  if (Array.isArray(validation)) return validationError(validation, error);
  if (typeof code !== 'string') return error instanceof SyntaxError && 'statusCode' in error ? badJson : undefined;
  const framework = frameworkErrors[code];
  if (framework) return { code: framework[0], message: framework[1] };
  if (!Object.hasOwn(statuses, code)) return undefined;
  return { code, message: error.message, ...(details ? { details } : {}) };
}

const badJson: Known = { code: 'BAD_JSON', message: 'The body is not JSON' };

/** Each place of the request that is not as described, with what was expected. */
function validationError(validation: readonly { instancePath?: string; message?: string }[], error: Error): Known {
  const where = (error as { validationContext?: string }).validationContext ?? 'request';
  const problems = validation.map(({ instancePath = '', message = '' }) => ({
    place: [where, ...instancePath.split('/')].filter((part) => part !== '').join('.'),
    message,
  }));
  const first = problems[0];
  const more = problems.length > 1 ? ` (and ${problems.length - 1} more)` : '';
  return {
    code: 'BAD_REQUEST',
    message: first ? `${first.place}: ${first.message}${more}` : 'The request is not as described',
    details: { problems },
  };
}
