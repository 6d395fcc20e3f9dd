import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Kysely, sql } from 'kysely';
import Database from 'libsql';
import { describe, expect, it } from 'vitest';
import { EmbeddedDialect, openDatabase } from '../src/driver.js';
import { getVersion, importPlant, insertVersion, listVersions, openStore, verifyHistory } from '../src/index.js';
import { migrate, migrations } from '../src/migrations/index.js';
import { emptyFolder, files, openTemporary, tamper, who } from './folder.js';

const fixtures = new URL('./fixtures/', import.meta.url);
const names = Object.keys(migrations);

/** A folder with the database that an older release wrote. */
function folderOf(fixture: string): string {
  const folder = emptyFolder();
  const raw = new Database(join(folder, 'barwright.db'));
  raw.exec(readFileSync(new URL(fixture, fixtures), 'utf8'));
  raw.close();
  return folder;
}

/** Tables, columns and triggers, without the blanks that differ. */
async function shape(db: Kysely<never>): Promise<string[]> {
  const rows = await sql<{ sql: string }>`select sql from sqlite_master where sql is not null and name not like 'sqlite_%'`.execute(db);
  return rows.rows.map((row) => row.sql.replace(/\s+/g, ' ')).sort();
}

describe('migrations', () => {
  it('are numbered without gaps and only go forward', () => {
    names.forEach((name, index) => expect(name).toMatch(new RegExp(`^${String(index + 1).padStart(4, '0')}-[a-z-]+$`)));
    for (const migration of Object.values(migrations)) expect(migration.down).toBeUndefined();
  });

  it('have each the database of its release to test on', () => {
    expect(readdirSync(fixtures).sort()).toEqual(names.map((name) => `${name}.sql`));
  });

  it.each(names)('take the database of %s to this release', async (name) => {
    const store = await openTemporary(folderOf(`${name}.sql`));
    const fresh = await openTemporary();
    expect(await shape(store.db as never)).toEqual(await shape(fresh.db as never));
    expect(await verifyHistory(store)).toEqual([]);
    expect((await listVersions(store, 'pellamoor')).map((v) => [v.number, v.author, v.reason])).toEqual([
      [2, 'J. Osk', 'heavier bar'],
      [1, 'I. Marren', 'first import'],
    ]);
    expect((await getVersion(store, 'pellamoor', 1)).files.get('bars/kestrowan.yaml')).toBe('target: 48 g # "true" gram\n');
    expect((await getVersion(store, 'pellamoor', 2)).files.get('bars/kestrowan.yaml')).toBe("target: 49 g # it's heavier – on purpose\n");
    await insertVersion(store, 'pellamoor', { basedOn: 2, files: files({ 'plant.yaml': 'next' }), ...who });
    expect(await verifyHistory(store)).toEqual([]);
    await expect(store.db.deleteFrom('definition_version').execute()).rejects.toMatchObject({ code: 'STORE_REFUSED' });
  });

  it('happen wholly or not at all', async () => {
    const file = join(emptyFolder(), 'barwright.db');
    const db = new Kysely<never>({ dialect: new EmbeddedDialect({ database: openDatabase(file) }) });
    await migrate(db, file, '0001-definitions');
    const before = await shape(db);
    // The second migration makes eight triggers and then one of this name.
    await sql`create trigger definition_version_follows before insert on plant begin select 1; end`.execute(db);
    await expect(migrate(db, file)).rejects.toThrow(/definition_version_follows/);
    await sql`drop trigger definition_version_follows`.execute(db);
    expect(await shape(db)).toEqual(before);
    await migrate(db, file);
    expect((await shape(db)).length).toBeGreaterThan(before.length);
    await db.destroy();
  });

  it('refuse a database of a later release, name what it holds and leave it alone', async () => {
    const store = await openTemporary();
    await importPlant(store, { id: 'p', name: 'P', files: files({ a: 'b' }), ...who });
    tamper(store, "insert into kysely_migration values ('0999-from-the-future', '2999-01-01T00:00:00.000Z')");
    await expect(openStore(store.folder)).rejects.toMatchObject({
      code: 'STORE_TOO_NEW',
      message: expect.stringContaining('0999-from-the-future'),
    });
    expect(await listVersions(store, 'p')).toHaveLength(1);
  });
});
