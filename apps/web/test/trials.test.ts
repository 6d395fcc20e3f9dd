import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { house, patience } from './house.js';

const at = house();
const fixtures = join(import.meta.dirname, '../../cli/test/fixtures');
const plain = (text: string) => text.replace(/[\u2009\u202f\u00a0]/g, ' ');
const title = async (page: Page) => plain(await page.locator('h1').innerText());
const titled = (page: Page, words: string) =>
  page.waitForFunction(
    (wanted) =>
      document
        .querySelector('h1')
        ?.textContent?.replace(/[\u2009\u202f\u00a0]/g, ' ')
        .includes(wanted),
    words,
  );
const open = async (page: Page, rest = '') => {
  await page.goto(`${at.url()}/pellamoor/kestrowan/trials${rest}`);
  await page.waitForSelector(rest.startsWith('/') ? '.plate path' : '.trial-line');
};
const flow = [
  'shear rate (1/s),stress (Pa)',
  ...[2, 5, 10, 20, 40, 50].map((rate) => `${rate},${((Math.sqrt(10) + Math.sqrt(2 * rate)) ** 2).toFixed(4)}`),
].join('\n');

/** As a hand would drop it anywhere on the page. */
async function drop(page: Page, name: string, text: string): Promise<void> {
  const data = await page.evaluateHandle(
    ([file, content]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([content!], file!, { type: 'text/csv' }));
      return transfer;
    },
    [name, text],
  );
  await page.dispatchEvent('.trials', 'dragover', { dataTransfer: data });
  await page.waitForSelector('.drop-over');
  await page.dispatchEvent('.trials', 'drop', { dataTransfer: data });
}

describe('the trials', { timeout: 2 * patience }, () => {
  it('list every question with its sentence, and open each', async () => {
    const page = await at.page();
    await open(page);
    expect(await title(page)).toBe('Four of these ask for a person.');
    expect(await page.locator('.trial-line').count()).toBe(17);
    expect(plain(await page.locator('.sub').innerText())).toContain('6 logs of 17 March 2026');
    await page.locator('.trial-line', { has: page.locator('.trial-line-name', { hasText: /^Temper$/ }) }).click();
    await page.waitForURL(/\/trials\/temper$/);
    await titled(page, 'the coolant supply moved it, not the throughput');
    await page.goBack();
    await page.waitForSelector('.trial-line');
    expect(at.complaints).toEqual([]);
  });

  it('tell what a cooker asks, and open its numbers in the inspector', async () => {
    const page = await at.page();
    await page.goto(`${at.url()}/tollhythe/orvenby/trials/cooker`);
    await titled(page, 'Soft caramel asks 51 kW of its kettle');
    const probe = page.getByLabel('Its probe shows too much');
    await probe.fill('2');
    await probe.press('Enter');
    await page.waitForURL(/ask=probe:2/);
    expect(plain(await page.locator('main').innerText())).toContain('Relief valves stay free');
    await page.getByRole('button', { name: /38\.5/ }).first().click();
    await page.locator('.inspector', { hasText: 'time to boil a batch of soft caramel down' }).waitFor();
    expect(at.complaints).toEqual([]);
  });

  it('tell what a weak albumen does, and what a cup says of it', async () => {
    const page = await at.page();
    await open(page, '/foam');
    await titled(page, 'holds 35 % air, as it is meant to');
    const held = page.getByLabel('Gas held, of a good lot');
    await held.fill('80');
    await held.press('Enter');
    await titled(page, 'Nougat at 0.990 g/cm³ is too dense: 31 % air in place of 35 %.');
    await page.waitForURL(/ask=power:80/);
    await page.getByRole('button', { name: 'As it is now' }).click();
    await titled(page, 'holds 35 % air');
    const cup = page.getByLabel('Density by the cup');
    await cup.fill('0.91');
    await cup.press('Enter');
    await titled(page, 'is inside its window');
    expect(await page.locator('.sub').innerText()).toContain('Do nothing');
    expect(at.complaints).toEqual([]);
  });

  it('answer a wet caramel asked for in the fields, and find the cheapest blend with the optimiser of the worker', async () => {
    const page = await at.page();
    await page.goto(`${at.url()}/pellamoor/kestrowan/trials/batch`);
    await titled(page, 'Tell what is known of a batch of caramel.');
    const water = page.getByLabel('Water by the laboratory');
    await water.fill('10.3');
    await water.press('Enter');
    await titled(page, 'Caramel at 10.30 % instead of 9.50 %');
    const shown = page.getByLabel('End temperature as the probe showed it');
    await shown.fill('117.7');
    await shown.press('Enter');
    await titled(page, 'the probe shows 1.8 K too much');
    expect(new URL(page.url()).searchParams.getAll('ask')).toEqual(['moisture:10.3', 'temperature:117.7']);
    await page.goto(`${at.url()}/pellamoor/kestrowan/trials/blend`);
    await titled(page, 'The cheapest blend costs EUR 1.400 a kg instead of EUR 1.424');
    expect(at.complaints).toEqual([]);
  });

  it('are reached from the foot, and left by it', async () => {
    const page = await at.page();
    await page.goto(`${at.url()}/pellamoor/kestrowan/section`);
    await page.getByRole('button', { name: 'Trials', exact: true }).click();
    await page.waitForSelector('.trial-line');
    await page.getByRole('button', { name: 'Speed', exact: true }).click();
    await page.waitForURL(/\/trials\/speed$/);
    await page.getByRole('button', { name: 'Band', exact: true }).click();
    await page.waitForURL(/\/kestrowan\/band$/);
  });

  it('show from an address what was asked, and keep in it what is asked next', async () => {
    const page = await at.page();
    await open(page, '/speed?ask=rate:1050');
    expect(await title(page)).toBe('At 1 050 bars/min the slab former cannot: it is full at 1 000.');
    expect(await page.locator('.margin-mark svg').getAttribute('aria-label')).toBe('act:');
    const rate = page.getByRole('textbox', { name: /^Rate/ });
    await rate.fill('990');
    await rate.press('Enter');
    await titled(page, 'Every station can do 990 bars/min');
    await page.waitForURL(/ask=rate:990/);
    await page.getByRole('button', { name: 'As it is now' }).click();
    await page.waitForURL((url) => !url.search.includes('ask='));
    // Typed while the answer is still on its way: it stays.
    await rate.fill('fast');
    await titled(page, 'At 1 050 bars/min the slab former cannot');
    expect(await page.locator('.trial-field .said-act').innerText()).toBe('‘fast’ is no number.');
  });

  it('open where a number comes from, and give the focus back', async () => {
    const page = await at.page();
    await open(page, '/speed?ask=rate:1050');
    const number = page.locator('.trial-table [data-quantity="station.temperer.throughput"]').first();
    await number.focus();
    await page.keyboard.press('Enter');
    await page.waitForSelector('.inspector .about');
    expect(await page.locator('.inspector-title').innerText()).toBe('Chocolate through the temperer');
    await page.keyboard.press('Escape');
    await page.waitForSelector('.inspector', { state: 'detached' });
    await page.waitForFunction(() => (document.activeElement as HTMLElement | null)?.dataset.quantity === 'station.temperer.throughput');
  });

  it('follow a zone of the tunnel that is turned by keys, and go back', async () => {
    const page = await at.page();
    await open(page, '/tunnel?ask=rate:1050');
    const before = await title(page);
    const zone = page.locator('.trial-knobs [role="slider"]').nth(1);
    await zone.focus();
    for (const value of ['12.0', '12.5', '13.0']) {
      await page.keyboard.press('Shift+ArrowUp');
      await page.waitForFunction(
        (digits) => document.querySelectorAll('.trial-knobs [role="slider"]')[1]?.getAttribute('aria-valuetext')?.startsWith(digits),
        value,
      );
    }
    await page.waitForFunction(
      (words) => document.querySelector('h1')?.textContent?.replace(/[\u2009\u202f\u00a0]/g, ' ') !== words,
      before,
    );
    await page.waitForURL(/set=set\.cooling_tunnel\.zone_2:/);
    await page.getByRole('button', { name: 'Back to truth' }).click();
    await titled(page, before);
  });

  it('answer a log that is dropped anywhere, and one that is chosen', async () => {
    const page = await at.page();
    // Before anything else: a browser takes its time to leave its own dialog out.
    const chosen = page.waitForEvent('filechooser', { timeout: 2 * patience });
    await open(page);
    await drop(page, 'flow.csv', flow);
    await page.waitForURL(/\/trials\/flow$/);
    await page.waitForFunction(() => document.querySelector('.sub')?.textContent?.includes('flow.csv reads'));
    expect(plain(await page.locator('.sub').innerText())).toContain('flow.csv reads 10.0 Pa and 2.00 Pa·s by Casson');
    expect(await page.locator('.drop-said').innerText()).toContain('flow.csv: the table of a viscometer, 7 lines.');
    const button = page.getByRole('button', { name: 'Choose a file' });
    await button.focus();
    await page.keyboard.press('Enter');
    await (await chosen).setFiles(join(fixtures, 'roast.xlsx'));
    await page.waitForURL(/\/trials\/roasts$/);
    await titled(page, 'The kill step of the peanut roaster is proven: all 12 readings');
    expect(at.complaints).toEqual([]);
  });

  it('name the bars and pallets of the wet cooks, drawn between two rulers, and take pallets brought by hand', async () => {
    const page = await at.page();
    await open(page, '/cooks');
    await titled(page, 'C06 to C08');
    await page.waitForFunction(() => document.querySelector('.sub')?.textContent?.includes('P018 to P029'));
    const drawn = page.getByRole('img', { name: /^From laid to the pallets: packed/ });
    expect(await drawn.locator('text', { hasText: 'P018' }).count()).toBe(1);
    const rows = page.getByRole('region', { name: 'Pallets to hold' }).getByRole('row');
    expect(await rows.count()).toBe(13);
    expect(await page.getByRole('region', { name: 'Mind the hold' }).innerText()).toContain('only a named person may release');
    await drop(page, 'pallets.csv', 'pallet,first_pack,last_pack\nA1,2026-03-17T11:30,2026-03-17T12:30\nA2,2026-03-17T12:31,\n');
    await page.waitForFunction(() => document.querySelector('.sub')?.textContent?.includes('on 2 pallets, A1, A2'));
    expect(await page.locator('.drop-said').innerText()).toContain('pallets.csv: a list of pallets');
    expect(at.complaints).toEqual([]);
  });

  it('say of each file that cannot be read what came and what was expected', async () => {
    const page = await at.page();
    await open(page);
    await drop(page, 'pallets.csv', 'pallet,cases\nP1,20\n');
    await page.waitForSelector('.drop-said .said-act');
    expect(await page.locator('.drop-said').innerText()).toMatch(
      /^pallets\.csv has the columns "pallet", "cases".*expected are those of a viscometer/s,
    );
    await drop(page, 'open.csv', 'time,slope\n06:30,"0.1\n');
    await page.waitForFunction(() => document.querySelector('.drop-said')?.textContent?.startsWith('open.csv, line 2'));
    expect(page.url()).toMatch(/\/trials$/);
  });

  it('say what is missing where a plant has no log of a day', async () => {
    const page = await at.page();
    await page.goto(`${at.url()}/tollhythe/orvenby/trials`);
    await page.waitForSelector('.trial-line-none');
    expect(await page.locator('.sub').innerText()).toContain('no log of a day beside it');
    await page.locator('.trial-line', { hasText: 'Roasts' }).click();
    await titled(page, 'There is no roast log yet.');
  });

  it('tell a day that does not come, and answer without it', async () => {
    const page = await at.page();
    await page.route('**/days', (route) => route.abort());
    await open(page);
    expect(await page.locator('.drop-said').innerText()).toMatch(/^The server does not answer/);
    expect(await page.locator('.trial-line-none').count()).toBe(3);
  });
});
