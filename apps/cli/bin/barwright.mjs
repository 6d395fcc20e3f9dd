#!/usr/bin/env node
// The command: builds itself when its sources are newer, then runs.
import { spawnSync } from 'node:child_process';
import { existsSync, realpathSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const here = dirname(realpathSync(fileURLToPath(import.meta.url)));
const built = join(here, '../dist/barwright.js');
const stale = join(here, '../../../scripts/stale.mjs');
if (existsSync(stale)) {
  const { isStale, root } = await import(pathToFileURL(stale).href);
  if (isStale('cli')) {
    const run = spawnSync(process.execPath, [join(root, 'scripts/build.mjs'), 'cli'], { stdio: ['ignore', 'ignore', 'inherit'] });
    if (run.status !== 0) process.exit(1);
  }
}
const { main } = await import(pathToFileURL(built).href);
process.exitCode = await main(process.argv.slice(2));
