import { AxeBuilder } from '@axe-core/playwright';
import { describe, expect, it } from 'vitest';
import { house, patience } from './house.js';

const at = house();
const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
const places = [
  ['section', '/pellamoor/kestrowan/section', '.plate-bar path'],
  ['section, pulled', '/pellamoor/kestrowan/section?set=caramel.moisture:9.9', '.does-line'],
  ['section of a wafer', '/tollhythe/orvenby/section', '.plate-bar path'],
  ['sheet of a number', '/pellamoor/kestrowan/section?open=step.caramel_nougat', '.remedies li'],
  ['sheet of a composition', '/pellamoor/kestrowan/section?open=bar.composition', '.elements'],
  ['band', '/pellamoor/kestrowan/band?cut=4', '.strip-slider path'],
  ['bench', '/pellamoor/kestrowan/bench', '.twin'],
  ['trials', '/pellamoor/kestrowan/trials', '.trial-line'],
  ['trial of a speed', '/pellamoor/kestrowan/trials/speed?ask=rate:1050', '.plate'],
  ['trial of cooks', '/pellamoor/kestrowan/trials/cooks', '.plate'],
  ['trial of a batch', '/pellamoor/kestrowan/trials/batch?ask=moisture:10.3&ask=temperature:117.7', '.plate'],
  ['trial of a window', '/pellamoor/kestrowan/trials/window', '.plate'],
  ['trial of a blend', '/pellamoor/kestrowan/trials/blend', '.trial-tables table'],
  ['trial of lots', '/pellamoor/kestrowan/trials/lots', '.plate'],
  ['trial of roasts', '/pellamoor/kestrowan/trials/roasts', '.plate'],
  ['trial of a flow', '/pellamoor/kestrowan/trials/flow?ask=measured:12&ask=yield:9', '.plate'],
  ['trial of names', '/pellamoor/kestrowan/trials/names', '.plate'],
  ['trial of temper', '/pellamoor/kestrowan/trials/temper', '.plate'],
  ['trial of a coat', '/pellamoor/kestrowan/trials/coat?ask=yield:12', '.plate'],
  ['trial of the tunnel, a number open', '/pellamoor/kestrowan/trials/tunnel?open=plant.room_dew_point', '.plate'],
  ['trial without a log', '/tollhythe/orvenby/trials/roasts', '.opening'],
  ['papers', '/pellamoor/kestrowan/papers', '.run-sheet'],
  ['evidence', '/pellamoor/kestrowan/evidence', '.model'],
  ['refusal', '/nobody/x/section', '.refusal'],
] as const;

/** The screens themselves are looked at in every size; what opens in them at the desk and on the narrowest page. */
const screens = places.filter(([name]) => /^(section|band|bench|trials|trial of a window|papers|evidence|refusal)$/.test(name));

describe.each([
  ['day', { width: 1440, height: 900 }, places],
  ['night', { width: 820, height: 1180 }, screens],
  ['night', { width: 320, height: 640 }, places],
  ['day', { width: 2560, height: 1440 }, screens],
] as const)('by %s at %o', (theme, size, looked) => {
  it.each(looked)(
    '%s has nothing to complain of, and nothing wider than the page',
    async (_name, path, there) => {
      const page = await at.page(size, theme);
      await page.goto(at.url() + path);
      await page.waitForSelector(there);
      await page.waitForTimeout(250);
      // What lies half under the foot at the fold is not small: it scrolls.
      await page.evaluate(() => document.querySelector<HTMLElement>('.foot')?.style.setProperty('position', 'static'));
      const { violations } = await new AxeBuilder({ page }).withTags(rules).analyze();
      expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' ')}`)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBeLessThanOrEqual(0);
    },
    2 * patience,
  );
});
