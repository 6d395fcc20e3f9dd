import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { loadPlant } from '../src/index.js';
import { folderLimits, PlantFolderError, readPlantFolder } from '../src/node.js';
import { exampleFolder } from './folder.js';
import { smallest } from './smallest.js';

let dir = '';
beforeEach(async () => {
  dir = await mkdtemp(join(tmpdir(), 'plant-'));
  await mkdir(join(dir, 'bars'));
  await mkdir(join(dir, 'lines'));
  for (const [file, text] of smallest) await writeFile(join(dir, file), text);
});
afterEach(() => rm(dir, { recursive: true, force: true }));

async function refusal(folder = dir): Promise<PlantFolderError> {
  const thrown: unknown = await readPlantFolder(folder).then(
    () => undefined,
    (error: unknown) => error,
  );
  expect(thrown).toBeInstanceOf(PlantFolderError);
  return thrown as PlantFolderError;
}

describe('readPlantFolder', () => {
  it('reads exactly the definition files', async () => {
    await writeFile(join(dir, 'notes.txt'), 'not read');
    await mkdir(join(dir, 'days'));
    await writeFile(join(dir, 'days', 'x.yaml'), 'not read');
    const files = await readPlantFolder(dir);
    expect([...files.keys()].sort()).toEqual([...smallest.keys()].sort());
    expect(loadPlant(files).ok).toBe(true);
  });

  it('reads the example plants', async () => {
    for (const name of ['pellamoor', 'tollhythe', 'highmark']) expect((await readPlantFolder(exampleFolder(name))).size).toBeGreaterThan(6);
  });

  it('takes a byte order mark off', async () => {
    await writeFile(join(dir, 'plan.yaml'), `\ufeff${smallest.get('plan.yaml')}`);
    expect((await readPlantFolder(dir)).get('plan.yaml')).toBe(smallest.get('plan.yaml'));
  });

  it('follows a link within the folder', async () => {
    await symlink(join(dir, 'bars', 'plain.yaml'), join(dir, 'bars', 'same.yaml'));
    expect((await readPlantFolder(dir)).get('bars/same.yaml')).toBe(smallest.get('bars/plain.yaml'));
  });

  it('never follows one out of it, be it a file or a folder', async () => {
    const other = await mkdtemp(join(tmpdir(), 'other-'));
    try {
      await writeFile(join(other, 'secret.yaml'), 'secret: true');
      await symlink(join(other, 'secret.yaml'), join(dir, 'bars', 'secret.yaml'));
      expect(await refusal()).toMatchObject({ code: 'LINK_OUTSIDE', file: 'bars/secret.yaml' });
      await rm(join(dir, 'bars'), { recursive: true });
      await symlink(other, join(dir, 'bars'));
      expect(await refusal()).toMatchObject({ code: 'LINK_OUTSIDE', file: 'bars' });
    } finally {
      await rm(other, { recursive: true });
    }
  });

  it('refuses a folder that is no plant, is not there, or is a file', async () => {
    expect(await refusal(join(dir, 'bars'))).toMatchObject({ code: 'PLANT_MISSING' });
    expect(await refusal(join(dir, 'nowhere'))).toMatchObject({ code: 'NOT_READABLE' });
    expect(await refusal(join(dir, 'plant.yaml'))).toMatchObject({ code: 'NOT_READABLE' });
  });

  it('refuses a link that leads nowhere and a folder that is named like a file', async () => {
    await symlink(join(dir, 'gone.yaml'), join(dir, 'bars', 'gone.yaml'));
    expect(await refusal()).toMatchObject({ code: 'NOT_READABLE', file: 'bars/gone.yaml' });
    await rm(join(dir, 'bars', 'gone.yaml'));
    await mkdir(join(dir, 'bars', 'folder.yaml'));
    expect(await refusal()).toMatchObject({ code: 'NOT_READABLE', file: 'bars/folder.yaml' });
  });

  it('refuses a file that is too large or no UTF-8, and too many files', async () => {
    await writeFile(join(dir, 'checks.yaml'), Buffer.alloc(folderLimits.bytes + 1, 0x20));
    expect(await refusal()).toMatchObject({ code: 'FILE_TOO_LARGE', file: 'checks.yaml' });
    await writeFile(join(dir, 'checks.yaml'), Buffer.from([0x61, 0xff, 0xfe]));
    expect(await refusal()).toMatchObject({ code: 'NOT_UTF8', file: 'checks.yaml' });
    await rm(join(dir, 'checks.yaml'));
    await Promise.all(Array.from({ length: folderLimits.files + 1 }, (_, i) => writeFile(join(dir, 'bars', `b${i}.yaml`), '')));
    expect(await refusal()).toMatchObject({ code: 'TOO_MANY_FILES' });
  });
});
