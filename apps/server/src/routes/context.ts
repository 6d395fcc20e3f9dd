import type { Store } from '@barwright/store';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import type { DayFiles } from '../day-files.js';
import type { Definitions } from '../definitions.js';
import type { Evidence } from '../evidence.js';

/** What the routes work on. */
export interface Context {
  readonly store: Store;
  readonly definitions: Definitions;
  readonly dayFiles: DayFiles;
  readonly evidence: () => Promise<Evidence>;
  readonly version: string;
}

/** One file of routes: one topic, mounted under /api. */
export type Routes = FastifyPluginAsyncZod<Context>;
