import type { Source } from '../sources.js';

/** Works behind the water models. */
export const waterSources = {} as const satisfies Record<string, Source>;
