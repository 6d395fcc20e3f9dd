import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { house, patience } from './house.js';

const at = house();
const plain = (text: string) => text.replace(/[\u2009\u202f\u00a0]/g, ' ');
const slab = (page: Page) => page.getByRole('slider', { name: /slab cooler/ });
const minute = (page: Page) => page.locator('.ribbon-cut').getAttribute('data-minute').then(Number);
const open = async (page: Page, query = '', plant = 'pellamoor/kestrowan') => {
  await page.goto(`${at.url()}/${plant}/band${query}`);
  await page.waitForSelector('.strip-slider path');
  await page.waitForSelector('.ribbon-cut');
};
/** Of the reading at the cut, by its name. */
const reading = async (page: Page, name: string, stretch = 'slab cooler') =>
  plain(await page.getByRole('article', { name: stretch, exact: true }).locator('.reading', { has: page.locator('dt', { hasText: new RegExp(`^${name}`) }) }).locator('dd').innerText()); // prettier-ignore

describe('the cut along the band', { timeout: 2 * patience }, () => {
  it('stands still until it is played, moves while it is, and rests when it is paused', async () => {
    const page = await at.page();
    await open(page);
    const start = await minute(page);
    await page.waitForTimeout(400);
    expect(await minute(page)).toBe(start);
    await page.getByRole('button', { name: '60 times' }).click();
    const began = Date.now();
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    await page.waitForFunction((from) => Number(document.querySelector('.ribbon-cut')!.getAttribute('data-minute')) > from + 0.8, start);
    await page.getByRole('button', { name: 'Pause', exact: true }).click();
    const there = await minute(page);
    // Sixty times: a minute of the line in a second; never faster than the clock on the wall.
    expect(there - start).toBeLessThan((Date.now() - began) / 1000 + 0.2);
    await page.waitForTimeout(500);
    expect(await minute(page)).toBe(there);
    await page.waitForURL(/[?&]cut=/);
    expect(Number(new URL(page.url()).searchParams.get('cut'))).toBeCloseTo(there - start, 2);
    expect(at.complaints).toEqual([]);
  });

  it('is stepped by the keys and played by the space bar', async () => {
    const page = await at.page();
    await open(page);
    await slab(page).focus();
    const now = async () => Number(await slab(page).getAttribute('aria-valuenow'));
    for (const [key, wanted] of [['ArrowRight', 0.1], ['Shift+ArrowRight', 0.6], ['ArrowLeft', 0.5], ['PageUp', 1.5], ['PageDown', 0.5], ['Home', 0]] as const) {
      await page.keyboard.press(key);
      expect(await now(), key).toBeCloseTo(wanted, 6);
    } // prettier-ignore
    await page.keyboard.press('End');
    expect(await now()).toBeCloseTo(Number(await slab(page).getAttribute('aria-valuemax')), 6);
    await page.keyboard.press('Home');
    await page.keyboard.press(' ');
    await page.waitForFunction(() => Number(document.querySelector('.strip-slider')!.getAttribute('aria-valuenow')) > 0.2);
    await page.keyboard.press(' ');
    expect(await page.getByRole('button', { name: 'Play', exact: true }).count()).toBe(1);
    await page.waitForFunction(() => /core, its hottest place/.test(document.querySelector('.along [role="status"]')!.textContent));
  });

  it('is pulled along the strip, and stands at the same material on the ribbon', async () => {
    const page = await at.page();
    await open(page, '?cut=1');
    await slab(page).scrollIntoViewIfNeeded();
    const before = await minute(page);
    const box = (await slab(page).boundingBox())!;
    const y = box.y + box.height / 2;
    await page.mouse.move(box.x + 300, y);
    await page.mouse.down();
    await page.mouse.move(box.x + 500, y, { steps: 4 });
    await page.mouse.up();
    const strip = Number(await page.locator('.strip-cut').first().getAttribute('data-minute'));
    const plumb = await page
      .locator('.strip-cut #plumb, .strip-cut line')
      .first()
      .evaluate((line) => Number(line.getAttribute('x1')));
    expect(plumb).toBeCloseTo(500, 0);
    // The ribbon is as many minutes on as the strip, and so is the address.
    expect((await minute(page)) - before + 1).toBeCloseTo(strip, 2);
    await page.waitForURL((url) => Math.abs(Number(url.searchParams.get('cut')) - strip) < 0.01);
  });

  it('comes back by its address, into the tunnel too, and says where an address is beyond the line', async () => {
    const page = await at.page();
    await open(page, '?cut=4');
    expect(plain(await page.locator('.along-where').innerText())).toContain('4.0 min in the slab cooler');
    const core = await reading(page, 'core');
    await page.reload();
    await page.waitForSelector('.reading');
    expect(await reading(page, 'core')).toBe(core);
    await open(page, '?cut=14');
    expect(plain(await page.locator('.along-where').innerText())).toContain('in the cooling tunnel');
    expect(await reading(page, 'solid fat', 'cooling tunnel')).toMatch(/^\d+\s*%$/);
    await open(page, '?cut=99');
    expect(plain(await page.locator('.along-where').innerText())).toContain('The address asks for 99.0 min');
  });

  it('has a table that says what the strip says', async () => {
    const page = await at.page();
    await open(page, '?cut=5');
    await page.getByText('As a table: slab cooler').click();
    const row = page
      .locator('.along-table')
      .first()
      .locator('tr', { has: page.locator('th', { hasText: /^5\s*min$/ }) });
    const cells = (await row.locator('td').allInnerTexts()).map(plain);
    for (const [k, name] of ['along the belt', 'top', 'middle', 'bottom', 'core', 'evened out'].entries())
      expect((await reading(page, name)).replace(/\s/g, ''), name).toBe(cells[k]!.replace(/\s/g, ''));
    expect(await reading(page, 'at a knife')).toBe(cells.at(-1));
  });

  it('answers another slab speed at once: the core is ready farther along the belt', async () => {
    const page = await at.page();
    const words = async () =>
      plain(
        (await page
          .locator('.strip-slider')
          .first()
          .locator('text', { hasText: /core sticks/ })
          .textContent()) ?? '',
      );
    const pulled = async (speed: number) => {
      const before = await slab(page).getAttribute('aria-valuemax');
      const number = page.locator('.inspector').getByRole('slider').first();
      await number.focus();
      const [now, key] = [Number(await number.getAttribute('aria-valuenow')), 'ArrowRight'];
      for (let value = now; value < speed;) {
        await page.keyboard.press(key);
        await page.waitForTimeout(60);
        const next = Number(await number.getAttribute('aria-valuenow'));
        if (next === value) break;
        value = next;
      }
      await page.waitForFunction((was) => document.querySelector('.strip-slider')!.getAttribute('aria-valuemax') !== was, before);
    };
    await open(page, '?open=line.slab_speed', 'highmark/tamsel');
    const [, minute, place] = /until (\d\.\d) min, (\d+\.\d) m \(\d\d:\d\d\)$/.exec(await words())!;
    await pulled(1.7);
    const [, later, farther] = /until (\d\.\d) min, (\d+\.\d) m/.exec(await words())!;
    expect(later).toBe(minute);
    expect(Number(farther)).toBeGreaterThan(Number(place));
  });

  it('takes steps instead of sliding where less motion is asked for', async () => {
    const page = await at.page();
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await open(page);
    const start = await minute(page);
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    await page.waitForTimeout(500);
    expect(await minute(page)).toBe(start);
    await page.waitForFunction((from) => Number(document.querySelector('.ribbon-cut')!.getAttribute('data-minute')) > from, start);
    expect((await minute(page)) - start).toBeCloseTo(1, 3);
  });

  it('says why no slab is drawn, and follows the bar through the tunnel all the same', async () => {
    const page = await at.page();
    await open(page, '', 'tollhythe/orvenby');
    expect(await page.locator('.along-none').innerText()).toBe('Line A has no slab cooler with a length; the slab cannot be followed.');
    expect(await page.locator('.strip-slider').count()).toBe(1);
  });
});
