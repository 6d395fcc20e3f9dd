import type { Transaction } from 'kysely';
import { StoreError } from './errors.js';
import type { Schema } from './schema.js';
import type { Store } from './store.js';

/** One saved state, without its files. */
export interface VersionInfo {
  readonly plant: string;
  /** 1, 2, 3 … */
  readonly number: number;
  /** Name of the plant in this version. */
  readonly name: string;
  /** ISO 8601, UTC. */
  readonly createdAt: string;
  readonly author: string;
  readonly reason: string;
  /** Number of the version it was made from; null for the first. */
  readonly basedOn: number | null;
  /** Of the files. */
  readonly contentHash: string;
  /** Of the version and all before it. */
  readonly hash: string;
}

const columns = ['id', 'plant_id', 'number', 'plant_name', 'created_at', 'author', 'reason', 'content_sha256', 'sha256'] as const;
export type VersionRow = NonNullable<Awaited<ReturnType<typeof latestRow>>>;
export type Reader = Store['db'] | Transaction<Schema>;

/** Versions as they stand in the table; the caller narrows them. */
export function versionRows(db: Reader) {
  return db.selectFrom('definition_version').select(columns);
}

/** The version that a save must be based on. */
export function latestRow(db: Reader, plant: string) {
  return versionRows(db).where('plant_id', '=', plant).orderBy('number', 'desc').limit(1).executeTakeFirst();
}

export function rowOf(db: Reader, plant: string, number: number) {
  return versionRows(db).where('plant_id', '=', plant).where('number', '=', number).executeTakeFirst();
}

export function infoFromRow(row: VersionRow): VersionInfo {
  return {
    plant: row.plant_id,
    number: row.number,
    name: row.plant_name,
    createdAt: row.created_at,
    author: row.author,
    reason: row.reason,
    basedOn: row.number === 1 ? null : row.number - 1,
    contentHash: row.content_sha256,
    hash: row.sha256,
  };
}

/** @throws StoreError PLANT_NOT_FOUND */
export async function requirePlant(db: Reader, id: string): Promise<void> {
  const row = await db.selectFrom('plant').select('id').where('id', '=', id).executeTakeFirst();
  if (!row) throw new StoreError('PLANT_NOT_FOUND', `There is no plant '${id}'`, { plant: id });
}
