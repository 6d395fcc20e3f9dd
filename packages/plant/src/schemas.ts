import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { jsonSchemas } from './schema/files.js';

/** Text of every schema file by its name: 'bar.schema.json'. */
export function schemaTexts(): ReadonlyMap<string, string> {
  return new Map(
    Object.entries(jsonSchemas()).map(([kind, schema]) => [`${kind}.schema.json`, `${JSON.stringify(schema, undefined, 2)}\n`]),
  );
}

/** Writes the schemas for editors into a folder; returns the paths written. */
export async function writeJsonSchemas(dir: string): Promise<readonly string[]> {
  await mkdir(dir, { recursive: true });
  const written: string[] = [];
  for (const [name, text] of schemaTexts()) {
    const path = join(dir, name);
    await writeFile(path, text);
    written.push(path);
  }
  return written;
}
