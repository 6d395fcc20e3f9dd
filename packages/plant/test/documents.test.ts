import { readFileSync } from 'node:fs';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { jsonSchemas, kindOf, problemCodes } from '../src/index.js';
import { schemaTexts, writeJsonSchemas } from '../src/node.js';

const root = (path: string): string => fileURLToPath(new URL(`../../../${path}`, import.meta.url));

describe('docs/errors.md', () => {
  const section =
    readFileSync(root('docs/errors.md'), 'utf8')
      .split(/^## /m)
      .find((part) => part.startsWith('Definitions')) ?? '';
  const listed = [...section.matchAll(/^\| `([A-Z_0-9]+)` \| (.*?) \|/gm)].map(([, code, meaning]) => [code!, meaning!] as const);

  it('lists every code of the loader once, and no other', () => {
    expect(listed.map(([code]) => code).sort()).toEqual(Object.keys(problemCodes).sort());
  });

  it('gives each the meaning that the code gives', () => {
    expect(Object.fromEntries(listed)).toEqual(problemCodes);
  });
});

describe('schemas/', () => {
  // Written by writeJsonSchemas('schemas'); if this fails, the schema of the files has changed: write them anew.
  it.each([...schemaTexts()])('%s is what the loader checks', (name, text) => {
    expect(readFileSync(root(`schemas/${name}`), 'utf8')).toBe(text);
  });

  it('are written to a folder', async () => {
    const dir = await mkdtemp(join(tmpdir(), 'schemas-'));
    try {
      const written = await writeJsonSchemas(dir);
      expect(written.map((path) => basename(path)).sort()).toEqual([...schemaTexts().keys()].sort());
      expect(JSON.parse(await readFile(written[0]!, 'utf8'))).toEqual(jsonSchemas().plant);
    } finally {
      await rm(dir, { recursive: true });
    }
  });

  it('say what may stand where', () => {
    const { bar } = jsonSchemas() as {
      bar: {
        properties: { bar: { required: string[]; additionalProperties: boolean; properties: Record<string, { description?: string }> } };
      };
    };
    expect(bar.properties.bar.required).toEqual(expect.arrayContaining(['name', 'target', 'layers', 'pack']));
    expect(bar.properties.bar.required).not.toContain('coat');
    expect(bar.properties.bar.additionalProperties).toBe(false);
    expect(bar.properties.bar.properties['target']!.description).toMatch(/a mass.*g/);
  });
});

describe('kindOf', () => {
  it.each([
    ['plant.yaml', 'plant'],
    ['bars/kestrowan.yaml', 'bar'],
    ['lines/line-2.yml', 'line'],
    ['bars/deep/x.yaml', undefined],
    ['notes.yaml', undefined],
    ['plant.yaml.bak', undefined],
  ] as const)('%s is %s', (file, kind) => expect(kindOf(file)).toBe(kind));
});
