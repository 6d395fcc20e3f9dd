import { spawn, type ChildProcessWithoutNullStreams } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { closeStore, getVersion, importPlant, listVersions, openStore, verifyHistory } from '../src/index.js';
import { emptyFolder, files, openTemporary, who } from './folder.js';

function run(program: string, ...args: string[]): ChildProcessWithoutNullStreams {
  const path = fileURLToPath(new URL(`./programs/${program}`, import.meta.url));
  return spawn(process.execPath, ['--import', 'tsx', path, ...args]);
}

describe('a killed program', () => {
  it('loses nothing that it had acknowledged', { timeout: 60_000 }, async () => {
    const folder = emptyFolder();
    const first = await openStore(folder);
    await importPlant(first, { id: 'p', name: 'P', files: files({ 'plant.yaml': 'start' }), ...who });
    await closeStore(first);
    for (const pause of [3, 17, 41]) {
      const child = run('save-until-killed.ts', folder);
      let told = '';
      let complaints = '';
      child.stderr.on('data', (bytes) => (complaints += bytes));
      child.stdout.on('data', (bytes) => {
        if (told === '') setTimeout(() => child.kill('SIGKILL'), pause);
        told += bytes;
      });
      const [, signal] = await once(child, 'close');
      expect(complaints).toBe('');
      expect(signal).toBe('SIGKILL');
      const acknowledged = Number(told.slice(0, told.lastIndexOf('\n')).split('\n').at(-1));
      expect(acknowledged).toBeGreaterThan(1);

      const store = await openStore(folder);
      const latest = await getVersion(store, 'p', 'latest');
      // One more may have reached the disk without having been told.
      expect([acknowledged, acknowledged + 1]).toContain(latest.number);
      expect(latest.intact).toBe(true);
      expect(latest.files.get('plant.yaml')).toMatch(new RegExp(`^after ${latest.number - 1}: x{20000}$`));
      expect(await listVersions(store, 'p')).toHaveLength(latest.number);
      expect(await verifyHistory(store)).toEqual([]);
      await closeStore(store);
    }
  });
});

describe('several programs at once', () => {
  it('make one database out of an empty folder and lose no save', { timeout: 60_000 }, async () => {
    const folder = emptyFolder();
    const at = String(Date.now() + 2_500);
    const names = ['a', 'b', 'c', 'd'];
    const ends = await Promise.all(
      names.map(async (name) => {
        const child = run('save-together.ts', folder, name, at, '6');
        let told = '';
        child.stdout.on('data', (bytes) => (told += bytes));
        child.stderr.on('data', (bytes) => (told += bytes));
        const [code] = await once(child, 'close');
        return [code, told];
      }),
    );
    expect(ends).toEqual(names.map(() => [0, 'done\n']));
    const store = await openTemporary(folder);
    const versions = await listVersions(store, 'p');
    expect(versions).toHaveLength(1 + 4 * 6);
    for (const name of names) expect(versions.filter((v) => v.number > 1 && v.author === name)).toHaveLength(6);
    expect(await verifyHistory(store)).toEqual([]);
  });
});
