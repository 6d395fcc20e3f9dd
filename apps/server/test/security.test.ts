import { describe, expect, it } from 'vitest';
import { inlineHashes } from '../src/security.js';
import { start } from './server.js';

describe('every answer', () => {
  it.each(['/api/health', '/api/nothing', '/'])('of %s carries the headers', async (url) => {
    const { app } = await start();
    const { headers } = await app.inject(url);
    const policy = String(headers['content-security-policy']);
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self';");
    expect(policy).not.toMatch(/unsafe/);
    expect(headers).toMatchObject({
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
      'x-frame-options': 'SAMEORIGIN',
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-resource-policy': 'same-origin',
      'cache-control': 'no-store',
    });
    expect(headers).not.toHaveProperty('x-powered-by');
    expect(headers).not.toHaveProperty('access-control-allow-origin');
  });
});

describe('a request', () => {
  it.each(['localhost', 'localhost:4820', '127.0.0.1:9', '[::1]:4820', 'LOCALHOST'])('for %s is answered', async (host) => {
    const { app } = await start();
    expect((await app.inject({ url: '/api/health', headers: { host } })).statusCode).toBe(200);
  });

  // A page anywhere may let its own name point at this machine.
  it.each(['evil.example', 'localhost.evil.example:4820', '127.0.0.1.evil.example'])('for the host %j is turned away', async (host) => {
    const { app } = await start();
    const answer = await app.inject({ url: '/api/health', headers: { host } });
    expect(answer.statusCode).toBe(421);
    expect(answer.json()).toMatchObject({ code: 'HOST_NOT_ALLOWED', status: 421 });
  });

  it.each([
    [{ origin: 'https://evil.example' }],
    [{ origin: 'null' }],
    [{ origin: 'http://localhost:1' }],
    [{ 'sec-fetch-site': 'cross-site' }],
  ])('that would change something from %j is turned away', async (foreign) => {
    const { app } = await start();
    const headers = { host: 'localhost:4820', ...foreign };
    const answer = await app.inject({ method: 'POST', url: '/api/models/x', headers, payload: {} });
    expect(answer.statusCode).toBe(403);
    expect(answer.json()).toMatchObject({ code: 'ORIGIN_NOT_ALLOWED' });
  });

  it('from our own page passes', async () => {
    const { app } = await start();
    const headers = { host: 'localhost:4820', origin: 'http://localhost:4820', 'sec-fetch-site': 'same-origin' };
    const answer = await app.inject({ method: 'POST', url: '/api/models/x', headers, payload: {} });
    expect(answer.json()).toMatchObject({ code: 'MODEL_NOT_FOUND' });
  });
});

describe('inlineHashes', () => {
  it('hashes what is written inline and passes by what is loaded', () => {
    const html = '<style>a{}</style><script src="/a.js"></script><script type="module">1</script><style>a{}</style>';
    // SHA-256 of "1" in base64, as the policy writes it.
    expect(inlineHashes(html, 'script')).toEqual(["'sha256-a4ayc/80/OGda4BO/1o/V0etpOqiLx1JwB5S3beHW0s='"]);
    expect(inlineHashes(html, 'style')).toHaveLength(1);
  });
});
