import { storeErrorCodes } from '@barwright/store';
import { describe, expect, it } from 'vitest';
import { problemFrom, serverErrorCodes, ServerError } from '../src/errors.js';
import { start } from './server.js';

describe('a refusal', () => {
  it('is a problem document with a code and a sentence', async () => {
    const { app, log } = await start();
    const answer = await app.inject('/api/plants/elsewhere');
    expect(answer.headers['content-type']).toMatch(/^application\/problem\+json/);
    expect(answer.json()).toEqual({
      type: 'about:blank',
      title: 'Not Found',
      status: 404,
      detail: "There is no plant 'elsewhere'",
      code: 'PLANT_NOT_FOUND',
    });
    expect(log).toEqual([]);
  });

  it.each<[string, object, number, string]>([
    ['a body that is not JSON', { payload: '{"a":', headers: { 'content-type': 'application/json' } }, 400, 'BAD_JSON'],
    ['an empty body', { payload: '', headers: { 'content-type': 'application/json' } }, 400, 'BAD_JSON'],
    [
      'a body that would poison objects',
      { payload: '{"__proto__":{"x":1}}', headers: { 'content-type': 'application/json' } },
      400,
      'BAD_JSON',
    ],
    ['a form', { payload: 'a=b', headers: { 'content-type': 'application/x-www-form-urlencoded' } }, 415, 'MEDIA_TYPE'],
    ['plain text', { payload: '{}', headers: { 'content-type': 'text/plain' } }, 415, 'MEDIA_TYPE'],
    ['a body beyond 5 MB', { payload: { a: 'x'.repeat(5 * 1024 * 1024) } }, 413, 'BODY_TOO_LARGE'],
    ['a body of another shape', { payload: { files: [] } }, 400, 'BAD_REQUEST'],
  ])('of %s has its status', async (_, request, status, code) => {
    const { app, log } = await start();
    const answer = await app.inject({ method: 'POST', url: '/api/plants', ...request });
    expect(answer.statusCode).toBe(status);
    expect(answer.json()).toMatchObject({ code, status });
    expect(log).toEqual([]);
  });

  it('names each place of a request that is not as described', async () => {
    const { app } = await start();
    const answer = await app.inject({ method: 'POST', url: '/api/plants', payload: { files: { 'plant.yaml': 3 }, author: 'A' } });
    const { detail, problems } = answer.json<{ detail: string; problems: { place: string }[] }>();
    expect(problems.map((problem) => problem.place)).toEqual(['body.files.plant.yaml', 'body.reason']);
    expect(detail).toMatch(/^body\.files\.plant\.yaml: .*expected string.*\(and 1 more\)$/);
  });

  it.each(['0', '-1', '1.5', 'last', '1e3'])('meets the version number %s', async (number) => {
    const { app } = await start();
    const answer = await app.inject(`/api/plants/p/versions/${number}`);
    expect(answer.json()).toMatchObject({ status: 400, code: 'BAD_REQUEST', detail: expect.stringContaining("'latest'") });
  });

  it('of an unforeseen error tells the client nothing and the log everything', async () => {
    const { app, log } = await start();
    app.get('/api/broken', async () => {
      throw Object.assign(new Error('secret path /home/someone'), { statusCode: 418, expose: true });
    });
    const answer = await app.inject('/api/broken');
    expect(answer.statusCode).toBe(500);
    expect(answer.json()).toMatchObject({ code: 'INTERNAL' });
    expect(answer.body).not.toMatch(/secret|home|at /);
    expect(log.join()).toMatch(/GET \/api\/broken: Error: secret path[^]*errors\.test\.ts/);
  });

  it('of a missing address is one too', async () => {
    const { app } = await start();
    expect((await app.inject('/api/nowhere?x=1')).json()).toMatchObject({
      status: 404,
      code: 'NOT_FOUND',
      detail: expect.stringMatching(/GET \/api\/nowhere$/),
    });
    expect((await app.inject({ method: 'DELETE', url: '/api/plants' })).statusCode).toBe(404);
    expect((await app.inject('/api/%zz')).json()).toMatchObject({ status: 400, code: 'BAD_REQUEST' });
  });
});

describe('every code', () => {
  // Those that stop a start never reach a client; the others must not fall through to 500.
  const atStart = ['STORE_TOO_NEW', 'STORE_UNUSABLE', 'STORE_REFUSED', 'DATA_FOLDER_IN_SOURCE', 'NO_FREE_PORT', 'INTERNAL'];
  it.each([...storeErrorCodes, ...serverErrorCodes].filter((code) => !atStart.includes(code)))('%s has its own status', (code) => {
    const problem = problemFrom(new ServerError(code as never, 'why'));
    expect(problem).toMatchObject({ code, detail: 'why' });
    expect(problem.status).toBeGreaterThanOrEqual(400);
    expect(problem.status).not.toBe(500);
  });

  it('cannot be overwritten by what an error carries along', () => {
    const problem = problemFrom(new ServerError('NOT_FOUND', 'why', { status: 200, code: 'X', extra: 1 }));
    expect(problem).toMatchObject({ status: 404, code: 'NOT_FOUND', extra: 1 });
  });
});
