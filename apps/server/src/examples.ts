import { existsSync, readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import { idFromName, importPlant, listPlants, StoreError, type Store } from '@barwright/store';

/** Folders directly below `folder` that hold a plant. */
export function plantFolders(folder: string): string[] {
  if (!existsSync(folder)) return [];
  const entries = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isDirectory());
  return entries
    .map((entry) => join(folder, entry.name))
    .filter((path) => existsSync(join(path, 'plant.yaml')))
    .sort();
}

/**
 * Fills an empty store with plants from their folders; a store with any plant in it stays as it is.
 * A folder that does not load is told and left out.
 * @returns keys of the plants that were added
 */
export async function importOnFirstRun(store: Store, folders: readonly string[], say: (line: string) => void): Promise<string[]> {
  if (folders.length === 0 || (await listPlants(store)).length > 0) return [];
  const [{ loadPlant }, { readPlantFolder }] = await Promise.all([import('@barwright/plant'), import('@barwright/plant/node')]);
  const added: string[] = [];
  for (const folder of folders) {
    const files = await readPlantFolder(folder);
    const loaded = loadPlant(files);
    if (!loaded.ok) {
      const { file, line, message } = loaded.problems[0]!;
      say(`${folder} was left out: ${file}:${line}: ${message}`);
      continue;
    }
    const id = idFromName(basename(folder));
    const words = { author: 'Barwright', reason: 'Example plant, loaded on the first run' };
    try {
      const version = await importPlant(store, { ...(id === undefined ? {} : { id }), name: loaded.plant.name, files, ...words });
      added.push(version.plant);
    } catch (error) {
      // Another program was started at the same moment and has added it.
      if (!(error instanceof StoreError && error.code === 'PLANT_EXISTS')) throw error;
    }
  }
  return added;
}
