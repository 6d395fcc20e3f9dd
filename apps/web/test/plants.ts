import { join } from 'node:path';
import { loadPlant, type Plant } from '@barwright/plant';
import { readPlantFolder } from '@barwright/plant/node';

const folder = join(import.meta.dirname, '../../../examples');

/** The example plants: layers with nuts, a wafer with an open underside, one layer in US units. */
export const examples = ['pellamoor', 'tollhythe', 'highmark'] as const;

export async function exampleFiles(name: string): Promise<ReadonlyMap<string, string>> {
  return readPlantFolder(join(folder, name));
}

export function load(files: ReadonlyMap<string, string>): Plant {
  const loaded = loadPlant(files);
  if (!loaded.ok) throw new Error(loaded.problems.map(({ file, line, message }) => `${file}:${line}: ${message}`).join('\n'));
  return loaded.plant;
}

export const examplePlant = async (name: string): Promise<Plant> => load(await exampleFiles(name));
