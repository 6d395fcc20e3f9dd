import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { Kysely } from 'kysely';
import { EmbeddedDialect, openDatabase } from './driver.js';
import { StoreError } from './errors.js';
import { migrate } from './migrations/index.js';
import type { Schema } from './schema.js';

/** An open database in its folder. Functions take it first. */
export interface Store {
  readonly folder: string;
  readonly file: string;
  readonly db: Kysely<Schema>;
}

/**
 * Opens the database in a folder of the caller's, creating both where they are missing, and brings it up to this release.
 * Several programs may have it open at once.
 * @throws StoreError STORE_UNUSABLE, STORE_TOO_NEW, STORE_BUSY
 */
export async function openStore(folder: string): Promise<Store> {
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
  } catch (error) {
    const message = `The data folder ${folder} cannot be made (${(error as Error).message}); name another one`;
    throw new StoreError('STORE_UNUSABLE', message, {}, { cause: error });
  }
  const file = join(folder, 'barwright.db');
  const db = new Kysely<Schema>({ dialect: new EmbeddedDialect({ database: openDatabase(file) }) });
  try {
    await migrate(db, file);
  } catch (error) {
    await db.destroy();
    throw error;
  }
  return { folder, file, db };
}

/** Closes the database; what was saved is in it. */
export async function closeStore(store: Store): Promise<void> {
  await store.db.destroy();
}
