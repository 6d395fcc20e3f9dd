import type { Session } from '@barwright/chain';
import type { PlantChain } from '@barwright/line';
import { z } from 'zod';
import { ServerError } from '../errors.js';
import { contentPolicy, inlineHashes } from '../security.js';
import type { Context, Routes } from './context.js';
import { refusals, versionParams } from './schemas.js';

const query = z.object({
  bar: z.string().max(200).optional().describe('Name of the bar; left out: that of the plan'),
  units: z.enum(['metric', 'us']).default('metric').describe('Units to read'),
});
const page = z.string().describe('The run sheet as one HTML page without scripts');
const sheet = z
  .looseObject({ plant: z.string(), bar: z.string(), quantities: z.record(z.string(), z.unknown()) })
  .describe('Every quantity by id, with value, unit, origin and window');

/** Papers of one version: the sheet as data, the run sheet as a page and as PDF. */
export const paperRoutes: Routes = async (app, context) => {
  const path = '/plants/:plant/versions/:number';
  app.get(
    `${path}/sheet`,
    {
      schema: {
        tags: ['papers'],
        summary: 'The sheet of one bar on its line',
        params: versionParams,
        querystring: query,
        response: { 200: sheet, ...refusals },
      },
    },
    async (request) => {
      const { from, session } = await open(context, request.params, request.query.bar);
      const { wholeSheet } = await import('@barwright/line');
      return { ...wholeSheet(from, session, request.query.units) };
    },
  );

  app.get(
    `${path}/run-sheet.html`,
    {
      schema: {
        tags: ['papers'],
        summary: 'The run sheet as a page',
        params: versionParams,
        querystring: query,
        response: { 200: page, ...refusals },
      },
    },
    async (request, reply) => {
      const { from, session, version } = await open(context, request.params, request.query.bar);
      const { runSheetHtml } = await import('@barwright/paper');
      const html = runSheetHtml(from, session, { version, units: request.query.units });
      reply.header('content-security-policy', contentPolicy({ styles: inlineHashes(html, 'style') })).type('text/html; charset=utf-8');
      return reply.send(html as never);
    },
  );

  app.get(
    `${path}/run-sheet.pdf`,
    {
      schema: {
        tags: ['papers'],
        summary: 'The run sheet as PDF, A4',
        params: versionParams,
        querystring: query,
        response: { 200: z.string().describe('A PDF file'), ...refusals },
      },
    },
    async (request, reply) => {
      const { from, session, version } = await open(context, request.params, request.query.bar);
      const { runSheetPdf } = await import('@barwright/paper');
      const pdf = await runSheetPdf(from, session, { version, units: request.query.units });
      const name = `run-sheet-${from.bar.slug}-version-${request.params.number}.pdf`;
      reply.header('content-disposition', `inline; filename="${name}"`).type('application/pdf');
      return reply.send(pdf as never);
    },
  );
};

interface Opened {
  readonly from: PlantChain;
  readonly session: Session;
  readonly version: string;
}

async function open(
  { definitions }: Context,
  params: { readonly plant: string; readonly number: number | 'latest' },
  bar: string | undefined,
): Promise<Opened> {
  const { version, loaded } = await definitions.get(params.plant, params.number);
  if (!loaded.ok)
    throw new ServerError('DEFINITION_INVALID', `Version ${version.number} does not load: ${loaded.problems[0]!.message}`, {
      problems: loaded.problems,
    });
  const [{ plantChain }, { Session: Engine }] = await Promise.all([import('@barwright/line'), import('@barwright/chain')]);
  const from = plantChain(loaded.plant, bar); // throws UNKNOWN_BAR with the names there are
  const saved = version.createdAt.slice(0, 16).replace('T', ' ');
  return { from, session: new Engine(from.chain), version: `version ${version.number}, saved ${saved} UTC by ${version.author}` };
}
