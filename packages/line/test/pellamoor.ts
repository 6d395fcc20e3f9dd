import { Session } from '@barwright/chain';
import { loadPlant, type Plant } from '@barwright/plant';
import { readPlantFolder } from '@barwright/plant/node';
import { fileURLToPath } from 'node:url';
import { plantChain } from '../src/index.js';

/** An example plant, loaded from its files. */
export async function examplePlant(name: string): Promise<Plant> {
  const loaded = loadPlant(await readPlantFolder(fileURLToPath(new URL(`../../../examples/${name}`, import.meta.url))));
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems, null, 1));
  return loaded.plant;
}

export async function exampleSession(name: string, bar?: string): Promise<Session> {
  return new Session(plantChain(await examplePlant(name), bar).chain);
}
