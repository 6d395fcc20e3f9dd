import type { Source } from './source.js';
import { cocoaSources } from './sources/cocoa.js';
import { coreSources } from './sources/core.js';
import { processSources } from './sources/process.js';
import { safetySources } from './sources/safety.js';
import { waterSources } from './sources/water.js';

/** Every work we take a number from. Key: author or body, year, part. */
export const sources = { ...coreSources, ...waterSources, ...processSources, ...cocoaSources, ...safetySources } as const;
export type { Source };
export type SourceKey = keyof typeof sources;

/**
 * How far a value may be trusted. found: read in the source; secondhand: read in a work quoting it;
 * memory: unchecked; plant: the plant measured it; placeholder: to be replaced.
 */
export type Standing = 'found' | 'secondhand' | 'memory' | 'plant' | 'placeholder';

/** Constants of one published table or equation. */
export interface Table {
  readonly source: SourceKey;
  readonly standing: Standing;
  /** Table or equation number, and whatever we changed: units, sign, base of the logarithm. */
  readonly note: string;
  readonly valid: Readonly<Record<string, readonly [number, number]>>;
  readonly values: Readonly<Record<string, number | readonly number[]>>;
}
