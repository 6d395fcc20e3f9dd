import { describe, expect, it } from 'vitest';
import { checks, models, runModel } from '@barwright/science';
import { start } from './server.js';

const first = models[0]!;
const inputs = checks.find((check) => check.model === first.id)!.inputs;

describe('GET /api/models', () => {
  it('lists every model with its inputs, outputs and sources', async () => {
    const { app, log } = await start();
    const answer = await app.inject('/api/models');
    expect(log, answer.body).toEqual([]);
    const list = answer.json<{ id: string; inputs: { key: string }[]; sources: { title: string }[] }[]>();
    expect(list.map((model) => model.id)).toEqual(models.map((model) => model.id));
    expect(list[0]!.inputs.map((input) => input.key)).toEqual(first.inputs.map((input) => input.key));
    for (const model of list) for (const source of model.sources) expect(source.title.length).toBeGreaterThan(3);
  });
});

describe('POST /api/models/:id', () => {
  it('answers what the model answers', async () => {
    const { app } = await start();
    const answer = await app.inject({ method: 'POST', url: `/api/models/${first.id}`, payload: inputs });
    expect(answer.statusCode).toBe(200);
    expect(answer.json()).toEqual(JSON.parse(JSON.stringify(runModel(first, inputs))));
  });

  it('gives every model that has a check an answer that fits its description', async () => {
    const { app, log } = await start();
    for (const model of models) {
      const check = checks.find((one) => one.model === model.id);
      if (!check) continue;
      const answer = await app.inject({ method: 'POST', url: `/api/models/${model.id}`, payload: check.inputs });
      expect([200, 422], `${model.id}: ${answer.body}`).toContain(answer.statusCode);
    }
    expect(log).toEqual([]);
  });

  it('refuses an unknown model, an unknown key, a word for a number and the impossible', async () => {
    const { app } = await start();
    const post = async (id: string, payload: object) => (await app.inject({ method: 'POST', url: `/api/models/${id}`, payload })).json();
    expect(await post('no.such', {})).toMatchObject({ status: 404, code: 'MODEL_NOT_FOUND' });
    expect(await post(first.id, { ...inputs, colour: 1 })).toMatchObject({
      status: 400,
      code: 'BAD_INPUT',
      detail: expect.stringContaining('colour'),
    });
    const numeric = models.flatMap((model) => model.inputs.map((input) => ({ model, input }))).find(({ input }) => input.possible)!;
    const given = checks.find((check) => check.model === numeric.model.id)!.inputs;
    const key = numeric.input.key;
    expect(await post(numeric.model.id, { ...given, [key]: 'hot' })).toMatchObject({ status: 400, code: 'BAD_INPUT' });
    expect(await post(numeric.model.id, { ...given, [key]: numeric.input.possible![0] - 1e6 })).toMatchObject({
      status: 422,
      code: 'OUT_OF_RANGE',
    });
  });
});

describe('GET /api/evidence', () => {
  it('has every check, red ones too, and is computed once', { timeout: 30_000 }, async () => {
    const { app } = await start();
    const [one, two] = await Promise.all([app.inject('/api/evidence'), app.inject('/api/evidence')]);
    expect(one.statusCode).toBe(200);
    const evidence = one.json<{ models: number; checks: number; inside: number; results: { id: string; inside: boolean }[] }>();
    expect(evidence.results.map((row) => row.id)).toEqual(checks.map((check) => check.id));
    expect(evidence.inside).toBe(evidence.results.filter((row) => row.inside).length);
    expect(evidence.models).toBe(models.length);
    expect(two.body).toBe(one.body);
  });
});
