import { fileURLToPath } from 'node:url';
import { loadPlant, type Plant } from '../src/index.js';
import { readPlantFolder } from '../src/node.js';

export function exampleFolder(name: string): string {
  return fileURLToPath(new URL(`../../../examples/${name}`, import.meta.url));
}

/** The files of an example plant. */
export function exampleFiles(name: string): Promise<ReadonlyMap<string, string>> {
  return readPlantFolder(exampleFolder(name));
}

/** An example plant, or an error that lists its problems. */
export async function examplePlant(name: string): Promise<Plant> {
  const loaded = loadPlant(await exampleFiles(name));
  if (loaded.ok) return loaded.plant;
  throw new Error(loaded.problems.map(({ file, line, code, message }) => `${file}:${line} ${code} ${message}`).join('\n'));
}
