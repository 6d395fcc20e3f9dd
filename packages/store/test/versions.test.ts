import fc from 'fast-check';
import { sql } from 'kysely';
import { describe, expect, it } from 'vitest';
import { getVersion, importPlant, insertVersion, listVersions, verifyHistory } from '../src/index.js';
import { files, openTemporary, who } from './folder.js';

const start = async () => {
  const store = await openTemporary();
  await importPlant(store, { id: 'p', name: 'P', files: files({ 'plant.yaml': 'one', 'bars/a.yaml': 'bar' }), ...who });
  return store;
};

describe('insertVersion', () => {
  it('adds a version on top of the latest and keeps the old one as it was', async () => {
    const store = await start();
    const saved = await insertVersion(store, 'p', { basedOn: 1, files: files({ 'plant.yaml': 'two' }), author: 'B', reason: 'warmer' });
    expect(saved).toMatchObject({ number: 2, basedOn: 1, author: 'B', reason: 'warmer', name: 'P' });
    expect([...(await getVersion(store, 'p', 1)).files]).toEqual([
      ['bars/a.yaml', 'bar'],
      ['plant.yaml', 'one'],
    ]);
    expect(await getVersion(store, 'p', 'latest')).toMatchObject({ ...saved, intact: true });
    expect((await listVersions(store, 'p')).map((version) => version.number)).toEqual([2, 1]);
  });

  it('refuses a save on an older version, names the newer one and loses nothing', async () => {
    const store = await start();
    const newer = await insertVersion(store, 'p', { basedOn: 1, files: files({ 'plant.yaml': 'hers' }), author: 'B', reason: 'first' });
    const late = insertVersion(store, 'p', { basedOn: 1, files: files({ 'plant.yaml': 'his' }), author: 'C', reason: 'second' });
    await expect(late).rejects.toMatchObject({
      code: 'CONFLICT',
      message: expect.stringContaining('B has saved version 2'),
      details: { newer: { number: 2, author: 'B', reason: 'first', createdAt: newer.createdAt } },
    });
    expect((await getVersion(store, 'p', 'latest')).files.get('plant.yaml')).toBe('hers');
    await insertVersion(store, 'p', { basedOn: 2, files: files({ 'plant.yaml': 'his' }), author: 'C', reason: 'second' });
    expect(await verifyHistory(store)).toEqual([]);
  });

  it('stores the same save once even if it is sent twice', async () => {
    const store = await start();
    const save = { basedOn: 1, files: files({ 'plant.yaml': 'two' }), author: 'B', reason: 'once' };
    const first = await insertVersion(store, 'p', save);
    expect(await insertVersion(store, 'p', save)).toEqual(first);
    expect(await listVersions(store, 'p')).toHaveLength(2);
    await expect(insertVersion(store, 'p', { ...save, reason: 'another' })).rejects.toMatchObject({ code: 'CONFLICT' });
  });

  it('refuses a save that changes nothing', async () => {
    const store = await start();
    const same = files({ 'bars/a.yaml': 'bar', 'plant.yaml': 'one' });
    await expect(insertVersion(store, 'p', { basedOn: 1, files: same, ...who })).rejects.toMatchObject({ code: 'UNCHANGED' });
  });

  it.each([0, 2, -1])('refuses to build on version %d when there is only one', async (basedOn) => {
    const store = await start();
    const save = insertVersion(store, 'p', { basedOn, files: files({ a: 'b' }), ...who });
    await expect(save).rejects.toMatchObject({ code: 'VERSION_NOT_FOUND', message: expect.stringContaining('latest is 1') });
  });

  it('refuses a plant that is not there', async () => {
    const store = await start();
    await expect(insertVersion(store, 'q', { basedOn: 1, files: files({ a: 'b' }), ...who })).rejects.toMatchObject({
      code: 'PLANT_NOT_FOUND',
    });
    await expect(listVersions(store, 'q')).rejects.toMatchObject({ code: 'PLANT_NOT_FOUND' });
    await expect(getVersion(store, 'q', 'latest')).rejects.toMatchObject({ code: 'PLANT_NOT_FOUND' });
    await expect(getVersion(store, 'p', 7)).rejects.toMatchObject({ code: 'VERSION_NOT_FOUND' });
  });

  it('stores a text once however many versions and files hold it', async () => {
    const store = await start();
    await insertVersion(store, 'p', {
      basedOn: 1,
      files: files({ 'plant.yaml': 'two', 'bars/a.yaml': 'bar', 'bars/b.yaml': 'bar' }),
      ...who,
    });
    await importPlant(store, { id: 'q', name: 'Q', files: files({ 'plant.yaml': 'one' }), ...who });
    const rows = await store.db.selectFrom('definition_text').select('text').orderBy('text').execute();
    expect(rows.map((row) => row.text)).toEqual(['bar', 'one', 'two']);
  });

  it('gives back every text to the letter', async () => {
    const store = await start();
    let number = 1;
    const text = fc.string({ unit: 'binary', maxLength: 60 }).filter((s) => !s.includes('\u0000'));
    const path = fc.stringMatching(/^[a-z][a-z0-9 äµ°.-]{0,12}[a-z0-9]$/);
    await fc.assert(
      fc.asyncProperty(fc.dictionary(path, text, { minKeys: 1, maxKeys: 4 }), async (entries) => {
        const wanted = new Map([...Object.entries(entries), ['counter', String(number)]]);
        ({ number } = await insertVersion(store, 'p', { basedOn: number, files: wanted, ...who }));
        const version = await getVersion(store, 'p', number);
        expect(version.intact).toBe(true);
        expect(new Map(version.files)).toEqual(wanted);
      }),
      { numRuns: 60 },
    );
    expect(await verifyHistory(store)).toEqual([]);
  });
});

describe('the tables', () => {
  it.each(['plant', 'definition_version', 'definition_text', 'definition_file'])('refuse to change or lose a row of %s', async (table) => {
    const { db } = await start();
    const column = { plant: 'created_at', definition_version: 'author', definition_text: 'text', definition_file: 'path' }[table]!;
    const rows = async () => (await sql`select * from ${sql.table(table)}`.execute(db)).rows;
    const before = await rows();
    const refused = { code: 'STORE_REFUSED', message: expect.stringContaining('APPEND_ONLY') };
    await expect(sql`update ${sql.table(table)} set ${sql.ref(column)} = 'other'`.execute(db)).rejects.toMatchObject(refused);
    await expect(sql`delete from ${sql.table(table)}`.execute(db)).rejects.toMatchObject(refused);
    await expect(sql`insert or replace into ${sql.table(table)} select * from ${sql.table(table)}`.execute(db)).rejects.toThrow();
    expect(await rows()).toEqual(before);
  });

  it('refuse a version that does not follow the latest', async () => {
    const { db } = await start();
    const row = await db.selectFrom('definition_version').selectAll().executeTakeFirstOrThrow();
    const forged = { ...row, id: 9, parent_id: 1, sha256: 'f'.repeat(64), predecessor_sha256: row.sha256 };
    const refused = { code: 'STORE_REFUSED', message: expect.stringContaining('follows the latest') };
    await expect(
      db
        .insertInto('definition_version')
        .values({ ...forged, number: 3 })
        .execute(),
    ).rejects.toMatchObject(refused);
    const loose = { ...forged, number: 2, predecessor_sha256: 'e'.repeat(64) };
    await expect(db.insertInto('definition_version').values(loose).execute()).rejects.toMatchObject(refused);
  });
});
