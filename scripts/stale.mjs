// Says whether what was built is older than its sources. Built-ins only.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = join(dirname(fileURLToPath(import.meta.url)), '..');

/** Fingerprint of every source file that goes into a build: path, size, time of change. */
function fingerprint(folders) {
  const hash = createHash('sha256');
  const walk = (folder) => {
    for (const entry of readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1))) {
      if (['node_modules', 'dist', 'test', 'bench'].includes(entry.name)) continue;
      const path = join(folder, entry.name);
      if (entry.isDirectory()) walk(path);
      else {
        const { size, mtimeMs } = statSync(path);
        hash.update(`${path}:${size}:${mtimeMs}\n`);
      }
    }
  };
  for (const folder of folders) walk(join(root, folder));
  hash.update(readFileSync(join(root, 'package-lock.json')));
  return hash.digest('hex');
}

/** One build: where it lands and from which folders it comes. */
export const builds = {
  cli: { out: 'apps/cli/dist', main: 'apps/cli/dist/barwright.js', from: ['packages', 'apps/cli', 'apps/server'] },
  web: { out: 'apps/web/dist', main: 'apps/web/dist/index.html', from: ['packages', 'apps/web'] },
};

export function isStale(name) {
  const { out, main, from } = builds[name];
  const stamp = join(root, out, '.stamp');
  return !existsSync(join(root, main)) || !existsSync(stamp) || readFileSync(stamp, 'utf8') !== fingerprint(from);
}

export function markBuilt(name) {
  const { out, from } = builds[name];
  mkdirSync(join(root, out), { recursive: true });
  writeFileSync(join(root, out, '.stamp'), fingerprint(from));
}
