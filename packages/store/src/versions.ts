import { StoreError } from './errors.js';
import { contentHash, sha256 } from './hash.js';
import { infoFromRow, latestRow, requirePlant, rowOf, versionRows, type VersionInfo } from './rows.js';
import { checked, insertRow, type CheckedVersion, type NewVersion } from './save.js';
import type { Store } from './store.js';

export interface Version extends VersionInfo {
  /** Path to text, in order of paths. */
  readonly files: ReadonlyMap<string, string>;
  /** False where the files no longer match the hash they were saved with. */
  readonly intact: boolean;
}

/** Who wrote the version a save was refused for. */
export type Newer = Pick<VersionInfo, 'number' | 'author' | 'createdAt' | 'reason'>;

/** Every version of a plant, newest first. @throws StoreError PLANT_NOT_FOUND */
export async function listVersions(store: Store, plant: string): Promise<VersionInfo[]> {
  await requirePlant(store.db, plant);
  const rows = await versionRows(store.db).where('plant_id', '=', plant).orderBy('number', 'desc').execute();
  return rows.map(infoFromRow);
}

/** One version with its files. @throws StoreError PLANT_NOT_FOUND, VERSION_NOT_FOUND */
export async function getVersion(store: Store, plant: string, number: number | 'latest'): Promise<Version> {
  const row = await (number === 'latest' ? latestRow(store.db, plant) : rowOf(store.db, plant, number));
  if (!row) {
    await requirePlant(store.db, plant);
    throw new StoreError('VERSION_NOT_FOUND', `Plant '${plant}' has no version ${number}`);
  }
  const files = await store.db
    .selectFrom('definition_file')
    .innerJoin('definition_text', 'definition_text.sha256', 'definition_file.text_sha256')
    .select(['definition_file.path', 'definition_text.text'])
    .where('version_id', '=', row.id)
    .orderBy('path')
    .execute();
  const found = contentHash(files.map(({ path, text }) => [path, sha256(text)] as const));
  return { ...infoFromRow(row), files: new Map(files.map(({ path, text }) => [path, text])), intact: found === row.content_sha256 };
}

/**
 * Saves a new version if the author had the latest one in front of them. The same save sent twice is stored once.
 * When it returns, the version is on the disk.
 * @throws StoreError CONFLICT (details.newer says who was faster), UNCHANGED, BAD_FILE, BAD_ENTRY, PLANT_NOT_FOUND, VERSION_NOT_FOUND
 */
export async function insertVersion(store: Store, plant: string, version: NewVersion): Promise<VersionInfo> {
  const wanted = checked(version);
  return store.db.transaction().execute(async (trx) => {
    await requirePlant(trx, plant);
    const latest = await latestRow(trx, plant);
    const info = latest && infoFromRow(latest);
    if (info && info.number !== wanted.basedOn) {
      if (isResent(info, wanted)) return info;
      if (wanted.basedOn > info.number || wanted.basedOn < 1) {
        throw new StoreError('VERSION_NOT_FOUND', `Plant '${plant}' has no version ${wanted.basedOn}; the latest is ${info.number}`);
      }
      const newer: Newer = { number: info.number, author: info.author, createdAt: info.createdAt, reason: info.reason };
      const message = `You changed version ${wanted.basedOn}, but ${info.author} has saved version ${info.number} since (${info.reason}). Nothing was overwritten; look at version ${info.number} and save again on top of it`;
      throw new StoreError('CONFLICT', message, { newer });
    }
    const name = wanted.name ?? info?.name ?? plant;
    if (info && info.contentHash === wanted.contentHash && info.name === name) {
      throw new StoreError('UNCHANGED', `The files are those of version ${info.number}; there is nothing to save`, { number: info.number });
    }
    return insertRow(trx, plant, { ...wanted, name }, latest);
  });
}

/** An answer can be lost on its way: the same words and files on top of the same version are the same save. */
function isResent(latest: VersionInfo, wanted: CheckedVersion & { readonly basedOn: number }): boolean {
  return (
    latest.basedOn === wanted.basedOn &&
    latest.contentHash === wanted.contentHash &&
    latest.author === wanted.author &&
    latest.reason === wanted.reason &&
    (wanted.name === undefined || latest.name === wanted.name)
  );
}
