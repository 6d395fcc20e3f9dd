import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { digitsOf, house, patience } from './house.js';

const at = house();
const section = async (page: Page, query = '') => {
  await page.goto(`${at.url()}/pellamoor/kestrowan/section${query}`);
  await page.waitForSelector('.plate-bar path');
};

/** The sheet as the server computes it. */
async function sheet(): Promise<Record<string, { readonly value: number }>> {
  const answer = await fetch(`${at.url()}/api/plants/pellamoor/versions/latest/sheet`);
  return ((await answer.json()) as { quantities: Record<string, { value: number }> }).quantities;
}

async function pull(page: Page, selector: string, nth: number, dx: number, dy: number): Promise<void> {
  const box = (await page.locator(selector).nth(nth).boundingBox())!;
  const [x, y] = [box.x + box.width - 8, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 1; i <= 8; i++) await page.mouse.move(x + (dx * i) / 8, y + (dy * i) / 8);
  await page.mouse.up();
  await page.waitForSelector('.does-line');
}

describe('the section', { timeout: 2 * patience }, () => {
  it('opens on the plant that was saved last, with the numbers that the server computes', async () => {
    const page = await at.page();
    await page.goto(at.url());
    await page.waitForSelector('.plate-bar path');
    expect(page.url()).toMatch(/\/[a-z]+\/[a-z]+\/section$/);
    await section(page);
    const server = await sheet();
    for (const [id, decimals] of [
      ['layer.caramel.mass', 2],
      ['coat.mass', 2],
      ['bar.mass', 2],
      ['bar.cost', 2],
      ['caramel.water_activity', 3],
      ['step.caramel_nougat', 3],
      ['layer.nougat.thickness', 2],
    ] as const) {
      expect(await digitsOf(page, id), id).toBe(server[id]!.value.toFixed(decimals));
    }
    expect(at.complaints).toEqual([]);
  });

  it('answers the pull of an edge, and goes back', async () => {
    const page = await at.page();
    await section(page);
    const [thickness, mass] = [await digitsOf(page, 'layer.nougat.thickness'), await digitsOf(page, 'layer.nougat.mass')];
    await pull(page, '.edge', 2, 0, -14);
    expect(Number(await digitsOf(page, 'layer.nougat.thickness'))).toBeGreaterThan(Number(thickness) + 0.3);
    expect(Number(await digitsOf(page, 'layer.nougat.mass'))).toBeGreaterThan(Number(mass) + 0.5);
    await page.waitForURL(/set=layer\.nougat\.mass:/);
    await page.keyboard.press('Control+z');
    await page.waitForFunction(
      (words) => document.querySelector('main [data-quantity="layer.nougat.mass"] .figure-digits')?.textContent === words,
      mass,
    );
    await page.keyboard.press('Control+Shift+z');
    await page.getByRole('button', { name: 'Back to truth' }).click();
    await page.waitForFunction(
      (words) => document.querySelector('main [data-quantity="layer.nougat.mass"] .figure-digits')?.textContent === words,
      mass,
    );
    await page.waitForURL((url) => !url.search.includes('set='));
    expect(at.complaints).toEqual([]);
  });

  it('answers the pull of a water level with the sentence of the window it breaks', async () => {
    const page = await at.page();
    await section(page);
    await pull(page, '.level', 0, 30, 0);
    expect(await page.locator('h1').innerText()).toMatch(/^If you do this, .*(limit|window)/);
    expect(await page.locator('.does-breaks').count()).toBeGreaterThan(0);
    expect(await page.locator('.margin-mark svg').getAttribute('aria-label')).toBe('act:');
  });

  it('is worked by keys alone', async () => {
    const page = await at.page();
    await section(page);
    const number = page.locator('main [data-quantity="coat.mass"]').first();
    await number.focus();
    await page.keyboard.press('ArrowUp');
    await page.waitForSelector('.does-line');
    expect(Number(await digitsOf(page, 'coat.mass'))).toBeGreaterThan(15);
    await page.locator('.edge').first().focus();
    await page.keyboard.press('ArrowDown');
    await page.waitForTimeout(200);
    await number.focus();
    await page.keyboard.press('Enter');
    await page.waitForSelector('.inspector .about');
    expect(await page.locator('.inspector-title').evaluate((heading) => heading === document.activeElement)).toBe(true);
    await page.keyboard.press('Escape');
    await page.waitForSelector('.inspector', { state: 'detached' });
    await page.waitForFunction(() => (document.activeElement as HTMLElement | null)?.dataset.quantity === 'coat.mass');
  });

  it('shows from an address what was pulled in it, and says so', async () => {
    const page = await at.page();
    await section(page, '?set=caramel.moisture:9.9&set=coat.mass:15.6');
    expect(await digitsOf(page, 'coat.mass')).toBe('15.60');
    expect(await page.locator('.sub').innerText()).toMatch(/9\.50.* → 9\.90.*Nothing is sent to a machine/);
    expect(await page.locator('main [data-quantity="coat.mass"]').first().getAttribute('aria-label')).toContain(
      'if you do this; the truth is',
    );
  });

  it('reads in US units where that is chosen, and keeps the choice', async () => {
    const page = await at.page();
    await section(page);
    await page.getByRole('button', { name: /^Units: metric/ }).click();
    await page.waitForFunction(() =>
      document.querySelector('main [data-quantity="bar.mass"] .figure-digits')?.textContent?.startsWith('1.7'),
    );
    await page.reload();
    await page.waitForSelector('.plate-bar path');
    expect(await digitsOf(page, 'bar.mass')).toMatch(/^1\.72/); // 48.80 g
  });

  it('tells in one sentence what is not there', async () => {
    const page = await at.page();
    await page.goto(`${at.url()}/nobody/kestrowan/section`);
    await page.waitForSelector('.refusal');
    expect(await page.locator('h1').innerText()).toContain('nobody');
    await page.goto(`${at.url()}/pellamoor/marmalade/section`);
    await page.waitForSelector('.refusal');
    expect(await page.locator('h1').innerText()).toContain('it has Kestrowan');
  });

  it('has its first frame before its scripts', async () => {
    await section(await at.page());
    const html = await (await fetch(`${at.url()}/pellamoor/kestrowan/section`, { headers: { accept: 'text/html' } })).text();
    expect(html).toMatch(/<div id="first"><div class="first">.*Kestrowan.*first-cut/s);
  });
});
