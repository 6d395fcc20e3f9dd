import { describe, expect, it } from 'vitest';
import { house, patience } from './house.js';

const at = house();

describe('the bench', { timeout: 2 * patience }, () => {
  it('keeps what was pulled as a version, and lays the old one beside it', async () => {
    const page = await at.page();
    await page.goto(`${at.url()}/pellamoor/kestrowan/bench?set=caramel.charge.sugar:19.5&set=coat.mass:15.2`);
    await page.waitForSelector('.edits li');
    const keep = page.locator('.keep-form button');
    expect(await keep.innerText()).toMatch(/^Not yet/);
    await page.getByRole('textbox', { name: 'by' }).fill('J. Osk');
    await page.getByRole('textbox', { name: 'why' }).fill('a softer bite');
    await keep.click();
    await page.waitForFunction(() => document.querySelector('.keep-said')?.textContent === 'Kept as version 2.');
    await page.waitForURL((url) => url.search === '');
    const saved = (await (await fetch(`${at.url()}/api/plants/pellamoor/versions/latest`)).json()) as {
      reason: string;
      files: Record<string, string>;
    };
    expect(saved.reason).toBe('a softer bite');
    expect(saved.files['components.yaml']).toContain('sugar: 19.5 %');
    expect(saved.files['bars/kestrowan.yaml']).toContain('target: 49 g ± 2.5 g'); // the aim goes with the mass
    await page.locator('.version-list li').nth(1).getByRole('button', { name: 'Lay beside' }).click();
    await page.waitForSelector('.beside tbody tr');
    expect(await page.locator('.beside tbody th').first().innerText()).toMatch(/charge of caramel/);
    await page.locator('.version-list li').nth(1).getByRole('button', { name: 'Open' }).click();
    await page.waitForURL(/version=1/);
    await page.waitForFunction(() => document.querySelector('.name-bar summary')?.textContent?.includes('version 1'));
  });

  it('refuses in the words of the server, and loses nothing', async () => {
    const page = await at.page();
    await page.goto(`${at.url()}/tollhythe/orvenby/bench?set=bar.target:25`);
    await page.waitForSelector('.edits li');
    await page.getByRole('textbox', { name: 'by' }).fill('J. Osk');
    await page.getByRole('textbox', { name: 'why' }).fill('to see');
    await page.route('**/versions', (route) => (route.request().method() === 'POST' ? route.abort() : route.continue()));
    await page.locator('.keep-form button').click();
    await page.waitForSelector('.keep-said.said-act');
    expect(await page.locator('.keep-said').innerText()).toMatch(/^The server does not answer/);
    expect(await page.locator('.edits li').count()).toBeGreaterThan(0);
  });

  it('does not pull a knob past its post', async () => {
    const page = await at.page();
    await page.goto(`${at.url()}/highmark/tamsel/bench`);
    const speed = page.locator('.knob', { hasText: 'Speed of the slab' }).getByRole('slider');
    await speed.waitFor();
    await page.waitForFunction(() => [...document.querySelectorAll('.knob')].at(-1)?.textContent?.includes('full'));
    const box = (await speed.boundingBox())!;
    await page.mouse.move(box.x + box.width / 2, box.y + 44);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width - 2, box.y + 44, { steps: 4 });
    await page.mouse.up();
    await page.waitForTimeout(500);
    expect(await speed.getAttribute('aria-valuetext')).toContain('at the limit');
    expect(await page.locator('h1').innerText()).not.toContain('cannot');
  });
});

describe('the band', { timeout: 2 * patience }, () => {
  it('opens what is pressed, changes its measure, and has a table of the same numbers', async () => {
    const page = await at.page();
    await page.goto(`${at.url()}/pellamoor/kestrowan/band`);
    await page.waitForSelector('.ribbon path');
    expect(await page.locator('.foot-scale').innerText()).toMatch(/10 px across the band is \d+ kg\/h/);
    await page.getByRole('button', { name: 'EUR' }).click();
    await page.waitForFunction(() => document.querySelector('.foot-scale')?.textContent?.includes('EUR/h'));
    const nougat = (await page.locator('.ribbon-hit[data-quantity="flow.nougat.out"]').last().boundingBox())!;
    await page.mouse.click(nougat.x + nougat.width / 2, nougat.y + nougat.height / 2);
    await page.waitForFunction(() => document.querySelector('.inspector-title')?.textContent === 'Nougat made at rated speed');
    await page.keyboard.press('Escape');
    await page.getByText('As a table', { exact: true }).click();
    const rows = await page.locator('.as-table tbody th').allInnerTexts();
    expect(rows).toEqual(expect.arrayContaining(['edge trim', 'given away', 'slab former']));
  });
});

describe('papers', { timeout: 2 * patience }, () => {
  it('show the run sheet as it prints, with its PDF, and open its numbers', async () => {
    const page = await at.page();
    await page.goto(`${at.url()}/pellamoor/kestrowan/papers`);
    await page.waitForSelector('.run-sheet');
    expect(await page.locator('.run-sheet h2').first().innerText()).toContain('Kestrowan');
    await page.locator('.run-sheet-open').first().click();
    await page.waitForSelector('.inspector .about');
    const pdf = await fetch(at.url() + (await page.getByRole('link', { name: 'PDF' }).getAttribute('href')));
    expect(pdf.headers.get('content-type')).toBe('application/pdf');
    expect(at.complaints).toEqual([]);
  });
});

describe('evidence', { timeout: 2 * patience }, () => {
  it('counts what agrees, keeps what does not, and unfolds each check with its source', async () => {
    const page = await at.page();
    await page.goto(`${at.url()}/pellamoor/kestrowan/evidence`);
    await page.waitForSelector('.model');
    const evidence = (await (await fetch(`${at.url()}/api/evidence`)).json()) as { checks: number; inside: number; models: number };
    const plain = (await page.locator('h1').innerText()).replace(/[\u2009\u202f]/g, '');
    expect(plain).toContain(`${evidence.inside} of ${evidence.checks} checks`);
    expect(await page.locator('.model').count()).toBe(evidence.models);
    await page.locator('.evidence-find input').fill('saturation pressure water');
    await page.locator('.model-line').first().click();
    await page.waitForSelector('.model-checks table tbody tr');
    expect(await page.locator('.check-source').first().innerText()).not.toBe('');
  });
});
