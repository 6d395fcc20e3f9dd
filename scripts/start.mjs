// Builds what is stale and serves the screens on this machine only. Arguments go to `barwright serve`.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { builds, isStale, root } from './stale.mjs';

const stale = Object.keys(builds).filter(isStale);
if (stale.length) {
  const run = spawnSync(process.execPath, [join(root, 'scripts/build.mjs'), ...stale], { stdio: 'inherit' });
  if (run.status !== 0) process.exit(run.status ?? 1);
}
const { main } = await import(pathToFileURL(join(root, builds.cli.main)).href);
process.exitCode = await main(['serve', ...process.argv.slice(2)]);
