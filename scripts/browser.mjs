// Finds a Chromium for the browser tests: CHROME_PATH, an installed one, the test library's cache, the one a package ships,
// and, only as root in CI, the system's package manager. Prints nothing; returns { path, env, args } or a sentence.
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import { join } from 'node:path';

const quiet = [
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export async function findBrowser() {
  const root = process.getuid?.() === 0;
  const args = root ? [...quiet, '--no-sandbox'] : quiet;
  const given = process.env.CHROME_PATH;
  if (given) {
    if (existsSync(given)) return { path: given, args };
    return { sentence: `CHROME_PATH names ${given}, which is not there.` };
  }
  const own = installed() ?? cached();
  if (own) return { path: own, args };
  const shipped = await fromPackage();
  if (shipped) return shipped;
  if (root && process.env.CI && existsSync('/usr/bin/apt-get')) {
    console.log('No browser found. As root in CI: installing the system’s Chromium package …');
    spawnSync('apt-get', ['update', '-qq'], { stdio: 'inherit' });
    spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], { stdio: 'inherit' });
    const now = installed();
    if (now) return { path: now, args };
  }
  return { sentence: 'No Chromium was found: install one, or name one in CHROME_PATH, and run the tests again.' };
}

function installed() {
  const places = [
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/google-chrome',
    '/usr/bin/google-chrome-stable',
    '/snap/bin/chromium',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    ...['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap((name) =>
      process.env[name]
        ? [join(process.env[name], 'Google/Chrome/Application/chrome.exe'), join(process.env[name], 'Chromium/Application/chrome.exe')]
        : [],
    ),
  ];
  return places.find((place) => existsSync(place));
}

function cached() {
  const folders = [
    process.env.PLAYWRIGHT_BROWSERS_PATH,
    join(homedir(), '.cache/ms-playwright'),
    join(homedir(), 'Library/Caches/ms-playwright'),
    join(process.env.LOCALAPPDATA ?? homedir(), 'ms-playwright'),
  ];
  for (const folder of folders) {
    if (!folder || !existsSync(folder)) continue;
    for (const name of readdirSync(folder)
      .filter((entry) => entry.startsWith('chromium'))
      .reverse()) {
      const inside = [
        'chrome-linux/chrome',
        'chrome-linux64/chrome',
        'chrome-mac/Chromium.app/Contents/MacOS/Chromium',
        'chrome-win/chrome.exe',
      ];
      const found = inside.map((path) => join(folder, name, path)).find((path) => existsSync(path));
      if (found) return found;
    }
  }
  return undefined;
}

/** A Chromium for 64-bit Linux that the package registry ships; its libraries are unpacked beside it where the system lacks them. */
async function fromPackage() {
  if (process.platform !== 'linux' || process.arch !== 'x64') return undefined;
  try {
    const { default: chromium, inflate } = await import('@sparticuz/chromium');
    const path = await chromium.executablePath();
    const args = [...quiet, '--no-sandbox', '--single-process', '--no-zygote'];
    const libraries = join(tmpdir(), 'al2023');
    if (!existsSync(join(libraries, 'lib')) && typeof inflate === 'function') {
      mkdirSync(libraries, { recursive: true });
      await inflate(join(import.meta.dirname ?? '.', '../node_modules/@sparticuz/chromium/bin/al2023.tar.br'));
    }
    const env = existsSync(join(libraries, 'lib'))
      ? { LD_LIBRARY_PATH: [join(libraries, 'lib'), process.env.LD_LIBRARY_PATH].filter(Boolean).join(':') }
      : {};
    execFileSync(path, ['--version'], { env: { ...process.env, ...env }, stdio: 'ignore' });
    return { path, args, env };
  } catch {
    return undefined;
  }
}
