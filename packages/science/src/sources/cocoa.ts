import type { Source } from '../sources.js';

/** Works behind the cocoa models. */
export const cocoaSources = {} as const satisfies Record<string, Source>;
