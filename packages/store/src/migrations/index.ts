import { Migrator, type Kysely, type Migration } from 'kysely';
import { StoreError } from '../errors.js';
import { definitions } from './0001-definitions.js';
import { appendOnly } from './0002-append-only.js';

/** In the order of their numbers. Forward only; a released one never changes. */
export const migrations: Readonly<Record<string, Migration>> = {
  '0001-definitions': definitions,
  '0002-append-only': appendOnly,
};

/**
 * Brings a database up to this release; safe when two programs do it at once.
 * @param upTo - name of the last migration wanted; left out: all of them
 * @throws StoreError STORE_TOO_NEW when a later release has already changed the database
 */
export async function migrate<T>(db: Kysely<T>, place: string, upTo?: string): Promise<void> {
  const migrator = new Migrator({ db, provider: { getMigrations: async () => ({ ...migrations }) } });
  const { error } = await (upTo === undefined ? migrator.migrateToLatest() : migrator.migrateTo(upTo));
  if (error === undefined) return;
  const unknown = /previously executed migration (\S+) is missing/.exec(error instanceof Error ? error.message : '')?.[1];
  if (unknown === undefined) throw error;
  throw new StoreError(
    'STORE_TOO_NEW',
    `${place} was written by a later release (it holds '${unknown}'). Use that release; nothing was changed`,
    { migration: unknown },
  );
}
