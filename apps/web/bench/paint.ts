/**
 * How fast the screens answer, measured in a real browser against the built screens and a real server.
 * Usage: npx tsx apps/web/bench/paint.ts [--runs 15]; prints JSON.
 *
 * first paint: first contentful paint of the section and of an empty page with one word, in turns, each run in another order,
 * cold cache, medians. The browser tells it in steps of 4 ms.
 * script: bytes of script over the wire before the first picture of the bar.
 * repaint: a hand pulls an edge, a level, a number. `needs` is the time from the move to the changed page, engine included, plus
 * the frame that shows it (style, layout, paint); `seen` is the same with the wait for the beat of the display in between.
 * `bare_page` is a page where a move changes one word: what the machine itself needs at that hour.
 */
import { createServer } from 'node:http';
import { mkdtempSync, rmSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core';
import { plantFolders, serve } from '@barwright/server';

const pulls = [
  ['edge of the coat', '.edge', 0],
  ['top of a layer with nuts', '.edge', 1],
  ['top of the foam', '.edge', 2],
  ['water level', '.level', 0],
  ['a number', '.part-grams .figure', 0],
] as const;

/** A page with one word that a hand can change. */
const bareDrag = `<!doctype html><title>bare</title><section class="section"><p class="edge">0</p></section><script>
document.addEventListener('onpointerrawupdate' in window ? 'pointerrawupdate' : 'pointermove', (event) => { document.querySelector('p').textContent = event.clientX + event.clientY; });
</script>`;

const root = join(import.meta.dirname, '../../..');
const runs = Number(process.argv[process.argv.indexOf('--runs') + 1]) || 15;
const path = '/pellamoor/kestrowan/section';

const { findBrowser } = (await import(pathToFileURL(join(root, 'scripts/browser.mjs')).href)) as {
  findBrowser: () => Promise<FoundBrowser>;
};
const found = await findBrowser();
if (!found.path) throw new Error(found.sentence);
const { path: executablePath, args, env } = found;
const data = mkdtempSync(join(tmpdir(), 'barwright-paint-'));
const serving = await serve({
  port: 0,
  dataDir: data,
  webRoot: join(root, 'apps/web/dist'),
  plants: plantFolders(join(root, 'examples')),
  say: () => undefined,
});
const headers = await headersOf(serving.url);
const empty = createServer((request, answer) => {
  if (request.url === '/same') for (const [name, value] of headers) answer.setHeader(name, value);
  answer.setHeader('content-type', 'text/html').end(request.url === '/bare' ? bareDrag : '<!doctype html><title>empty</title><p>Barwright');
});
await new Promise<void>((resolve) => empty.listen(0, '127.0.0.1', resolve));

try {
  const steady = await chromium.launch({
    executablePath,
    args: [...args],
    ...(env ? { env: { ...process.env, ...env } as Record<string, string> } : {}),
  });
  const emptyUrl = `http://127.0.0.1:${(empty.address() as AddressInfo).port}/`;
  await firstPaint(steady, serving.url + path);
  const paints: { ours: number; bare: number; same: number }[] = [];
  const pages = [['bare', emptyUrl] as const, ['same', `${emptyUrl}same`] as const, ['ours', serving.url + path] as const];
  for (let i = 0; i < runs; i++) {
    const paint = { ours: NaN, bare: NaN, same: NaN };
    for (let k = 0; k < pages.length; k++) {
      const [which, url] = pages[(k + i) % pages.length]!;
      paint[which] = await firstPaint(steady, url);
    }
    paints.push(paint);
  }
  const scripts = await scriptBefore(steady, serving.url + path);
  const repainted = await repaint(steady, serving.url + path, pulls);
  const barePage = await repaint(steady, `${emptyUrl}bare`, [['one word', '.edge', 0]]);
  await steady.close();
  const [ours, bare, same] = [
    median(paints.map((each) => each.ours)),
    median(paints.map((each) => each.bare)),
    median(paints.map((each) => each.same)),
  ];
  console.log(
    JSON.stringify(
      {
        load_of_this_machine: round(loadavg()[0]!),
        first_contentful_paint: {
          section_ms: ours,
          empty_page_ms: bare,
          empty_page_with_the_same_headers_ms: same,
          ratio: over(ours, bare),
          ratio_with_the_same_headers: over(ours, same),
          asked: 1.3,
          runs,
        },
        script_before_first_picture: scripts,
        repaint_ms: { ...repainted, asked_p95: 16, bare_page: barePage['one word'] },
      },
      undefined,
      2,
    ),
  );
} finally {
  empty.close();
  await serving.close();
  rmSync(data, { recursive: true, force: true });
}

interface FoundBrowser {
  readonly path?: string;
  readonly args: string[];
  readonly env?: Record<string, string>;
  readonly sentence?: string;
}

/** A browser that has seen nothing yet. The runner names functions with a helper that the page must have too. */
async function fresh(browser: Browser): Promise<BrowserContext> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  await context.addInitScript('globalThis.__name = (named) => named');
  return context;
}

/** Headers that make the browser work before it paints: policies, and the opener policy, for which it starts another process. */
async function headersOf(url: string): Promise<readonly (readonly [string, string])[]> {
  const { headers } = await fetch(url, { headers: { accept: 'text/html' } });
  return [...headers].filter(([name]) => /policy|frame-options|content-type-options/.test(name));
}

function over(a: number, b: number): number {
  return Math.round((100 * a) / b) / 100;
}

async function firstPaint(browser: Browser, url: string): Promise<number> {
  const context = await fresh(browser);
  const page = await context.newPage();
  await page.goto(url);
  const at = await page.evaluate(
    () =>
      new Promise<number>((resolve) => {
        const read = () => {
          const [entry] = performance.getEntriesByName('first-contentful-paint');
          if (entry) resolve(entry.startTime);
          else setTimeout(read, 10);
        };
        read();
      }),
  );
  await context.close();
  return round(at);
}

async function scriptBefore(browser: Browser, url: string): Promise<{ kilobytes: number; asked: number; files: string[] }> {
  const context = await fresh(browser);
  const page = await context.newPage();
  const files: string[] = [];
  let bytes = 0;
  const cdp = await context.newCDPSession(page);
  await cdp.send('Network.enable');
  const names = new Map<string, string>();
  cdp.on('Network.responseReceived', ({ requestId, response, type }) => {
    if (type === 'Script' || /\.js$/.test(response.url)) names.set(requestId, response.url.split('/').pop()!);
  });
  cdp.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
    const name = names.get(requestId);
    if (!name) return;
    bytes += encodedDataLength;
    files.push(`${name} ${round(encodedDataLength / 1000)} kB`);
  });
  await page.goto(url);
  await page.waitForSelector('.plate-bar path');
  // The worker's own script is no request of the page: it is counted by its size on the wire.
  const worker = await page.evaluate(() =>
    performance
      .getEntriesByType('resource')
      .filter(({ name }) => /worker-[\w-]+\.js/.test(name))
      .map((entry) => [entry.name.split('/').pop()!, (entry as PerformanceResourceTiming).encodedBodySize] as const),
  );
  for (const [name, size] of worker) {
    if (files.some((file) => file.startsWith(name))) continue;
    bytes += size;
    files.push(`${name} ${round(size / 1000)} kB`);
  }
  await context.close();
  return { kilobytes: round(bytes / 1000), asked: 250, files };
}

interface Times {
  readonly needs: number[];
  readonly seen: number[];
}

type Pull = readonly [name: string, selector: string, nth: number];

async function repaint(browser: Browser, url: string, pulls: readonly Pull[]): Promise<Record<string, unknown>> {
  const context = await fresh(browser);
  const page = await context.newPage();
  await page.goto(url);
  await page.waitForSelector('.edge');
  // As long as a person looks before the hand comes.
  await page.waitForTimeout(1000);
  await watch(page);
  const out: Record<string, unknown> = {};
  const all: Times = { needs: [], seen: [] };
  for (const [name, selector, nth] of pulls) {
    const box = (await page.locator(selector).nth(nth).boundingBox())!;
    const [x, y] = [box.x + box.width - 8, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await taken(page);
    for (let i = 1; i <= 60; i++) {
      await page.mouse.move(x + 6 + i * 0.4, y - 2 - i * 0.3);
      // Off the beat of the frames, as a hand is.
      await page.waitForTimeout(21 + (i % 7));
    }
    await page.mouse.up();
    await page.waitForTimeout(200);
    const times = await taken(page);
    all.needs.push(...times.needs);
    all.seen.push(...times.seen);
    out[name] = summary(times);
  }
  await context.close();
  return { ...summary(all), ...out };
}

function summary({ needs, seen }: Times) {
  const of = (times: readonly number[]) => ({ p50: quantile(times, 0.5), p95: quantile(times, 0.95) });
  return { moves: needs.length, needs: of(needs), seen: of(seen) };
}

interface Watched {
  times: { needs: number[]; seen: number[] };
}

function taken(page: Page): Promise<Times> {
  return page.evaluate(() => {
    const watched = window as unknown as Watched;
    const { times } = watched;
    watched.times = { needs: [], seen: [] };
    return times;
  });
}

async function watch(page: Page): Promise<void> {
  await page.evaluate(() => {
    const watched = window as unknown as Watched;
    watched.times = { needs: [], seen: [] };
    let asked: number | undefined;
    let move: { readonly asked: number; readonly changed: number; frame: number } | undefined;
    const name = 'onpointerrawupdate' in window ? 'pointerrawupdate' : 'pointermove';
    addEventListener(name, (event) => (asked ??= event.timeStamp), true);
    const channel = new MessageChannel();
    channel.port1.onmessage = () => {
      if (!move) return;
      const end = performance.now();
      watched.times.needs.push(move.changed - move.asked + (end - move.frame));
      watched.times.seen.push(end - move.asked);
      move = undefined;
    };
    new MutationObserver(() => {
      if (asked === undefined || move) return;
      move = { asked, changed: performance.now(), frame: 0 };
      asked = undefined;
      requestAnimationFrame(() => {
        if (!move) return;
        move.frame = performance.now();
        channel.port2.postMessage(0);
      });
    }).observe(document.querySelector('.section')!, { subtree: true, childList: true, attributes: true, characterData: true });
  });
}

function quantile(values: readonly number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return round(sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? NaN);
}

function median(values: readonly number[]): number {
  return quantile(values, 0.5);
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
