import { getVersion, insertVersion, listVersions } from '@barwright/store';
import { z } from 'zod';
import { editedFiles, requirePlantFiles } from '../load.js';
import type { Routes } from './context.js';
import { author, definitionProblem, files, plantParams, reason, refusals, versionInfo, versionParams } from './schemas.js';

const version = versionInfo.extend({
  files,
  intact: z.boolean().describe('False where the files no longer match the hash they were saved with'),
});
const edit = z.object({
  file: z.string().max(200).describe('Path of the file'),
  path: z
    .array(z.union([z.string().max(200), z.int().min(0)]))
    .min(1)
    .max(20)
    .describe('Keys and list places from the top of the file to the value'),
  value: z.string().max(2000).describe("What to write there, as a person would: '9.3 % ± 0.4 %'"),
});
const newVersion = z
  .strictObject({
    basedOn: z.int().min(1).describe('The version in front of the author'),
    author,
    reason,
    edits: z.array(edit).min(1).max(500).optional().describe('Single values; the rest of the text stays as it was'),
    files: files.optional(),
  })
  .refine((body) => (body.edits === undefined) !== (body.files === undefined), "exactly one of 'edits' and 'files' is expected");
const saved = z.object({ version: versionInfo, notes: z.array(definitionProblem) });
const definition = z
  .looseObject({ version: z.looseObject({ plant: z.string(), number: z.int() }), ok: z.boolean() })
  .describe("With ok true: 'plant' and 'notes', maps as lists of entries; with ok false: 'problems'");

/** The saved states of a plant. */
export const versionRoutes: Routes = async (app, { store, definitions }) => {
  app.get(
    '/plants/:plant/versions',
    {
      schema: {
        tags: ['versions'],
        summary: 'Every version, newest first',
        params: plantParams,
        response: { 200: z.array(versionInfo), ...refusals },
      },
    },
    async (request) => listVersions(store, request.params.plant),
  );

  app.get(
    '/plants/:plant/versions/:number',
    {
      schema: { tags: ['versions'], summary: 'One version with its files', params: versionParams, response: { 200: version, ...refusals } },
    },
    async (request) => {
      const { files: texts, ...info } = await getVersion(store, request.params.plant, request.params.number);
      return { ...info, files: Object.fromEntries(texts) };
    },
  );

  app.get(
    '/plants/:plant/versions/:number/definition',
    {
      schema: {
        tags: ['versions'],
        summary: 'One version as the loader reads it',
        description: 'For programs without a YAML parser: `decodeLoaded` turns it back. Answers 304 to a matching If-None-Match.',
        params: versionParams,
        response: { 200: definition, 304: z.undefined().describe('As the ETag that came'), ...refusals },
      },
    },
    async (request, reply) => {
      const found = await definitions.get(request.params.plant, request.params.number);
      const { text, etag } = await found.json();
      reply.header('etag', etag).header('cache-control', 'private, no-cache').type('application/json; charset=utf-8');
      if (request.headers['if-none-match'] === etag) return reply.code(304).send();
      // Already JSON: passed on as it is, past the schema.
      return reply.send(text as never);
    },
  );

  app.post(
    '/plants/:plant/versions',
    {
      schema: {
        tags: ['versions'],
        summary: 'Saves a new version on top of the latest',
        description:
          'Refused with CONFLICT where `basedOn` is not the latest version any more, and with DEFINITION_INVALID and every problem where the files do not load. The same save sent twice is stored once.',
        params: plantParams,
        body: newVersion,
        response: { 201: saved, ...refusals },
      },
    },
    async (request, reply) => {
      const { plant: key } = request.params;
      const { basedOn, author, reason, edits = [], files: texts } = request.body;
      const wanted = texts ? new Map(Object.entries(texts)) : await editedFiles((await getVersion(store, key, basedOn)).files, edits);
      const { plant, notes } = await requirePlantFiles(wanted);
      const info = await insertVersion(store, key, { basedOn, files: wanted, author, reason, name: plant.name });
      return reply
        .code(201)
        .header('location', `/api/plants/${key}/versions/${info.number}`)
        .send({ version: info, notes: [...notes] });
    },
  );
};
