import { describe, expect, it } from 'vitest';
import { start } from './server.js';

interface Document {
  readonly openapi: string;
  readonly paths: Record<string, Record<string, { summary?: string; responses: Record<string, { content?: object }> }>>;
}

describe('GET /api/openapi.json', () => {
  it('describes every route there is, and no other', async () => {
    const { app } = await start();
    const document = (await app.inject('/api/openapi.json')).json<Document>();
    expect(document.openapi).toBe('3.1.0');
    const described = Object.entries(document.paths).flatMap(([path, methods]) =>
      Object.keys(methods).map((method) => `${method.toUpperCase()} ${path}`),
    );
    expect(described.sort()).toEqual([
      'GET /api/evidence',
      'GET /api/health',
      'GET /api/history',
      'GET /api/models',
      'GET /api/plants',
      'GET /api/plants/{plant}',
      'GET /api/plants/{plant}/days',
      'GET /api/plants/{plant}/days/{date}/files/{name}',
      'GET /api/plants/{plant}/versions',
      'GET /api/plants/{plant}/versions/{number}',
      'GET /api/plants/{plant}/versions/{number}/definition',
      'GET /api/plants/{plant}/versions/{number}/run-sheet.html',
      'GET /api/plants/{plant}/versions/{number}/run-sheet.pdf',
      'GET /api/plants/{plant}/versions/{number}/sheet',
      'POST /api/models/{id}',
      'POST /api/plants',
      'POST /api/plants/{plant}/versions',
    ]);
    for (const route of described) {
      const [method = '', path = ''] = route.split(' ');
      const url = path.replace(/\{(\w+)\}/g, ':$1');
      expect(app.hasRoute({ method: method as 'GET', url }), route).toBe(true);
    }
  });

  it('says of each route what it is for and how it refuses', async () => {
    const { app } = await start();
    const { paths } = (await app.inject('/api/openapi.json')).json<Document>();
    for (const methods of Object.values(paths)) {
      for (const route of Object.values(methods)) {
        expect(route.summary).toBeTruthy();
        expect(route.responses['4XX']?.content).toHaveProperty(['application/problem+json']);
      }
    }
  });
});
