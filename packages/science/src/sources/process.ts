import type { Source } from '../sources.js';

/** Works behind the process models. */
export const processSources = {} as const satisfies Record<string, Source>;
