import { describe, expect, it } from 'vitest';
import { findPlant, getVersion, idFromName, importPlant, insertVersion, listPlants } from '../src/index.js';
import { files, openTemporary, who } from './folder.js';

describe('importPlant', () => {
  it('stores the first version and names the plant after it', async () => {
    const store = await openTemporary();
    const version = await importPlant(store, {
      id: 'pellamoor',
      name: ' Pellamoor Works ',
      files: files({ 'plant.yaml': 'a: 1\n' }),
      ...who,
    });
    expect(version).toMatchObject({ plant: 'pellamoor', number: 1, name: 'Pellamoor Works', basedOn: null, ...who });
    expect(version.hash).toMatch(/^[0-9a-f]{64}$/);
    expect(await findPlant(store, 'pellamoor')).toEqual({
      id: 'pellamoor',
      name: 'Pellamoor Works',
      latest: 1,
      savedAt: version.createdAt,
    });
    expect(await findPlant(store, 'elsewhere')).toBeUndefined();
  });

  it('refuses a key that is taken and changes nothing', async () => {
    const store = await openTemporary();
    await importPlant(store, { name: 'One', files: files({ 'plant.yaml': 'first' }), ...who });
    const again = importPlant(store, { name: 'One', files: files({ 'plant.yaml': 'second' }), ...who });
    await expect(again).rejects.toMatchObject({ code: 'PLANT_EXISTS', message: expect.stringContaining("'one'") });
    expect((await getVersion(store, 'one', 'latest')).files.get('plant.yaml')).toBe('first');
  });

  it.each(['Pellamoor', 'a/b', '-a', 'a--b', '', 'ä', 'x'.repeat(65), '__proto__'])('refuses the key %j', async (id) => {
    const store = await openTemporary();
    await expect(importPlant(store, { id, name: 'N', files: files({ a: 'b' }), ...who })).rejects.toMatchObject({ code: 'BAD_ENTRY' });
    expect(await listPlants(store)).toEqual([]);
  });

  it.each([
    ['the author', { author: '  ' }],
    ['the author', { author: 'x'.repeat(201) }],
    ['the reason', { reason: '' }],
    ['the reason', { reason: 'bell \u0007' }],
    ['the name of the plant', { name: '\n' }],
  ])('wants %s in readable words', async (what, change) => {
    const store = await openTemporary();
    const entry = { name: 'N', files: files({ a: 'b' }), ...who, ...change };
    await expect(importPlant(store, entry)).rejects.toMatchObject({
      code: 'BAD_ENTRY',
      message: expect.stringMatching(new RegExp(what, 'i')),
    });
  });

  it.each([
    [{}],
    [{ '../escape.yaml': '' }],
    [{ '/etc/passwd': '' }],
    [{ 'a//b': '' }],
    [{ 'a\\b': '' }],
    [{ 'C:a': '' }],
    [{ 'a/./b': '' }],
    [{ 'a/ /b': '' }],
    [{ '\ud800.yaml': '' }],
    [{ 'bars/One.yaml': '', 'bars/one.yaml': '' }],
    [{ 'plant.yaml': 'before\u0000after' }],
    [{ 'plant.yaml': 'half \ud83d' }],
    [{ ['x'.repeat(201)]: '' }],
  ])('refuses files that would not come back whole: %j', async (entries) => {
    const store = await openTemporary();
    await expect(importPlant(store, { name: 'N', files: files(entries as never), ...who })).rejects.toMatchObject({ code: 'BAD_FILE' });
    expect(await listPlants(store)).toEqual([]);
  });
});

describe('listPlants', () => {
  it('is in order of name and follows a plant that is renamed', async () => {
    const store = await openTemporary();
    for (const name of ['Beta', 'Alpha']) await importPlant(store, { name, files: files({ 'plant.yaml': name }), ...who });
    await insertVersion(store, 'alpha', { basedOn: 1, name: 'Zeta', files: files({ 'plant.yaml': 'Zeta' }), ...who });
    expect((await listPlants(store)).map(({ id, name, latest }) => [id, name, latest])).toEqual([
      ['beta', 'Beta', 1],
      ['alpha', 'Zeta', 2],
    ]);
  });
});

describe('idFromName', () => {
  it.each([
    ['Pellamoor Works', 'pellamoor-works'],
    ['  Süßwaren & Søn, Nº 2 ', 'su-waren-s-n-no-2'],
    ['巧克力', undefined],
    ['x'.repeat(80), 'x'.repeat(64)],
  ])('of %j is %j', (name, id) => expect(idFromName(name)).toBe(id));
});
