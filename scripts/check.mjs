// The quick half of `npm test`: types and lint.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { root } from './stale.mjs';

for (const [name, args] of [
  ['tsc', ['--noEmit', '-p', 'tsconfig.json']],
  ['eslint', ['.', '--max-warnings', '0']],
]) {
  const run = spawnSync(join(root, 'node_modules/.bin', name), args, { cwd: root, stdio: 'inherit' });
  if (run.status !== 0) process.exit(1);
}
