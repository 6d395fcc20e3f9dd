import { fileURLToPath } from 'node:url';
import { loadPlant } from '@barwright/plant';
import { readPlantFolder } from '@barwright/plant/node';
import { getVersion, verifyHistory } from '@barwright/store';
import { describe, expect, it } from 'vitest';
import { decodeLoaded, type WireLoaded } from '@barwright/plant/wire';
import { start, type Running } from './server.js';

const thornby = await readPlantFolder(fileURLToPath(new URL('./fixtures/thornby', import.meta.url)));
const files = Object.fromEntries(thornby);
const who = { author: 'I. Marren', reason: 'first import' };
const bar = 'bars/plainbar.yaml';

interface Answer<T> {
  readonly status: number;
  readonly body: T;
}

async function get<T = Record<string, unknown>>({ app }: Running, url: string): Promise<Answer<T>> {
  const answer = await app.inject(url);
  return { status: answer.statusCode, body: answer.json<T>() };
}

async function post<T = Record<string, unknown>>({ app }: Running, url: string, payload: object): Promise<Answer<T>> {
  const answer = await app.inject({ method: 'POST', url, payload });
  return { status: answer.statusCode, body: answer.json<T>() };
}

async function withPlant(): Promise<Running> {
  const running = await start();
  const { status, body } = await post(running, '/api/plants', { id: 'thornby', files, ...who });
  expect(status, JSON.stringify(body)).toBe(201);
  return running;
}

const changed = (from: string, to: string) => ({ ...files, [bar]: files[bar]!.replace(from, to) });

describe('POST /api/plants', () => {
  it('adds a plant, named by its files, and gives the notes of the loader', async () => {
    const running = await start();
    const answer = await running.app.inject({ method: 'POST', url: '/api/plants', payload: { files, ...who } });
    expect(answer.statusCode).toBe(201);
    expect(answer.headers.location).toBe('/api/plants/thornby-sweets');
    expect(answer.json()).toMatchObject({
      version: { plant: 'thornby-sweets', name: 'Thornby Sweets', number: 1, basedOn: null, ...who },
      notes: [{ code: 'NO_PRICE', file: 'materials.yaml' }, { code: 'NO_PRICE' }],
    });
    expect((await getVersion(running.store, 'thornby-sweets', 1)).files).toEqual(new Map([...thornby].sort()));
  });

  it('refuses files that do not load, with every problem, and stores nothing', async () => {
    const running = await start();
    const broken = { ...changed('nominal: 30 g', 'nominal: 30 furlongs'), 'plant.yaml': files['plant.yaml']!.replace('EUR', 'EURO') };
    const { status, body } = await post<{ code: string; detail: string; problems: { file: string; line: number }[] }>(
      running,
      '/api/plants',
      { files: broken, ...who },
    );
    expect(status).toBe(422);
    expect(body.code).toBe('DEFINITION_INVALID');
    expect(body.problems.map((problem) => problem.file)).toEqual(expect.arrayContaining([bar, 'plant.yaml']));
    expect(body.problems.find((problem) => problem.file === bar)!.line).toBe(5);
    expect(body.detail).toContain(`${bar}:5: `);
    expect((await get(running, '/api/plants')).body).toEqual([]);
  });

  it.each([
    [{ ...files, 'notes.txt': 'x' }, 422, 'DEFINITION_INVALID'],
    [{}, 422, 'DEFINITION_INVALID'],
    [{ ...files, 'bars/../../escape.yaml': files[bar]! }, 422, 'DEFINITION_INVALID'],
  ])('refuses other files', async (given, status, code) => {
    const running = await start();
    expect(await post(running, '/api/plants', { files: given, ...who })).toMatchObject({ status, body: { code } });
  });

  it('refuses a key that is taken, and one that is none', async () => {
    const running = await withPlant();
    expect(await post(running, '/api/plants', { id: 'thornby', files, ...who })).toMatchObject({
      status: 409,
      body: { code: 'PLANT_EXISTS' },
    });
    expect(await post(running, '/api/plants', { id: 'No Key', files, ...who })).toMatchObject({ status: 400, body: { code: 'BAD_ENTRY' } });
    expect(await post(running, '/api/plants', { id: 'other', files, author: ' ', reason: 'x' })).toMatchObject({
      status: 400,
      body: { code: 'BAD_ENTRY' },
    });
  });
});

describe('GET /api/plants', () => {
  it('lists the plants, and of one its bars and lines', async () => {
    const running = await withPlant();
    const list = await get<object[]>(running, '/api/plants');
    expect(list.body).toEqual([{ id: 'thornby', name: 'Thornby Sweets', latest: 1, savedAt: expect.stringMatching(/^\d{4}-.*Z$/) }]);
    expect((await get(running, '/api/plants/thornby')).body).toEqual({
      ...list.body[0],
      ok: true,
      bars: [{ name: 'Plainbar', slug: 'plainbar', format: '30 g single bar', line: 'Line 1' }],
      lines: [{ name: 'Line 1', slug: expect.any(String) }],
    });
  });
});

describe('versions', () => {
  it('are listed newest first and given with their files', async () => {
    const running = await withPlant();
    const files2 = changed('target: 30 g ', 'target: 31 g ');
    const saved = await post<{ version: object }>(running, '/api/plants/thornby/versions', {
      basedOn: 1,
      files: files2,
      author: 'J. Osk',
      reason: 'heavier',
    });
    expect(saved).toMatchObject({ status: 201, body: { version: { number: 2, basedOn: 1, author: 'J. Osk', reason: 'heavier' } } });
    const list = await get<{ number: number }[]>(running, '/api/plants/thornby/versions');
    expect(list.body.map((version) => version.number)).toEqual([2, 1]);
    expect(list.body[0]).toEqual(saved.body.version);
    const latest = await get(running, '/api/plants/thornby/versions/latest');
    expect(latest.body).toEqual({ ...saved.body.version, files: files2, intact: true });
    expect((await get(running, '/api/plants/thornby/versions/1')).body).toMatchObject({ number: 1, files });
    expect(await get(running, '/api/plants/thornby/versions/3')).toMatchObject({ status: 404, body: { code: 'VERSION_NOT_FOUND' } });
    expect(await get(running, '/api/plants/thornbee/versions')).toMatchObject({ status: 404, body: { code: 'PLANT_NOT_FOUND' } });
  });

  it('take single values and leave the rest of the text to the letter', async () => {
    const running = await withPlant();
    const url = '/api/plants/thornby/versions';
    const send = (edit: object) => post(running, url, { basedOn: 1, edits: [edit], author: 'J. Osk', reason: 'heavier' });
    expect(await send({ file: bar, path: ['bar', 'target'], value: '31 g' })).toMatchObject({
      status: 201,
      body: { version: { number: 2 } },
    });
    const { body } = await get<{ files: Record<string, string> }>(running, `${url}/latest`);
    expect(body.files).toEqual(changed('target: 30 g ', 'target: 31 g '));
    expect((await get(running, `${url}/latest/definition`)).body).toMatchObject({
      plant: { bars: [['Plainbar', { target: { value: 0.031, text: '31 g' } }]] },
    });
  });

  it('refuse an edit of what is not there, and one that cannot be', async () => {
    const running = await withPlant();
    const send = (edit: object) => post(running, '/api/plants/thornby/versions', { basedOn: 1, edits: [edit], ...who });
    expect(await send({ file: 'bars/other.yaml', path: ['bar'], value: '1 g' })).toMatchObject({
      status: 400,
      body: { code: 'EDIT_ERROR' },
    });
    expect(await send({ file: bar, path: ['bar', 'soul', 'weight'], value: '21 g' })).toMatchObject({
      status: 400,
      body: { code: 'EDIT_ERROR' },
    });
    expect(await send({ file: bar, path: ['bar', 'target'], value: '31 °C' })).toMatchObject({
      status: 422,
      body: { code: 'DEFINITION_INVALID', problems: [{ file: bar, line: 6 }] },
    });
    expect(await send({ file: bar, path: [], value: '1 g' })).toMatchObject({ status: 400, body: { code: 'BAD_REQUEST' } });
    expect((await get<object[]>(running, '/api/plants/thornby/versions')).body).toHaveLength(1);
  });

  it('are refused with the newer one when somebody was faster, and nothing is lost', async () => {
    const running = await withPlant();
    const url = '/api/plants/thornby/versions';
    await post(running, url, { basedOn: 1, files: changed('30 g ', '31 g '), author: 'J. Osk', reason: 'heavier' });
    const late = await post(running, url, { basedOn: 1, files: changed('30 g ', '32 g '), author: 'K. Late', reason: 'heaviest' });
    expect(late).toMatchObject({
      status: 409,
      body: {
        code: 'CONFLICT',
        newer: { number: 2, author: 'J. Osk', reason: 'heavier' },
        detail: expect.stringContaining('J. Osk has saved version 2'),
      },
    });
    const again = await post(running, url, { basedOn: 2, files: changed('30 g ', '32 g '), author: 'K. Late', reason: 'heaviest' });
    expect(again).toMatchObject({ status: 201, body: { version: { number: 3 } } });
    expect(await verifyHistory(running.store)).toEqual([]);
    expect((await get(running, '/api/history')).body).toEqual({ intact: true, findings: [] });
  });

  it('are stored once when sent twice', async () => {
    const running = await withPlant();
    const save = { basedOn: 1, files: changed('30 g ', '31 g '), author: 'J. Osk', reason: 'heavier' };
    const first = await post(running, '/api/plants/thornby/versions', save);
    expect(await post(running, '/api/plants/thornby/versions', save)).toEqual(first);
    expect((await get<object[]>(running, '/api/plants/thornby/versions')).body).toHaveLength(2);
  });

  it('are refused when nothing changed, when they do not load, and when the request is half', async () => {
    const running = await withPlant();
    const send = (body: object) => post(running, '/api/plants/thornby/versions', { basedOn: 1, ...who, ...body });
    expect(await send({ files })).toMatchObject({ status: 409, body: { code: 'UNCHANGED' } });
    expect(await send({ files: changed('Line 1', 'Line 9') })).toMatchObject({
      status: 422,
      body: { code: 'DEFINITION_INVALID', problems: [{ code: 'UNKNOWN_LINE', file: bar, line: 9 }] },
    });
    expect(await send({})).toMatchObject({
      status: 400,
      body: { code: 'BAD_REQUEST', detail: "body: exactly one of 'edits' and 'files' is expected" },
    });
    expect(await send({ files, edits: [{ file: bar, path: ['bar'], value: '1' }] })).toMatchObject({
      status: 400,
      body: { code: 'BAD_REQUEST' },
    });
    expect((await get<object[]>(running, '/api/plants/thornby/versions')).body).toHaveLength(1);
  });
});

describe('GET …/definition', () => {
  const url = '/api/plants/thornby/versions/latest/definition';

  it('gives the plant as the loader reads it, for a browser without a parser', async () => {
    const running = await withPlant();
    const { status, body } = await get<WireLoaded & { version: object }>(running, url);
    expect(status).toBe(200);
    const { version, ...wire } = body;
    expect(version).toMatchObject({ plant: 'thornby', number: 1, intact: true });
    expect(decodeLoaded(wire as WireLoaded)).toEqual(loadPlant(thornby));
  });

  it('is not sent again to one who has it', async () => {
    const running = await withPlant();
    const first = await running.app.inject(url);
    expect(first.headers['cache-control']).toBe('private, no-cache');
    const second = await running.app.inject({ url, headers: { 'if-none-match': String(first.headers.etag) } });
    expect(second.statusCode).toBe(304);
    expect(second.body).toBe('');
    await post(running, '/api/plants/thornby/versions', { basedOn: 1, files: changed('30 g ', '31 g '), author: 'J', reason: 'r' });
    const third = await running.app.inject({ url, headers: { 'if-none-match': String(first.headers.etag) } });
    expect(third.statusCode).toBe(200);
    expect(third.json()).toMatchObject({ version: { number: 2 } });
    const old = await running.app.inject({ url: url.replace('latest', '1') });
    expect(old.body).toBe(first.body);
  });

  it('tells the problems of a version that this release does not read any more', async () => {
    const running = await start();
    const { importPlant } = await import('@barwright/store');
    await importPlant(running.store, { id: 'thornby', name: 'Old', files: new Map([['plant.yaml', 'format: 0\n']]), ...who });
    const { status, body } = await get<WireLoaded>(running, url);
    expect(status).toBe(200);
    expect(body.ok).toBe(false);
    expect(body).toHaveProperty('problems.0.file', 'plant.yaml');
    expect((await get(running, '/api/plants/thornby')).body).toMatchObject({ ok: false, bars: [], lines: [] });
  });
});
