import { mkdirSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { firstFramePlaceholder, noncePlaceholder } from '../src/index.js';
import { inlineHashes } from '../src/security.js';
import { emptyFolder, start } from './server.js';

const script = 'console.log("a".repeat(9))\n'.repeat(40);

function built(): string {
  const root = emptyFolder();
  mkdirSync(join(root, 'assets'));
  writeFileSync(
    join(root, 'index.html'),
    `<!doctype html><meta property="csp-nonce" nonce="${noncePlaceholder}"><style>b{}</style><script>inline()</script><div id="root">${firstFramePlaceholder}</div>`,
  );
  const path = join(root, 'assets', 'index-Dk3x_9aB.js');
  writeFileSync(path, script);
  writeFileSync(`${path}.br`, brotliCompressSync(script));
  writeFileSync(`${path}.gz`, gzipSync(script));
  writeFileSync(join(root, 'favicon.svg'), '<svg/>');
  writeFileSync(join(root, '.secret'), 'no');
  return root;
}
const asset = '/assets/index-Dk3x_9aB.js';

describe('the page', () => {
  it.each(['/', '/pellamoor', '/pellamoor/section?bar=kestrowan'])('answers %s', async (url) => {
    const { app } = await start({ webRoot: built() });
    const answer = await app.inject({ url, headers: { accept: 'text/html' } });
    expect(answer.statusCode).toBe(200);
    expect(answer.headers['content-type']).toBe('text/html; charset=utf-8');
    expect(answer.body).toContain('<div id="root"></div>');
  });

  it('has a fresh nonce each time, and a policy that admits its own inline blocks only', async () => {
    const { app } = await start({ webRoot: built() });
    const nonces = new Set<string>();
    for (let i = 0; i < 3; i++) {
      const { body, headers } = await app.inject('/');
      const nonce = /nonce="([^"]+)"/.exec(body)![1]!;
      const policy = String(headers['content-security-policy']);
      expect(policy).toContain(`'nonce-${nonce}'`);
      expect(policy).toMatch(/style-src 'self' 'nonce-[^']+' 'sha256-[^']+';/);
      expect(policy).toMatch(/script-src 'self' 'sha256-[^']+';/);
      expect(policy).not.toMatch(/unsafe/);
      expect(headers['cache-control']).toBe('no-store');
      nonces.add(nonce);
    }
    expect(nonces.size).toBe(3);
  });

  it.each(['/', '/pellamoor/kestrowan/section'])('at %s has every header of the house but the opener policy', async (url) => {
    const { app } = await start({ webRoot: built() });
    const { headers } = await app.inject({ url, headers: { accept: 'text/html' } });
    expect(headers).toMatchObject({
      'x-content-type-options': 'nosniff',
      'x-frame-options': 'SAMEORIGIN',
      'referrer-policy': 'no-referrer',
      'cross-origin-resource-policy': 'same-origin',
      'cross-origin-opener-policy': 'unsafe-none',
    });
    expect(String(headers['content-security-policy'])).toContain("frame-ancestors 'self'");
    expect((await app.inject(asset)).headers['cross-origin-opener-policy']).toBe('same-origin');
  });

  it.each([
    ['barwright_theme=night', true],
    ['other=1; barwright_theme=night; more=2', true],
    ['barwright_theme=day', false],
    ['my_barwright_theme=night', false],
    ['', false],
  ])('comes by night to the cookie ‘%s’: %s', async (cookie, night) => {
    const root = built();
    writeFileSync(join(root, 'index.html'), '<!doctype html><html lang="en"><p>page</p></html>');
    const { app } = await start({ webRoot: root });
    const { body } = await app.inject({ url: '/', headers: { accept: 'text/html', cookie } });
    expect(body.includes('<html lang="en" data-theme="night">')).toBe(night);
  });

  it('is not given to a request for another host', async () => {
    const { app } = await start({ webRoot: built() });
    const answer = await app.inject({ url: '/pellamoor', headers: { accept: 'text/html', host: 'evil.example' } });
    expect(answer.statusCode).toBe(421);
  });

  it('is read again when it has been built anew', async () => {
    const root = built();
    const { app } = await start({ webRoot: root });
    expect((await app.inject('/')).body).not.toContain('built anew');
    writeFileSync(join(root, 'index.html'), '<!doctype html><p>built anew</p><script>other()</script>');
    const { body, headers } = await app.inject('/');
    expect(body).toContain('built anew');
    expect(String(headers['content-security-policy'])).toContain(inlineHashes('<script>other()</script>', 'script')[0]);
  });

  it('shows the first frame of its path, and comes without it when that fails', async () => {
    const staticFirstFrame = (path: string) => {
      if (path === '/broken') throw new Error('no frame');
      return `<main>$& ${path}</main>`;
    };
    const { app, log } = await start({ webRoot: built(), staticFirstFrame });
    const page = async (url: string) => (await app.inject({ url, headers: { accept: 'text/html' } })).body;
    expect(await page('/pellamoor?x')).toContain('<div id="root"><main>$& /pellamoor</main></div>');
    expect(await page('/broken')).toContain('<div id="root"></div>');
    expect(log.join()).toContain('no frame');
  });

  it('is found in a folder given from where the program runs', async () => {
    const { app } = await start({ webRoot: relative(process.cwd(), built()) });
    expect((await app.inject('/')).statusCode).toBe(200);
  });

  it('says how to build it when it is not there', async () => {
    const { app } = await start({ webRoot: emptyFolder() });
    expect((await app.inject('/')).json()).toMatchObject({
      status: 503,
      code: 'WEB_NOT_BUILT',
      detail: expect.stringContaining('npm run build'),
    });
    const none = await start({ webRoot: join(emptyFolder(), 'missing') });
    expect((await none.app.inject('/')).statusCode).toBe(503);
    expect((await none.app.inject('/api/health')).statusCode).toBe(200);
  });
});

describe('a file', () => {
  it.each([
    ['br, gzip', 'br'],
    ['gzip', 'gzip'],
    ['identity', undefined],
  ])('goes out as the browser accepts it: %s', async (accepted, encoding) => {
    const { app } = await start({ webRoot: built() });
    const { statusCode, headers, rawPayload } = await app.inject({ url: asset, headers: { 'accept-encoding': accepted } });
    expect(statusCode).toBe(200);
    expect(headers['content-encoding']).toBe(encoding);
    expect(headers['content-type']).toMatch(/javascript/);
    const expected = encoding === 'br' ? brotliCompressSync(script) : encoding === 'gzip' ? gzipSync(script) : Buffer.from(script);
    expect(rawPayload.equals(expected)).toBe(true);
    expect(headers['cache-control']).toBe('public, max-age=31536000, immutable');
    expect(headers['x-content-type-options']).toBe('nosniff');
  });

  it('without a hash in its name is asked for again each time', async () => {
    const { app } = await start({ webRoot: built() });
    const { headers } = await app.inject('/favicon.svg');
    expect(headers['cache-control']).toBe('no-cache');
    const again = await app.inject({ url: '/favicon.svg', headers: { 'if-none-match': String(headers.etag) } });
    expect(again.statusCode).toBe(304);
  });

  it.each(['/assets/gone-12345678.js', '/.secret', '/index.html', '/..%2f..%2fetc%2fpasswd', '/assets/', '/%00'])(
    'that is none is not found: %s',
    async (url) => {
      const { app, log } = await start({ webRoot: built() });
      const answer = await app.inject({ url, headers: { accept: 'application/json' } });
      expect(log).toEqual([]);
      expect([400, 403, 404]).toContain(answer.statusCode);
      expect(answer.headers['content-type']).toMatch(/^application\/problem\+json/);
      expect(log).toEqual([]);
    },
  );

  it('missing is never answered with the page, nor is the API', async () => {
    const { app } = await start({ webRoot: built() });
    for (const url of ['/assets/gone-12345678.js', '/api/gone', '/api']) {
      expect((await app.inject({ url, headers: { accept: 'text/html' } })).statusCode).toBe(404);
    }
  });
});
