import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { importPlant } from '@barwright/store';
import { describe, expect, it } from 'vitest';
import { emptyFolder, start, type Running } from './server.js';

async function withDays(): Promise<Running & { readonly folder: string }> {
  const folder = join(emptyFolder(), 'thornby');
  mkdirSync(join(folder, 'days/2026-03-17'), { recursive: true });
  mkdirSync(join(folder, 'days/2026-03-18'));
  mkdirSync(join(folder, 'days/notes'));
  writeFileSync(join(folder, 'days/2026-03-17/temper.csv'), 'time,slope\n06:30,0.1\n');
  writeFileSync(join(folder, 'days/2026-03-17/handover.txt'), 'all well');
  writeFileSync(join(folder, 'days/2026-03-18/tunnel.csv'), 'time,zone 1 (°C)\n06:30,15\n');
  writeFileSync(join(folder, 'days/notes/secret.csv'), 'a,b\n');
  writeFileSync(join(folder, 'plant.csv'), 'a,b\n');
  symlinkSync(join(folder, 'plant.csv'), join(folder, 'days/2026-03-17/link.csv'));
  const running = await start({ plants: [folder] });
  const files = new Map([['plant.yaml', 'format: 1\n']]);
  await importPlant(running.store, { id: 'thornby', name: 'Thornby', files, author: 'J. Osk', reason: 'to try' });
  return { ...running, folder };
}

describe('the days of a plant', () => {
  it('are listed newest first, tables only, links left out', async () => {
    const { app } = await withDays();
    expect((await app.inject('/api/plants/thornby/days')).json()).toEqual([
      { date: '2026-03-18', files: [{ name: 'tunnel.csv', bytes: 27 }] },
      { date: '2026-03-17', files: [{ name: 'temper.csv', bytes: 21 }] },
    ]);
  });

  it('give a file as it lies there', async () => {
    const { app } = await withDays();
    const answer = await app.inject('/api/plants/thornby/days/2026-03-17/files/temper.csv');
    expect(answer.statusCode).toBe(200);
    expect(answer.headers['content-type']).toBe('text/csv; charset=utf-8');
    expect(answer.body).toBe('time,slope\n06:30,0.1\n');
  });

  it.each([
    '/api/plants/thornby/days/2026-03-17/files/handover.txt',
    '/api/plants/thornby/days/2026-03-17/files/link.csv',
    '/api/plants/thornby/days/notes/files/secret.csv',
    '/api/plants/thornby/days/2026-03-17/files/..%2F..%2Fplant.csv',
    '/api/plants/thornby/days/..%2F/files/plant.csv',
    '/api/plants/nobody/days/2026-03-17/files/temper.csv',
  ])('refuse %s', async (url) => {
    const answer = await (await withDays()).app.inject(url);
    expect(answer.statusCode).toBeGreaterThanOrEqual(400);
    expect(answer.statusCode).toBeLessThan(500);
    expect(answer.json<{ code: string }>().code).toMatch(/^(NOT_FOUND|BAD_REQUEST)$/);
  });

  it('are none where the plant came without a folder, and refused where there is no plant', async () => {
    const { app, store } = await withDays();
    const files = new Map([['plant.yaml', 'format: 1\n']]);
    await importPlant(store, { id: 'other', name: 'Other', files, author: 'J. Osk', reason: 'to try' });
    expect((await app.inject('/api/plants/other/days')).json()).toEqual([]);
    expect((await app.inject('/api/plants/nobody/days')).statusCode).toBe(404);
  });
});
