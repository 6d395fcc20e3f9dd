import { sql } from 'kysely';
import { contentHash, sha256, versionHash } from './hash.js';
import type { Store } from './store.js';

/** Something wrong with what is stored. One event is one finding. */
export interface HistoryFinding {
  readonly code: 'VERSION_MISSING' | 'VERSION_ALTERED' | 'CHAIN_BROKEN' | 'FILES_ALTERED' | 'TEXT_ALTERED' | 'DATABASE_DAMAGED';
  readonly message: string;
  readonly plant?: string;
  /** Number of the version. */
  readonly version?: number;
  readonly file?: string;
}

/**
 * Recomputes every hash. A version, a file or a text that was altered, removed or added behind the store's back gives a
 * finding; an empty list means that all is as it was saved. It cannot see a forgery that recomputed the whole chain.
 */
export async function verifyHistory(store: Store): Promise<HistoryFinding[]> {
  // One transaction, so that a save meanwhile does not look like damage.
  return store.db.transaction().execute(async (db) => {
    const findings: HistoryFinding[] = [];
    const check = await sql<{ quick_check: string }>`pragma quick_check(10)`.execute(db);
    const loose = await sql<{ table: string; parent: string }>`pragma foreign_key_check`.execute(db);
    for (const row of check.rows) if (row.quick_check !== 'ok') findings.push({ code: 'DATABASE_DAMAGED', message: row.quick_check });

    const texts = await db.selectFrom('definition_text').select(['sha256', 'text']).execute();
    const altered = new Set(texts.filter((row) => sha256(row.text) !== row.sha256).map((row) => row.sha256));
    const known = new Set(texts.map((row) => row.sha256));
    const files = await db.selectFrom('definition_file').select(['version_id', 'path', 'text_sha256']).orderBy('path').execute();
    const filesOf = groupByVersion(files);
    const versions = await db
      .selectFrom('definition_version')
      .select([
        'id',
        'plant_id',
        'number',
        'plant_name',
        'created_at',
        'author',
        'reason',
        'content_sha256',
        'predecessor_sha256',
        'sha256',
      ])
      .orderBy('plant_id')
      .orderBy('number')
      .execute();

    let missing = 0;
    const told = new Set<string>();
    for (const [index, row] of versions.entries()) {
      const place = { plant: row.plant_id, version: row.number };
      const before = versions[index - 1]?.plant_id === row.plant_id ? versions[index - 1] : undefined;
      for (let number = (before?.number ?? 0) + 1; number < row.number; number++) {
        missing++;
        findings.push({
          code: 'VERSION_MISSING',
          message: `Version ${number} of ${row.plant_id} is missing`,
          plant: row.plant_id,
          version: number,
        });
      }
      const own = versionHash({
        plant: row.plant_id,
        number: row.number,
        name: row.plant_name,
        createdAt: row.created_at,
        author: row.author,
        reason: row.reason,
        contentHash: row.content_sha256,
        predecessor: row.predecessor_sha256,
      });
      if (own !== row.sha256) {
        findings.push({ code: 'VERSION_ALTERED', message: `Version ${row.number} of ${row.plant_id} is not as it was saved`, ...place });
      } else if (before?.number === row.number - 1 && before.sha256 !== row.predecessor_sha256) {
        const message = `Version ${row.number} of ${row.plant_id} does not follow from version ${before.number} as it stands`;
        findings.push({ code: 'CHAIN_BROKEN', message, ...place });
      }
      const held = filesOf.get(row.id) ?? [];
      if (own === row.sha256 && contentHash(held.map((file) => [file.path, file.text_sha256] as const)) !== row.content_sha256) {
        const message = `A file was added to, taken from or exchanged in version ${row.number} of ${row.plant_id}`;
        findings.push({ code: 'FILES_ALTERED', message, ...place });
      }
      for (const file of held) {
        const hash = file.text_sha256;
        if (told.has(hash) || (known.has(hash) && !altered.has(hash))) continue;
        told.add(hash);
        const what = known.has(hash) ? 'is not as it was saved' : 'has lost its text';
        const message = `${file.path} of ${row.plant_id}, first in version ${row.number}, ${what}`;
        findings.push({ code: 'TEXT_ALTERED', message, file: file.path, ...place });
      }
    }

    const counter = await sql<{ seq: number }>`select seq from sqlite_sequence where name = 'definition_version'`.execute(db);
    const lost = (counter.rows[0]?.seq ?? 0) - versions.length - missing;
    if (lost > 0) findings.push({ code: 'VERSION_MISSING', message: `${lost} version(s) are missing at the end of a history` });
    if (lost < 0) findings.push({ code: 'VERSION_ALTERED', message: `${-lost} version(s) more are stored than were saved` });
    if (findings.length === 0 && loose.rows.length > 0) {
      findings.push({
        code: 'DATABASE_DAMAGED',
        message: `A row of ${loose.rows[0]!.table} refers to a ${loose.rows[0]!.parent} that is missing`,
      });
    }
    return findings;
  });
}

function groupByVersion<T extends { version_id: number }>(rows: readonly T[]): Map<number, T[]> {
  const groups = new Map<number, T[]>();
  for (const row of rows) {
    const group = groups.get(row.version_id);
    if (group) group.push(row);
    else groups.set(row.version_id, [row]);
  }
  return groups;
}
