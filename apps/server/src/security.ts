import { createHash, randomBytes } from 'node:crypto';
import type { FastifyInstance } from 'fastify';
import { ServerError } from './errors.js';

/** Stands in `index.html` wherever a nonce is wanted; each answer gets a fresh one. */
export const noncePlaceholder = '__csp_nonce__';

export const freshNonce = (): string => randomBytes(16).toString('base64');

/** What a page of ours may load: its own files, and inline blocks only by nonce or hash. Nothing is evaluated. */
export function contentPolicy(allow: { readonly styles?: readonly string[]; readonly scripts?: readonly string[] } = {}): string {
  const list = (name: string, ...values: readonly string[]): string => [name, ...values].join(' ');
  return [
    list('default-src', "'none'"),
    list('script-src', "'self'", ...(allow.scripts ?? [])),
    list('style-src', "'self'", ...(allow.styles ?? [])),
    list('img-src', "'self'", 'data:', 'blob:'),
    list('font-src', "'self'"),
    list('connect-src', "'self'"),
    list('worker-src', "'self'"),
    list('manifest-src', "'self'"),
    list('frame-src', "'self'", 'blob:'),
    list('base-uri', "'none'"),
    list('form-action', "'self'"),
    list('frame-ancestors', "'self'"),
  ].join('; ');
}

/** Hash sources of the inline blocks of a page: `<style>` or `<script>` without a `src`. */
export function inlineHashes(html: string, element: 'style' | 'script'): string[] {
  const blocks = html.matchAll(new RegExp(`<${element}(?![^>]*\\ssrc=)[^>]*>([\\s\\S]*?)</${element}>`, 'gi'));
  const hashes = [...blocks].map(([, text = '']) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`);
  return [...new Set(hashes)];
}

const headers: Readonly<Record<string, string>> = {
  'content-security-policy': contentPolicy(),
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'SAMEORIGIN',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(), geolocation=(), microphone=(), payment=()',
  'cache-control': 'no-store',
};

/**
 * Puts the headers on every answer that does not bring its own, and turns away requests meant for another host or sent by
 * a page of another origin: the server listens on this machine only, and any page in the browser could try to reach it.
 */
export function secure(app: FastifyInstance, allowedHosts: readonly string[]): void {
  app.addHook('onSend', async (_request, reply) => {
    for (const [name, value] of Object.entries(headers)) if (!reply.hasHeader(name)) reply.header(name, value);
  });
  app.addHook('onRequest', async (request) => {
    const host = request.headers.host ?? '';
    const name = host.replace(/:\d+$/, '').toLowerCase();
    if (!allowedHosts.includes(name)) {
      throw new ServerError('HOST_NOT_ALLOWED', `This server answers to ${allowedHosts.join(', ')}, not to '${host}'`);
    }
    if (request.method === 'GET' || request.method === 'HEAD') return;
    const { origin } = request.headers;
    const foreign = origin !== undefined && origin !== `http://${host}` && origin !== `https://${host}`;
    if (foreign || request.headers['sec-fetch-site'] === 'cross-site') {
      throw new ServerError('ORIGIN_NOT_ALLOWED', `A page of ${origin ?? 'another site'} may not change anything here`);
    }
  });
}
