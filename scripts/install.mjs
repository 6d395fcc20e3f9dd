// Installs the packages of the lock file when they are not there, or not the ones the lock names. Built-ins only.
import { createHash } from 'node:crypto';
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const stamp = join(root, 'node_modules', '.deps-stamp');
const lock = join(root, '.install-lock');

const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`Barwright needs Node.js 20.19 or newer; this is ${process.version}. Install a newer one and try again.`);
  process.exit(1);
}

const wanted = createHash('sha256')
  .update(readFileSync(join(root, 'package-lock.json')))
  .update(`${process.versions.modules} ${process.platform} ${process.arch}`)
  .digest('hex');
const installed = () => existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted;

if (!installed()) {
  await withLock(() => {
    if (installed()) return;
    console.log('Installing packages (once; about a minute) …');
    const npm = process.env.npm_execpath;
    const args = ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error'];
    const run = npm
      ? spawnSync(process.execPath, [npm, ...args], { cwd: root, stdio: 'inherit' })
      : spawnSync('npm', args, { cwd: root, stdio: 'inherit', shell: process.platform === 'win32' });
    if (run.status !== 0) {
      console.error('The packages could not be installed; npm says why above. Check the connection to the package registry and try again.');
      process.exit(1);
    }
    writeFileSync(stamp, wanted);
  });
}

/** Two starts at once: one installs, the other waits. A lock older than ten minutes is left over. */
async function withLock(work) {
  for (;;) {
    try {
      mkdirSync(lock);
      break;
    } catch {
      if (Date.now() - (statSync(lock, { throwIfNoEntry: false })?.mtimeMs ?? 0) > 600_000) rmSync(lock, { recursive: true, force: true });
      else await new Promise((resolve) => setTimeout(resolve, 500));
    }
  }
  try {
    await work();
  } finally {
    rmSync(lock, { recursive: true, force: true });
  }
}
