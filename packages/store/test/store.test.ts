import { existsSync, mkdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { sql } from 'kysely';
import { describe, expect, it } from 'vitest';
import { closeStore, importPlant, listPlants, openStore } from '../src/index.js';
import { emptyFolder, files, openTemporary, who } from './folder.js';

describe('openStore', () => {
  it('makes the folder and the database, and finds both again', async () => {
    const folder = join(emptyFolder(), 'a', 'b');
    const first = await openStore(folder);
    await importPlant(first, { name: 'Pellamoor Works', files: files({ 'plant.yaml': 'x' }), ...who });
    await closeStore(first);
    expect(existsSync(join(folder, 'barwright.db'))).toBe(true);
    if (process.platform !== 'win32') expect(statSync(folder).mode & 0o077).toBe(0);
    const again = await openTemporary(folder);
    expect((await listPlants(again)).map((plant) => plant.id)).toEqual(['pellamoor-works']);
  });

  it('writes ahead, syncs fully, checks foreign keys and waits for others', async () => {
    const { db } = await openTemporary();
    const setting = async (name: string) => Object.values((await sql.raw(`pragma ${name}`).execute(db)).rows[0] as object)[0];
    expect(await setting('journal_mode')).toBe('wal');
    expect(await setting('synchronous')).toBe(2);
    expect(await setting('foreign_keys')).toBe(1);
    expect(await setting('busy_timeout')).toBe(5000);
  });

  it('keeps each column to its type', async () => {
    const { db } = await openTemporary();
    const tables = await sql<{ name: string; strict: number }>`pragma table_list`.execute(db);
    const ours = tables.rows.filter((table) => /^(plant|definition_)/.test(table.name));
    expect(ours.map((table) => table.name).sort()).toEqual(['definition_file', 'definition_text', 'definition_version', 'plant']);
    expect(ours.every((table) => table.strict === 1)).toBe(true);
  });

  it('names a file that is no database and leaves it as it was', async () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, 'barwright.db'), 'shopping list\n'.repeat(400));
    await expect(openStore(folder)).rejects.toMatchObject({ code: 'STORE_UNUSABLE', message: expect.stringContaining('barwright.db') });
    expect(statSync(join(folder, 'barwright.db')).size).toBe(14 * 400);
  });

  it('names a folder that cannot be made, and a database that cannot be opened', async () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, 'file'), '');
    await expect(openStore(join(folder, 'file', 'below'))).rejects.toMatchObject({ code: 'STORE_UNUSABLE' });
    mkdirSync(join(folder, 'barwright.db'));
    await expect(openStore(folder)).rejects.toMatchObject({ code: 'STORE_UNUSABLE' });
  });

  it('says that another program is writing when it does not end, and saves as soon as it has', { timeout: 20_000 }, async () => {
    const folder = emptyFolder();
    const one = await openTemporary(folder);
    const two = await openTemporary(folder);
    await sql`pragma busy_timeout = 50`.execute(two.db);
    await one.db.transaction().execute(async () => {
      const save = importPlant(two, { name: 'Second', files: files({ 'plant.yaml': 'x' }), ...who });
      await expect(save).rejects.toMatchObject({ code: 'STORE_BUSY' });
    });
    await importPlant(two, { name: 'Second', files: files({ 'plant.yaml': 'x' }), ...who });
    expect(await listPlants(one)).toHaveLength(1);
  });
});
