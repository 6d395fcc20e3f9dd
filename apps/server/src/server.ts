import { resolve } from 'node:path';
import Fastify, { type FastifyInstance, type FastifyReply, type FastifyRequest } from 'fastify';
import type { Store } from '@barwright/store';
import manifest from '../package.json' with { type: 'json' };
import { zodCompilers } from './compilers.js';
import { openDayFiles } from './day-files.js';
import { openDefinitions } from './definitions.js';
import { isUnforeseen, problemFrom, ServerError } from './errors.js';
import { collectEvidence, type Evidence } from './evidence.js';
import { describeApi } from './openapi.js';
import type { Context } from './routes/context.js';
import { routes } from './routes/index.js';
import { secure } from './security.js';
import { isScreen, pathOf, sendPage, serveWeb, type FirstFrame, type Web } from './web.js';

export interface ServerOptions {
  readonly store: Store;
  /** Folder of the built screens; left out: the API alone. */
  readonly webRoot?: string;
  /** Folders of plants: their days are served as they lie there. */
  readonly plants?: readonly string[];
  /** HTML to show before the scripts have run. */
  readonly staticFirstFrame?: FirstFrame;
  /** Names that a browser may call this machine by, without port. */
  readonly allowedHosts?: readonly string[];
  /** Where unforeseen errors go, whole; clients are told nothing of them. */
  readonly log?: (line: string) => void;
}

const loopback = ['localhost', '127.0.0.1', '[::1]'];
const bodyLimit = 5 * 1024 * 1024;

/** The server over an open store, not yet listening. Closing it leaves the store open. */
export async function createServer(options: ServerOptions): Promise<FastifyInstance> {
  const log = options.log ?? ((line: string) => console.error(line));
  const refuse = (error: unknown, request: FastifyRequest, reply: FastifyReply) => {
    if (isUnforeseen(error)) log(`${request.method} ${request.url}: ${describe(error)}`);
    const problem = problemFrom(error);
    // A string passes the response schema by: it is JSON already.
    return reply.code(problem.status).type('application/problem+json').send(JSON.stringify(problem));
  };
  const app = Fastify({
    schemaController: zodCompilers,
    bodyLimit,
    requestTimeout: 30_000,
    forceCloseConnections: 'idle',
    frameworkErrors: (error, request, reply) => void refuse(error, request, reply),
  });
  // A form of another site can send text; nothing here reads it.
  app.removeContentTypeParser('text/plain');
  secure(app, options.allowedHosts ?? loopback);

  app.setErrorHandler(refuse);

  const web: Web | undefined =
    options.webRoot === undefined
      ? undefined
      : { root: resolve(options.webRoot), log, ...(options.staticFirstFrame ? { firstFrame: options.staticFirstFrame } : {}) };
  app.setNotFoundHandler(async (request, reply) => {
    if (web && isScreen(request)) return sendPage(web, request, reply);
    throw new ServerError('NOT_FOUND', `There is nothing at ${request.method} ${pathOf(request)}`);
  });

  const context = contextOf(options.store, options.plants ?? []);
  const register = (to: FastifyInstance) => registerRoutes(to, context);
  await register(app);
  let document: Promise<object> | undefined;
  app.get('/api/openapi.json', async () => (document ??= describeApi(register, manifest.version)));
  if (web) await serveWeb(app, web);
  return app;
}

async function registerRoutes(app: FastifyInstance, context: Context): Promise<void> {
  for (const topic of routes) await app.register(topic, { ...context, prefix: '/api' });
}

function contextOf(store: Store, plants: readonly string[]): Context {
  let evidence: Promise<Evidence> | undefined;
  return {
    store,
    definitions: openDefinitions(store),
    dayFiles: openDayFiles(plants),
    evidence: () => (evidence ??= collectEvidence()),
    version: manifest.version,
  };
}

function describe(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  const cause = error.cause instanceof Error ? `\ncaused by ${error.cause.stack ?? error.cause.message}` : '';
  return `${error.stack ?? error.message}${cause}`;
}
