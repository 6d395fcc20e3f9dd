import { idFromName, requireId, requireWords } from './entry.js';
import { StoreError } from './errors.js';
import type { VersionInfo } from './rows.js';
import { checked, insertRow, type NewVersion } from './save.js';
import type { Store } from './store.js';

/** A plant with the number and time of its latest version. */
export interface PlantInfo {
  readonly id: string;
  readonly name: string;
  readonly latest: number;
  /** ISO 8601, UTC. */
  readonly savedAt: string;
}

/** A plant's first version. */
export interface NewPlant extends Omit<NewVersion, 'basedOn' | 'name'> {
  readonly name: string;
  /** Key in addresses; left out: made from the name. */
  readonly id?: string;
}

/** Every plant, in order of name. */
export async function listPlants(store: Store): Promise<PlantInfo[]> {
  const rows = await latestOfPlants(store).orderBy('plant_name').orderBy('plant_id').execute();
  return rows.map(plantFromRow);
}

export async function findPlant(store: Store, id: string): Promise<PlantInfo | undefined> {
  const row = await latestOfPlants(store).where('plant_id', '=', id).executeTakeFirst();
  return row && plantFromRow(row);
}

/**
 * Adds a plant with its first version.
 * @throws StoreError PLANT_EXISTS, BAD_FILE, BAD_ENTRY
 */
export async function importPlant(store: Store, plant: NewPlant): Promise<VersionInfo> {
  const { id: key, ...version } = plant;
  const name = requireWords('The name of the plant', plant.name, 200);
  const id = requireId(key ?? idFromName(name) ?? name);
  const wanted = checked(version);
  return store.db.transaction().execute(async (trx) => {
    const there = await trx.selectFrom('plant').select('id').where('id', '=', id).executeTakeFirst();
    if (there)
      throw new StoreError('PLANT_EXISTS', `There is a plant '${id}' already; choose another key or save a new version of it`, {
        plant: id,
      });
    await trx.insertInto('plant').values({ id, created_at: new Date().toISOString() }).execute();
    return insertRow(trx, id, { ...wanted, name }, undefined);
  });
}

function latestOfPlants(store: Store) {
  return store.db
    .selectFrom('definition_version as version')
    .select(['plant_id', 'plant_name', 'number', 'created_at'])
    .where('number', '=', (inner) =>
      inner
        .selectFrom('definition_version as later')
        .select((select) => select.fn.max('later.number').as('number'))
        .whereRef('later.plant_id', '=', 'version.plant_id'),
    );
}

function plantFromRow(row: { plant_id: string; plant_name: string; number: number; created_at: string }): PlantInfo {
  return { id: row.plant_id, name: row.plant_name, latest: row.number, savedAt: row.created_at };
}
