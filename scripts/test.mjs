// Everything that must hold: formatting, types, lint, imports, dead code, and the tests with a real database and a real browser.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { findBrowser } from './browser.mjs';
import { root } from './stale.mjs';

const bin = (name) => join(root, 'node_modules', '.bin', name);
const only = process.argv.slice(2);

const browser = await findBrowser();
const env = { ...process.env, ...browser.env };
if (browser.path) {
  env.BARWRIGHT_BROWSER = browser.path;
  env.BARWRIGHT_BROWSER_ARGS = browser.args.join(' ');
} else env.BARWRIGHT_NO_BROWSER = browser.sentence;

if (only.length === 0) {
  const steps = [
    ['Build', process.execPath, ['scripts/build.mjs']],
    ['Types', bin('tsc'), ['--noEmit', '-p', 'tsconfig.json']],
    ['Format', bin('prettier'), ['--check', '--log-level', 'warn', '.']],
    ['Lint', bin('eslint'), ['.', '--max-warnings', '0']],
    ['Imports', bin('depcruise'), ['--config', '.dependency-cruiser.cjs', 'packages', 'apps']],
    ['Dead code', bin('knip'), ['--no-progress']],
  ];
  for (const [name, command, args] of steps) {
    const started = Date.now();
    const run = spawnSync(command, args, { cwd: root, env, stdio: 'inherit' });
    if (run.status !== 0) {
      console.error(`${name}: failed, see above.`);
      process.exit(1);
    }
    console.log(`${name}: passed in ${((Date.now() - started) / 1000).toFixed(1)} s`);
  }
}

const report = join(root, '.cache', 'tests.json');
mkdirSync(join(root, '.cache'), { recursive: true });
const run = spawnSync(bin('vitest'), ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`, ...only], {
  cwd: root,
  env,
  stdio: 'inherit',
});
const { numPassedTests, numFailedTests } = JSON.parse(readFileSync(report, 'utf8'));
console.log(`\n${numPassedTests} passed, ${numFailedTests} failed`);
process.exit(run.status ?? 1);
