import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { plantFolders, serve, type Serving } from '@barwright/server';
import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll } from 'vitest';

const root = join(import.meta.dirname, '../../..');
/** What a first visit may take on a machine that does other things too, ms. */
export const patience = 30_000;

export interface House {
  readonly url: () => string;
  /** A page in a browser that has seen nothing yet; whatever it complains of is in `complaints`. */
  readonly page: (size?: { readonly width: number; readonly height: number }, theme?: 'day' | 'night') => Promise<Page>;
  readonly complaints: string[];
  readonly serving: () => Serving;
}

/** The built screens, a server over a fresh data folder, and a real browser; all gone after the tests of the file. */
export function house(): House {
  let browser: Browser | undefined;
  let serving: Serving | undefined;
  let data = '';
  const open: BrowserContext[] = [];
  const complaints: string[] = [];
  beforeAll(async () => {
    const web = join(root, 'apps/web/dist');
    if (!existsSync(join(web, 'index.html'))) throw new Error('The screens are not built; run `node scripts/build.mjs web` first');
    browser = await launch();
    data = mkdtempSync(join(tmpdir(), 'barwright-web-'));
    serving = await serve({ port: 0, dataDir: data, webRoot: web, plants: plantFolders(join(root, 'examples')), say: () => undefined });
  }, 2 * patience);
  afterEach(async () => {
    for (const context of open.splice(0)) await context.close();
    complaints.length = 0;
  });
  afterAll(async () => {
    await browser?.close();
    await serving?.close();
    if (data) rmSync(data, { recursive: true, force: true });
  });
  return {
    url: () => serving!.url,
    complaints,
    serving: () => serving!,
    page: async (size = { width: 1440, height: 900 }, theme = 'day') => {
      const context = await browser!.newContext({ viewport: size });
      open.push(context);
      context.setDefaultTimeout(patience);
      await context.addInitScript(`try { localStorage.setItem('barwright.theme', '${theme}') } catch {}`);
      const page = await context.newPage();
      page.on('console', (message) => {
        if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
      });
      page.on('pageerror', (error) => complaints.push(error.message));
      return page;
    },
  };
}

interface FoundBrowser {
  readonly path?: string;
  readonly args: string[];
  readonly env?: Record<string, string>;
  readonly sentence?: string;
}

/** The browser that the test run found; without one the tests fail with its sentence. */
async function launch(): Promise<Browser> {
  const { BARWRIGHT_NO_BROWSER: none, BARWRIGHT_BROWSER: given, BARWRIGHT_BROWSER_ARGS: words = '' } = process.env;
  if (none) throw new Error(none);
  if (given) return chromium.launch({ executablePath: given, args: words.split(' ').filter((word) => word !== '') });
  const { findBrowser } = (await import(pathToFileURL(join(root, 'scripts/browser.mjs')).href)) as {
    findBrowser: () => Promise<FoundBrowser>;
  };
  const found = await findBrowser();
  if (!found.path) throw new Error(found.sentence);
  return chromium.launch({ executablePath: found.path, args: found.args, env: { ...process.env, ...found.env } as Record<string, string> });
}

/** The digits of a number as they stand on the page. */
export async function digitsOf(page: Page, quantity: string): Promise<string> {
  const text = await page
    .locator(`main [data-quantity="${quantity}"] .figure-digits`)
    .first()
    .evaluate((digits) => digits.firstChild?.textContent ?? '');
  return text.replace(/[\u2009\u202f\s]/g, '');
}
