import { readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { ServerError } from './errors.js';
import { contentPolicy, freshNonce, inlineHashes, noncePlaceholder } from './security.js';

/** Stands in `index.html` where the first frame goes: inside the root element. */
export const firstFramePlaceholder = '<!--first-frame-->';

/** HTML to show before the scripts have run, for a path such as '/pellamoor'; undefined: nothing. */
export type FirstFrame = (path: string) => Promise<string | undefined> | string | undefined;

export interface Web {
  /** Folder with `index.html` and hashed files under `assets/`, each perhaps with a `.br` or `.gz` beside it. */
  readonly root: string;
  readonly firstFrame?: FirstFrame;
  readonly log: (line: string) => void;
}

/** The screens: files as they are, and `index.html` for every path that a screen may have. */
export async function serveWeb(app: FastifyInstance, web: Web): Promise<void> {
  await app.register(async (files) => {
    // A screen is no file: it is answered before the folder is searched for it.
    files.addHook('onRequest', async (request, reply) => {
      if (isScreen(request)) return reply.send(await sendPage(web, request, reply));
    });
    // A folder, a path that leaves the root or one with odd bytes: for the client there is nothing there.
    files.setErrorHandler<{ status?: number }>((error, request) => {
      if ((error.status ?? 500) < 500) throw new ServerError('NOT_FOUND', `There is nothing at ${request.method} ${pathOf(request)}`);
      throw error;
    });
    await files.register(fastifyStatic, {
      root: web.root,
      index: false,
      dotfiles: 'ignore',
      preCompressed: true,
      cacheControl: false,
      allowedPath: (path) => !path.endsWith('.html'),
      setHeaders: (response, path) => {
        const hashed = /[\\/]assets[\\/][^\\/]+-[\w-]{8,}\.\w+(\.br|\.gz)?$/.test(path);
        response.setHeader('cache-control', hashed ? 'public, max-age=31536000, immutable' : 'no-cache');
        // A worker takes the policy of its own file. It alone may compile the optimiser; the page may compile nothing.
        if (/[\\/]worker-[\w-]+\.js(\.br|\.gz)?$/.test(path)) response.setHeader('content-security-policy', workerPolicy);
      },
    });
  });
  app.get('/', (request, reply) => sendPage(web, request, reply));
}

const workerPolicy = contentPolicy({ scripts: ["'wasm-unsafe-eval'"] });

/** True for a path that a person may open: not the API, and not a file that is missing. */
export function isScreen(request: FastifyRequest): boolean {
  const path = pathOf(request);
  const accepts = request.headers.accept ?? '';
  const reads = request.method === 'GET' || request.method === 'HEAD';
  return reads && !/^\/api(\/|$)/.test(path) && !/\.[^/]*$/.test(path) && /text\/html|\*\/\*/.test(accepts);
}

/**
 * `index.html` with a fresh nonce, the first frame, and a policy that admits exactly its inline blocks.
 * The page alone leaves the opener policy at its default: the browser would start another process before it paints.
 */
export async function sendPage(web: Web, request: FastifyRequest, reply: FastifyReply): Promise<string> {
  const nonce = freshNonce();
  const [{ raw, scripts }, frame] = await Promise.all([builtPage(web.root), firstFrameOf(web, pathOf(request))]);
  const html = raw
    .replaceAll(noncePlaceholder, nonce)
    .replace(firstFramePlaceholder, () => frame)
    .replace('<html lang="en"', byNight(request) ? '<html lang="en" data-theme="night"' : '<html lang="en"');
  reply.type('text/html; charset=utf-8').header('cache-control', 'no-store').header('cross-origin-opener-policy', 'unsafe-none');
  reply.header('content-security-policy', contentPolicy({ styles: [`'nonce-${nonce}'`, ...inlineHashes(html, 'style')], scripts }));
  return html;
}

/** Whether the person chose the night on this device. */
function byNight(request: FastifyRequest): boolean {
  return /(?:^|;\s*)barwright_theme=night(?:;|$)/.test(request.headers.cookie ?? '');
}

interface BuiltPage {
  readonly raw: string;
  /** Hash sources of its own inline scripts; a first frame brings none. */
  readonly scripts: readonly string[];
  readonly stamp: string;
}

const built = new Map<string, BuiltPage>();

/** The page as it was built, read again only when it has been built anew. */
async function builtPage(root: string): Promise<BuiltPage> {
  const path = join(root, 'index.html');
  try {
    const { mtimeMs, size } = await stat(path);
    const stamp = `${mtimeMs} ${size}`;
    const known = built.get(path);
    if (known?.stamp === stamp) return known;
    const raw = await readFile(path, 'utf8');
    const page = { raw, scripts: inlineHashes(raw, 'script'), stamp };
    built.set(path, page);
    return page;
  } catch {
    throw new ServerError('WEB_NOT_BUILT', 'The screens have not been built; run `npm run build` once');
  }
}

/** A first frame that fails costs the first frame, not the page. */
async function firstFrameOf(web: Web, path: string): Promise<string> {
  try {
    return (await web.firstFrame?.(path)) ?? '';
  } catch (error) {
    web.log(`The first frame of ${path} failed: ${(error as Error).stack ?? String(error)}`);
    return '';
  }
}

/** Without query. */
export function pathOf(request: FastifyRequest): string {
  return request.url.replace(/[?#].*$/, '');
}
