/** Opens a folder at a given time, together with others, and saves some versions, going again after a conflict. */
import { getVersion, importPlant, insertVersion, openStore, StoreError } from '../../src/index.js';

const [, , folder, name, at, count] = process.argv as [string, string, string, string, string, string];
await new Promise((resolve) => setTimeout(resolve, Number(at) - Date.now()));
const store = await openStore(folder);
const words = { author: name, reason: 'together' };
try {
  await importPlant(store, { id: 'p', name: 'P', files: new Map([['plant.yaml', 'start']]), ...words });
} catch (error) {
  if (!(error instanceof StoreError && error.code === 'PLANT_EXISTS')) throw error;
}
for (let saved = 0; saved < Number(count);) {
  const { number } = await getVersion(store, 'p', 'latest');
  try {
    await insertVersion(store, 'p', { basedOn: number, files: new Map([['plant.yaml', `${name} ${saved}`]]), ...words });
    saved++;
  } catch (error) {
    if (!(error instanceof StoreError && error.code === 'CONFLICT')) throw error;
  }
}
process.stdout.write('done\n');
