import { verifyHistory } from '@barwright/store';
import { z } from 'zod';
import type { Routes } from './context.js';
import { refusals } from './schemas.js';

const health = z.object({ status: z.literal('ok'), version: z.string(), uptime_s: z.number() });
const history = z.object({
  intact: z.boolean(),
  findings: z.array(
    z.object({
      code: z.string(),
      message: z.string(),
      plant: z.string().optional(),
      version: z.int().optional(),
      file: z.string().optional(),
    }),
  ),
});

/** Whether the server runs, and whether what it keeps is as it was saved. */
export const healthRoutes: Routes = async (app, { store, version }) => {
  app.get(
    '/health',
    { schema: { tags: ['health'], summary: 'Whether the server runs', response: { 200: health, ...refusals } } },
    async () => ({ status: 'ok' as const, version, uptime_s: Math.round(process.uptime() * 1000) / 1000 }),
  );

  app.get(
    '/history',
    { schema: { tags: ['health'], summary: 'Recomputes every hash of every version', response: { 200: history, ...refusals } } },
    async () => {
      const findings = await verifyHistory(store);
      return { intact: findings.length === 0, findings };
    },
  );
};
