import { z } from 'zod';
import type { Routes } from './context.js';
import { refusals } from './schemas.js';

const row = z.object({
  id: z.string(),
  model: z.string(),
  inputs: z.record(z.string(), z.unknown()),
  output: z.string(),
  unit: z.string(),
  expected: z.union([z.number(), z.string(), z.array(z.number().nullable()).readonly()]).describe('A value, or a band'),
  computed: z.union([z.number(), z.string()]).nullable(),
  tolerance: z.number(),
  deviation: z.number().nullable().describe('Computed less expected; null where there is no number to compare'),
  inside: z.boolean(),
  kind: z.string(),
  source: z.object({ key: z.string(), title: z.string(), address: z.string().optional() }),
  standing: z.string(),
  note: z.string().optional(),
  error: z.string().optional(),
});
const evidence = z.object({ models: z.int(), checks: z.int(), inside: z.int(), results: z.array(row).readonly() });

/** Every check of every model against a value from outside. */
export const evidenceRoutes: Routes = async (app, context) => {
  app.get(
    '/evidence',
    {
      schema: {
        tags: ['evidence'],
        summary: 'Every check against an outside value, red rows too',
        response: { 200: evidence, ...refusals },
      },
    },
    async () => context.evidence(),
  );
};
