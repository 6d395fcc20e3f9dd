import { fileURLToPath } from 'node:url';
import { readPlantFolder } from '@barwright/plant/node';
import { importPlant } from '@barwright/store';
import { describe, expect, it } from 'vitest';
import { start, type Running } from './server.js';

const files = await readPlantFolder(fileURLToPath(new URL('../../../examples/pellamoor', import.meta.url)));

async function pellamoor(): Promise<Running> {
  const running = await start();
  await importPlant(running.store, { name: 'Pellamoor Works', files, author: 'I. Marren', reason: 'first import' });
  return running;
}

describe('papers of a version', () => {
  it('gives the sheet with value, unit, origin and window of each quantity', async () => {
    const { app } = await pellamoor();
    const answer = await app.inject('/api/plants/pellamoor-works/versions/latest/sheet');
    expect(answer.statusCode).toBe(200);
    const { bar, quantities } = answer.json<{
      bar: string;
      quantities: Record<string, { value: number; unit: string; origin: string; window?: object }>;
    }>();
    expect(bar).toBe('Kestrowan');
    expect(quantities['bar.cost']).toMatchObject({ unit: 'ct', origin: 'computed' });
    expect(quantities['bar.cost']!.value).toBeCloseTo(13.3, 2);
    expect(quantities['caramel.moisture']).toMatchObject({
      value: 9.5,
      unit: '%',
      origin: 'entered',
      window: { low: 9.1, high: 9.9, aim: 9.5 },
    });
  });

  it('gives the run sheet as a page without scripts, with its version and a policy of its own', async () => {
    const { app } = await pellamoor();
    const answer = await app.inject('/api/plants/pellamoor-works/versions/1/run-sheet.html');
    expect(answer.statusCode).toBe(200);
    expect(answer.headers['content-type']).toMatch(/^text\/html/);
    expect(answer.headers['content-security-policy']).toMatch(/style-src 'self' 'sha256-/);
    expect(answer.body).toContain('Run sheet: Kestrowan');
    expect(answer.body).toContain('version 1, saved');
    expect(answer.body).not.toMatch(/<script/i);
  });

  it('gives the run sheet as PDF', async () => {
    const { app } = await pellamoor();
    const answer = await app.inject('/api/plants/pellamoor-works/versions/1/run-sheet.pdf');
    expect(answer.statusCode).toBe(200);
    expect(answer.headers['content-type']).toBe('application/pdf');
    expect(answer.rawPayload.subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('names the bars there are when another is asked for', async () => {
    const { app } = await pellamoor();
    const answer = await app.inject('/api/plants/pellamoor-works/versions/1/sheet?bar=Nobody');
    expect(answer.statusCode).toBe(404);
    expect(answer.json()).toMatchObject({ code: 'UNKNOWN_BAR', detail: 'Pellamoor Works has no bar "Nobody"; it has Kestrowan' });
  });
});
