import { describe, expect, it } from 'vitest';
import { digitsOf, house, patience } from './house.js';

const at = house();

describe('the sheet behind a number', { timeout: 2 * patience }, () => {
  it('has value, equation with numbers, inputs, what if, what would make it, and sources', async () => {
    const page = await at.page();
    await page.goto(`${at.url()}/pellamoor/kestrowan/section?open=step.caramel_nougat`);
    await page.waitForSelector('.remedies li');
    const names = await page.locator('.about-name').allInnerTexts();
    expect(names).toEqual(['equation', 'inputs', 'what if', 'what would make it', 'sources']);
    const [value, caramel, nougat] = [
      await page.locator('.inspector-digits').innerText(),
      ...(await page.locator('.inspector .line-value').allInnerTexts()),
    ];
    expect(await page.locator('.equation-numbers').innerText()).toBe(`${value} = ${caramel} − ${nougat}`);
    expect(await page.locator('.remedy-title').allInnerTexts()).toContain('Do nothing');
  });

  it('opens inputs one from another down to where they were written, and finds the way back', async () => {
    const page = await at.page();
    await page.goto(`${at.url()}/pellamoor/kestrowan/section?open=bar.cost`);
    await page.locator('.inspector .line', { hasText: 'cost of the ingredients' }).click();
    await page.locator('.inspector .line', { hasText: 'cost of caramel for a bar' }).click();
    await page.locator('.inspector .line', { hasText: 'cost of caramel, per kg' }).click();
    await page.locator('.inspector .line', { hasText: 'price of butter' }).click();
    await page.waitForFunction(() => document.querySelector('.inspector-title')?.textContent === 'Price of butter');
    expect(await page.locator('.inspector .place').innerText()).toMatch(/^materials\.yaml:\d+$/);
    expect(await page.locator('.trail .word').count()).toBe(4);
    await page.locator('.trail .word').nth(1).click();
    await page.waitForFunction(() => document.querySelector('.inspector-title')?.textContent?.startsWith('Cost of the ingredients'));
    expect(await page.locator('.trail .word').count()).toBe(1);
  });

  it('turns its knob, and everything else on the page answers', async () => {
    const page = await at.page();
    await page.goto(`${at.url()}/pellamoor/kestrowan/section?open=step.caramel_nougat`);
    const curve = page.locator('.curve svg');
    await curve.waitFor();
    const before = await digitsOf(page, 'step.caramel_nougat');
    const box = (await curve.boundingBox())!;
    await page.mouse.move(box.x + box.width / 2, box.y + 100);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width * 0.7, box.y + 100, { steps: 5 });
    await page.mouse.up();
    await page.waitForFunction((was) => document.querySelector('.inspector-digits')?.textContent !== was, before);
    expect(await page.locator('.inspector-digits').innerText()).toBe(await digitsOf(page, 'step.caramel_nougat'));
  });

  it('tries a remedy and reaches what it promised', async () => {
    const page = await at.page();
    await page.goto(`${at.url()}/pellamoor/kestrowan/section?open=step.caramel_nougat`);
    await page.locator('.wish input').fill('0.030');
    await page.waitForTimeout(600);
    await page.locator('.remedies .button').first().click();
    await page.waitForFunction(() => document.querySelector('.inspector-digits')?.textContent === '0.030');
    expect(at.complaints).toEqual([]);
  });

  it('lies at the bottom on a tablet', async () => {
    const page = await at.page({ width: 820, height: 1180 });
    await page.goto(`${at.url()}/pellamoor/kestrowan/section?open=bar.mass`);
    await page.waitForSelector('.inspector .about');
    await page.waitForTimeout(400);
    const box = (await page.locator('.inspector').boundingBox())!;
    expect(box.width).toBe(820);
    expect(box.y).toBeGreaterThan(1180 * 0.15);
  });

  it('says of a number that is not there that it is not there', async () => {
    const page = await at.page();
    await page.goto(`${at.url()}/pellamoor/kestrowan/section?open=no.such`);
    await page.waitForSelector('.inspector .cannot');
    expect(await page.locator('.inspector .cannot').first().innerText()).toContain('no number called “no.such”');
  });
});
