import { findPlant, importPlant, listPlants, StoreError } from '@barwright/store';
import { z } from 'zod';
import { requirePlantFiles } from '../load.js';
import type { Routes } from './context.js';
import { author, definitionProblem, files, plantKey, plantParams, reason, refusals, versionInfo } from './schemas.js';

const plantInfo = z.object({ id: z.string(), name: z.string(), latest: z.int(), savedAt: z.string().describe('ISO 8601, UTC') });
const named = z.object({ name: z.string(), slug: z.string() });
const plantDetail = plantInfo.extend({
  ok: z.boolean().describe('False where this release no longer reads the latest version; bars and lines are then empty'),
  bars: z.array(named.extend({ format: z.string(), line: z.string().nullable() })),
  lines: z.array(named),
});
const newPlant = z.object({ id: plantKey.optional().describe('Left out: made from the name'), files, author, reason });
const saved = z.object({ version: versionInfo, notes: z.array(definitionProblem) });

/** The plants. */
export const plantRoutes: Routes = async (app, { store, definitions }) => {
  app.get(
    '/plants',
    { schema: { tags: ['plants'], summary: 'Every plant', response: { 200: z.array(plantInfo), ...refusals } } },
    async () => listPlants(store),
  );

  app.get(
    '/plants/:plant',
    {
      schema: {
        tags: ['plants'],
        summary: 'One plant: its latest version, bars and lines',
        params: plantParams,
        response: { 200: plantDetail, ...refusals },
      },
    },
    async (request) => {
      const info = await findPlant(store, request.params.plant);
      if (!info) throw new StoreError('PLANT_NOT_FOUND', `There is no plant '${request.params.plant}'`);
      const { loaded } = await definitions.get(info.id, info.latest);
      if (!loaded.ok) return { ...info, ok: false, bars: [], lines: [] };
      const { bars, lines } = loaded.plant;
      return {
        ...info,
        ok: true,
        bars: [...bars.values()].map(({ name, slug, format, line }) => ({ name, slug, format, line: line ?? null })),
        lines: [...lines.values()].map(({ name, slug }) => ({ name, slug })),
      };
    },
  );

  app.post(
    '/plants',
    { schema: { tags: ['plants'], summary: 'Adds a plant from its files', body: newPlant, response: { 201: saved, ...refusals } } },
    async (request, reply) => {
      const { id, author, reason } = request.body;
      const given = new Map(Object.entries(request.body.files));
      const { plant, notes } = await requirePlantFiles(given);
      const version = await importPlant(store, { ...(id === undefined ? {} : { id }), name: plant.name, files: given, author, reason });
      return reply
        .code(201)
        .header('location', `/api/plants/${version.plant}`)
        .send({ version, notes: [...notes] });
    },
  );
};
