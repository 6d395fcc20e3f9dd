import type { Transaction } from 'kysely';
import { requireFiles, requireWords } from './entry.js';
import { contentHash, sha256, versionHash } from './hash.js';
import type { VersionInfo, VersionRow } from './rows.js';
import type { Schema } from './schema.js';

/** What to save. */
export interface NewVersion {
  readonly files: ReadonlyMap<string, string>;
  readonly author: string;
  readonly reason: string;
  /** Left out: the plant keeps the name of the version before. */
  readonly name?: string;
  /** The version that the author had in front of them. */
  readonly basedOn: number;
}

/** The files, words and hashes of a version that may be stored. */
export interface CheckedVersion {
  readonly files: ReadonlyMap<string, string>;
  readonly texts: ReadonlyMap<string, string>;
  readonly contentHash: string;
  readonly author: string;
  readonly reason: string;
  readonly name?: string;
}

/** @throws StoreError BAD_FILE, BAD_ENTRY */
export function checked<T extends Omit<NewVersion, 'basedOn'>>(version: T): T & CheckedVersion {
  const files = requireFiles(version.files);
  const texts = new Map([...files].map(([path, text]) => [path, sha256(text)]));
  return {
    ...version,
    files,
    texts,
    contentHash: contentHash(texts),
    author: requireWords('The author', version.author, 200),
    reason: requireWords('The reason', version.reason, 2000),
    ...(version.name === undefined ? {} : { name: requireWords('The name of the plant', version.name, 200) }),
  };
}

/** Adds one version after `latest`; the caller holds the transaction and has checked everything. */
export async function insertRow(
  trx: Transaction<Schema>,
  plant: string,
  wanted: CheckedVersion & { readonly name: string },
  latest: VersionRow | undefined,
): Promise<VersionInfo> {
  const version = {
    plant,
    number: (latest?.number ?? 0) + 1,
    name: wanted.name,
    createdAt: new Date().toISOString(),
    author: wanted.author,
    reason: wanted.reason,
    contentHash: wanted.contentHash,
    predecessor: latest?.sha256 ?? null,
  };
  const row = await trx
    .insertInto('definition_version')
    .values({
      plant_id: plant,
      number: version.number,
      parent_id: latest?.id ?? null,
      plant_name: version.name,
      created_at: version.createdAt,
      author: version.author,
      reason: version.reason,
      content_sha256: version.contentHash,
      predecessor_sha256: version.predecessor,
      sha256: versionHash(version),
    })
    .returning(['id', 'sha256'])
    .executeTakeFirstOrThrow();
  for (const [path, text] of wanted.files) {
    const hash = wanted.texts.get(path)!;
    await trx
      .insertInto('definition_text')
      .values({ sha256: hash, text })
      .onConflict((conflict) => conflict.column('sha256').doNothing())
      .execute();
    await trx.insertInto('definition_file').values({ version_id: row.id, path, text_sha256: hash }).execute();
  }
  const { predecessor: _, ...info } = version;
  return { ...info, basedOn: latest?.number ?? null, hash: row.sha256 };
}
