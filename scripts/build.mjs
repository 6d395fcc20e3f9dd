// Builds what is stale: the commands with the server, and the screens. `node scripts/build.mjs [cli] [web] [--force]`
import { build } from 'vite';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { builds, isStale, markBuilt, root } from './stale.mjs';

const asked = process.argv.slice(2).filter((word) => !word.startsWith('--'));
const force = process.argv.includes('--force');

for (const name of asked.length ? asked : Object.keys(builds)) {
  if (!force && !isStale(name)) continue;
  console.error(`Building ${name} …`);
  await build({ root: join(root, 'apps', name), configFile: join(root, 'apps', name, 'vite.config.ts'), logLevel: 'warn' });
  if (name === 'web') compress(join(root, builds.web.out));
  markBuilt(name);
}

/** Compressed beside the plain files, so that the server need not do it at every request. */
function compress(folder) {
  for (const entry of readdirSync(folder, { withFileTypes: true, recursive: true })) {
    if (!entry.isFile() || !/\.(js|css|html|svg|json)$/.test(entry.name)) continue;
    const path = join(entry.parentPath, entry.name);
    const text = readFileSync(path);
    writeFileSync(`${path}.br`, brotliCompressSync(text));
    writeFileSync(`${path}.gz`, gzipSync(text, { level: 9 }));
  }
}
