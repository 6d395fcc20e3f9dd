import { findPlant, StoreError } from '@barwright/store';
import { z } from 'zod';
import type { Routes } from './context.js';
import { plantKey, plantParams, refusals } from './schemas.js';

const day = z.object({
  date: z.string().describe('ISO 8601 date'),
  files: z.array(z.object({ name: z.string(), bytes: z.int() })),
});
const fileParams = z.object({
  plant: plantKey,
  date: z.string().max(10).describe('ISO 8601 date'),
  name: z.string().max(200).describe('Name of the file'),
});

/** Logs and tables of a day, as they lie in the folder of a plant. They are read, never written. */
export const dayRoutes: Routes = async (app, { store, dayFiles }) => {
  app.get(
    '/plants/:plant/days',
    {
      schema: {
        tags: ['days'],
        summary: 'Days of which the folder of a plant holds logs, newest first',
        params: plantParams,
        response: { 200: z.array(day), ...refusals },
      },
    },
    async (request) => {
      const { plant } = request.params;
      if (!(await findPlant(store, plant))) throw new StoreError('PLANT_NOT_FOUND', `There is no plant '${plant}'`);
      return [...(await dayFiles.days(plant))].map(({ date, files }) => ({ date, files: [...files] }));
    },
  );

  app.get(
    '/plants/:plant/days/:date/files/:name',
    {
      schema: {
        tags: ['days'],
        summary: 'One log or table of a day, as it lies there',
        params: fileParams,
        response: { 200: z.string().describe('A CSV, TSV or XLSX file'), ...refusals },
      },
    },
    async (request, reply) => {
      const { plant, date, name } = request.params;
      const bytes = await dayFiles.read(plant, date, name);
      reply.type(/\.xlsx$/i.test(name) ? 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet' : 'text/csv; charset=utf-8');
      return reply.send(bytes as never);
    },
  );
};
