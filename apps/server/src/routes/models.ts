import { z } from 'zod';
import { ServerError } from '../errors.js';
import { sourceLine } from '../evidence.js';
import { finite, plain } from '../json.js';
import type { Routes } from './context.js';
import { refusals } from './schemas.js';

const value = z.union([z.number(), z.array(z.number().nullable()), z.string(), z.boolean()]);
const range = z.array(z.number().nullable()).length(2).describe('Lowest and highest; null where there is no end');
const source = z.object({ key: z.string(), title: z.string(), address: z.string().optional() });
const model = z.object({
  id: z.string(),
  title: z.string(),
  about: z.string(),
  inputs: z.array(
    z.object({
      key: z.string(),
      unit: z.string(),
      meaning: z.string(),
      kind: z.enum(['number', 'series', 'choice', 'flag']),
      possible: range.optional().describe('Outside it the model refuses'),
      fitted: range.optional().describe('Outside it the answer stands and says so'),
      choices: z.array(z.string()).optional(),
      default: value.nullable().optional().describe('Taken when it is left out; null: it may be left out, and the model then does without'),
    }),
  ),
  outputs: z.array(z.object({ key: z.string(), unit: z.string(), meaning: z.string() })),
  sources: z.array(source),
  standing: z.string(),
});
const answer = z.object({
  id: z.string(),
  outputs: z.record(
    z.string(),
    z.object({ value: value.nullable(), low: z.number().optional(), high: z.number().optional(), unit: z.string() }),
  ),
  fitted: z.boolean().describe('False where an input lies outside what the source covers'),
  findings: z.array(z.object({ code: z.string(), message: z.string() })),
  sources: z.array(z.string()),
});
const modelParams = z.object({ id: z.string().min(1).max(200) });
const modelInputs = z.record(z.string(), z.unknown()).describe('Value of each input by its key; keys carry the unit');

/** The published models, each behind the same door. */
export const modelRoutes: Routes = async (app) => {
  app.get(
    '/models',
    {
      schema: {
        tags: ['models'],
        summary: 'Every model with its inputs, ranges, outputs and sources',
        response: { 200: z.array(model), ...refusals },
      },
    },
    async () => {
      const { models, sources } = await import('@barwright/science');
      return models.map(({ id, title, about, inputs, outputs, sources: keys, standing }) => ({
        id,
        title,
        about,
        inputs: inputs.map(({ key, unit, meaning, kind = 'number', possible, fitted, choices, default: fallback }) => ({
          key,
          unit,
          meaning,
          kind,
          ...(possible ? { possible: possible.map(finite) } : {}),
          ...(fitted ? { fitted: fitted.map(finite) } : {}),
          ...(choices ? { choices: [...choices] } : {}),
          ...(fallback === undefined ? {} : { default: plain(fallback) }),
        })),
        outputs: outputs.map(({ key, unit, meaning }) => ({ key, unit, meaning })),
        sources: keys.map((key) => sourceLine(key, sources)),
        standing,
      }));
    },
  );

  app.post(
    '/models/:id',
    {
      schema: {
        tags: ['models'],
        summary: 'Runs one model',
        params: modelParams,
        body: modelInputs,
        response: { 200: answer, ...refusals },
      },
    },
    async (request) => {
      const { modelById, runModel } = await import('@barwright/science');
      const found = modelById.get(request.params.id);
      if (!found) throw new ServerError('MODEL_NOT_FOUND', `There is no model '${request.params.id}'; GET /api/models lists them`);
      const { id, outputs, fitted, findings, sources } = runModel(found, request.body);
      const values = Object.entries(outputs).map(([key, { value: computed, low, high, unit }]) => [
        key,
        {
          value: computed === null ? null : plain(computed),
          // An end that is infinite is no end.
          ...(low !== undefined && Number.isFinite(low) ? { low } : {}),
          ...(high !== undefined && Number.isFinite(high) ? { high } : {}),
          unit,
        },
      ]);
      return { id, outputs: Object.fromEntries(values), fitted, findings: [...findings], sources: [...sources] };
    },
  );
};
