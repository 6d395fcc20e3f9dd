import { describe, expect, it } from 'vitest';
import { getVersion, importPlant, insertVersion, verifyHistory, type Store } from '../src/index.js';
import { files, openTemporary, tamper, who } from './folder.js';

/** Two plants, the first with three versions. */
async function history(): Promise<Store> {
  const store = await openTemporary();
  await importPlant(store, { id: 'p', name: 'P', files: files({ 'plant.yaml': 'one', 'bars/a.yaml': 'bar' }), ...who });
  await insertVersion(store, 'p', { basedOn: 1, files: files({ 'plant.yaml': 'two', 'bars/a.yaml': 'bar' }), ...who });
  await importPlant(store, { id: 'q', name: 'Q', files: files({ 'plant.yaml': 'elsewhere' }), ...who });
  await insertVersion(store, 'p', { basedOn: 2, files: files({ 'plant.yaml': 'three', 'bars/a.yaml': 'bar' }), ...who });
  return store;
}
const one = "(select id from definition_version where plant_id = 'p' and number = 1)";
const two = "(select id from definition_version where plant_id = 'p' and number = 2)";

describe('verifyHistory', () => {
  it('finds nothing in a history as it was saved', async () => expect(await verifyHistory(await history())).toEqual([]));

  // One event, one finding: the code, the version, the file it names.
  it.each<[string, string[], object]>([
    [
      'a reason written over',
      [`update definition_version set reason = 'nicer' where id = ${two}`],
      { code: 'VERSION_ALTERED', plant: 'p', version: 2 },
    ],
    [
      'a time moved',
      [`update definition_version set created_at = '2020-01-01' where id = ${one}`],
      { code: 'VERSION_ALTERED', version: 1 },
    ],
    [
      'a text altered',
      ["update definition_text set text = 'bat' where text = 'bar'"],
      { code: 'TEXT_ALTERED', file: 'bars/a.yaml', version: 1 },
    ],
    ['a text removed', ["delete from definition_text where text = 'two'"], { code: 'TEXT_ALTERED', file: 'plant.yaml', version: 2 }],
    [
      'a file taken out',
      [`delete from definition_file where version_id = ${two} and path = 'plant.yaml'`],
      { code: 'FILES_ALTERED', version: 2 },
    ],
    [
      'a file slipped in',
      [`insert into definition_file select ${two}, 'extra.yaml', sha256 from definition_text where text = 'one'`],
      { code: 'FILES_ALTERED', version: 2 },
    ],
    [
      'a version in the middle removed',
      [`delete from definition_file where version_id = ${two}`, `delete from definition_version where id = ${two}`],
      { code: 'VERSION_MISSING', plant: 'p', version: 2 },
    ],
    [
      'the last version removed',
      ['delete from definition_file where version_id = 4', 'delete from definition_version where id = 4'],
      { code: 'VERSION_MISSING' },
    ],
    [
      'a whole plant removed',
      [
        'delete from definition_file where version_id = 3',
        "delete from definition_version where plant_id = 'q'",
        "delete from plant where id = 'q'",
      ],
      { code: 'VERSION_MISSING' },
    ],
    ['a plant row removed', ["delete from plant where id = 'q'"], { code: 'DATABASE_DAMAGED' }],
  ])('shows %s', async (_, statements, expected) => {
    const store = await history();
    tamper(store, ...statements);
    const findings = await verifyHistory(store);
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject(expected);
  });

  it('shows a predecessor that was forged together with its own hash', async () => {
    const store = await history();
    const { versionHash } = await import('../src/hash.js');
    const v = await getVersion(store, 'p', 2);
    const first = await getVersion(store, 'p', 1);
    const forged = versionHash({ ...v, reason: 'forged', predecessor: first.hash });
    tamper(store, `update definition_version set reason = 'forged', sha256 = '${forged}' where id = ${two}`);
    expect(await verifyHistory(store)).toMatchObject([{ code: 'CHAIN_BROKEN', plant: 'p', version: 3 }]);
  });

  it('is told by getVersion too, which still gives what there is', async () => {
    const store = await history();
    tamper(store, "update definition_text set text = 'bat' where text = 'bar'");
    const version = await getVersion(store, 'p', 'latest');
    expect(version.intact).toBe(false);
    expect(version.files.get('bars/a.yaml')).toBe('bat');
  });
});
