/**
 * Writes every drawing by day, by night and for print into one page and takes its picture, so that a person can look at it.
 * Usage: npx tsx packages/drawing/bench/gallery.ts <folder> [part of a plate's name]
 * A browser is taken from the variable CHROMIUM, default /usr/bin/chromium; without one only the page is written.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { toSvg, type Drawing, type Theme } from '../src/index.js';
import { plates } from './plates.js';

const folder = process.argv[2] ?? join(tmpdir(), 'drawing-gallery');
const only = process.argv[3] ?? '';
const themes: readonly Theme[] = ['day', 'night', 'print'];
const ground = { day: ['#F8F9F6', '#465157'], night: ['#10161A', '#B7BFBF'], print: ['#FFFFFF', '#222222'] } as const;
mkdirSync(folder, { recursive: true });

const ranges: Readonly<Record<string, string>> = {
  'latin-wght': 'unicode-range:U+0000-00FF,U+2000-206F,U+20AC,U+2122,U+2191,U+2193,U+2212',
  'greek-wght': 'unicode-range:U+0370-03FF',
  'math-wght': 'unicode-range:U+2190-2211,U+2213-22FF',
};
const require = createRequire(import.meta.url);
const fonts = [
  ['Ysabeau Office', 'ysabeau-office', ['latin-wght', 'greek-wght', 'math-wght']],
  ['Piazzolla', 'piazzolla', ['latin-standard']],
] as const;
const faces = fonts.flatMap(([family, name, files]) => {
  const home = join(dirname(require.resolve(`@fontsource-variable/${name}/package.json`)), 'files');
  return files.flatMap((file) =>
    ['normal', 'italic'].flatMap((style) => {
      const font = join(home, `${name}-${file}-${style}.woff2`);
      return existsSync(font)
        ? [
            `@font-face{font-family:"${family}";src:url(file://${font}) format("woff2");font-weight:100 900;font-style:${style};${ranges[file] ?? ''}}`,
          ]
        : [];
    }),
  );
});

function page(name: string, drawings: readonly (readonly [string, Drawing])[], theme: 'day' | 'night' | 'print'): string {
  const [paper, ink] = ground[theme];
  const figures = drawings
    .map(
      ([caption, drawing], at) =>
        `<figure>${toSvg(drawing.marks, { width: drawing.width, height: drawing.height, theme, title: caption, name: `${name}-${at}` })}<figcaption>${caption}</figcaption></figure>`,
    )
    .join('');
  return `<!doctype html><meta charset="utf-8"><style>${faces.join('')}body{margin:24px;background:${paper};color:${ink};font:520 15px "Ysabeau Office"}figure{display:inline-block;margin:0 28px 22px 0;vertical-align:top}figcaption{margin-top:6px;max-width:900px}svg{display:block}</style>${figures}`;
}

for (const plate of plates) {
  if (!plate.name.includes(only)) continue;
  const drawings = plate.draw();
  for (const theme of themes) {
    if (theme === 'variables' || (plate.themes !== undefined && !plate.themes.includes(theme))) continue;
    const html = join(folder, `${plate.name}-${theme}.html`);
    writeFileSync(html, page(plate.name, drawings, theme));
    photograph(html, join(folder, `${plate.name}-${theme}.png`), plate.size);
  }
}

function photograph(html: string, png: string, [width, height]: readonly [number, number]): void {
  const browser = process.env.CHROMIUM ?? '/usr/bin/chromium';
  if (!existsSync(browser)) return;
  const profile = mkdtempSync(join(tmpdir(), 'gallery-'));
  const run = spawnSync(
    browser,
    [
      '--headless',
      '--no-sandbox',
      '--disable-gpu',
      '--disable-background-networking',
      '--allow-file-access-from-files',
      '--hide-scrollbars',
      `--user-data-dir=${profile}`,
      `--window-size=${width},${height}`,
      '--virtual-time-budget=1500',
      `--screenshot=${png}`,
      `file://${html}`,
    ],
    { timeout: 60_000 },
  );
  rmSync(profile, { recursive: true, force: true });
  if (run.status !== 0) console.error(`no picture of ${html}: ${String(run.stderr).slice(0, 300)}`);
  else console.log(png);
}
