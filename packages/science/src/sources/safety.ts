import type { Source } from '../sources.js';

/** Works behind the safety models. */
export const safetySources = {} as const satisfies Record<string, Source>;
