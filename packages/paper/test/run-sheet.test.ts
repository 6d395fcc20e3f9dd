import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { Session } from '@barwright/chain';
import { plantChain, type PlantChain } from '@barwright/line';
import { loadPlant } from '@barwright/plant';
import { readPlantFolder } from '@barwright/plant/node';
import { layOut, runSheet, runSheetHtml, type RunSheet } from '../src/index.js';
import { clock } from '../src/content.js';
import { textOf } from './pdf-text.js';

async function open(name: string): Promise<{ from: PlantChain; session: Session; sheet: RunSheet }> {
  const loaded = loadPlant(await readPlantFolder(fileURLToPath(new URL(`../../../examples/${name}`, import.meta.url))));
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems));
  const from = plantChain(loaded.plant);
  const session = new Session(from.chain);
  return { from, session, sheet: runSheet(from, session, { version: 'version 7' }) };
}

describe('the run sheet of the demo plant', () => {
  let from: PlantChain;
  let session: Session;
  let sheet: RunSheet;
  let text: string;
  let pages: number;
  let missing: readonly string[];
  beforeAll(async () => {
    ({ from, session, sheet } = await open('pellamoor'));
    const laid = layOut(sheet, from, session);
    pages = laid.pages;
    missing = laid.pen.missingLetters();
    text = (await textOf(await laid.pen.end())).replaceAll('\u00a0', ' ');
  });

  it('weighs every charge to the division of its scale and shows what rounding leaves', () => {
    const caramel = sheet.charges.find((list) => list.component === 'caramel')!;
    expect(caramel.batches).toBe(23);
    expect(caramel.charged).toBeCloseTo(536.5, 1);
    expect(caramel.rows.map((row) => [row.name, row.mass])).toContainEqual(['glucose syrup 42 DE', 193]);
    for (const row of caramel.rows) expect(Math.abs(row.mass / row.division - Math.round(row.mass / row.division))).toBeLessThan(1e-6);
    const weighed = caramel.rows.reduce((sum, row) => sum + row.mass, 0);
    expect(weighed - caramel.charged).toBeCloseTo(caramel.residual, 9);
    expect(Math.abs(caramel.residual)).toBeLessThan(caramel.rows.reduce((sum, row) => sum + row.division / 2, 0));
  });

  it('puts the ingredients in the order of the stages', () => {
    const nougat = sheet.charges.find((list) => list.component === 'nougat')!;
    expect(nougat.rows[0]!.name).toBe('egg albumen powder');
    expect(nougat.rows.at(-1)!.stage).toBe('blend');
  });

  it('starts the first slab after the start-up, and each component its lead before', () => {
    const times = new Map(sheet.times);
    expect(times.get('first slab')).toBe('06:45');
    expect(times.get('first caramel started by')).toBe('05:50');
    expect(times.get('first milk chocolate started by')).toBe('22:45 the day before');
    expect(times.get('order made, at the planned speed')).toBe('01:39 next day');
  });

  it('gives each check its window, its reaction and its place to write', () => {
    const row = sheet.rows.find((other) => other.where === 'caramel' && other.what === 'moisture')!;
    expect(row).toMatchObject({ unit: '%', aim: 9.5, every: 'each batch', writeIn: 'number' });
    expect(row.low).toBeCloseTo(9.1, 9);
    expect(row.high).toBeCloseTo(9.9, 9);
    expect(row.reaction).not.toBe('');
    for (const critical of sheet.rows.filter((other) => other.kind === 'critical')) expect(critical.reaction, critical.what).not.toBe('');
  });

  it('opens an explanation for every number that has a limit, an aim or a mass', () => {
    const without = sheet.rows.filter(
      (row) => (row.aim ?? row.low ?? row.high) !== undefined && (row.quantity === undefined || !from.chain.index.has(row.quantity)),
    );
    expect(without).toEqual([]);
    for (const list of sheet.charges) for (const row of list.rows) expect(from.chain.index.has(row.quantity), row.name).toBe(true);
  });

  it('says the rework share, its cap and its allergens', () => {
    expect(sheet.rework.join(' ')).toMatch(/3\.36.% of the nougat made, cap 5 %/);
    expect(sheet.rework.join(' ')).toMatch(/egg, milk, peanut, soya/);
  });

  it.each(['stick', 'pressure', 'explode', 'kills Salmonella', 'lock off', 'HACCP', 'maker’s manual'])('cautions: %s', (word) =>
    expect(text.replaceAll(/\s+/g, ' ').toLowerCase()).toContain(word.toLowerCase()),
  );

  it('fits on four A4 pages, with no letter missing, and can be read back', () => {
    expect(pages).toBeLessThanOrEqual(4);
    expect(missing).toEqual([]);
    for (const words of [
      'Run sheet: Kestrowan',
      '860 160 bars',
      'glucose syrup 42 DE',
      '117.7',
      'nib bed temperature, °C (CCP)',
      'version 7',
      'sheet 4',
    ]) {
      expect(text, words).toContain(words);
    }
  });

  it('writes ≤ ≥ σ ₂ → and the letters of European languages', async () => {
    const letters = '≤ ≥ ± σ ₂ → µ ° · – − Ä ö ß é è ç ñ ø å æ œ ł ž š č ř ű ő ğ ş ı ț ă ð þ';
    const { pen } = layOut({ ...sheet, changeover: [letters] }, from, session);
    expect(pen.missingLetters()).toEqual([]);
    const read = await textOf(await pen.end());
    for (const letter of letters.split(' ')) expect(read.normalize('NFKC'), letter).toContain(letter.normalize('NFKC'));
  });

  it('has the same rows as HTML, each naming its quantity where there is one', () => {
    const html = runSheetHtml(from, session, { version: 'version 7' });
    expect(html.match(/<tr[^>]*><th scope="row">/g)).toHaveLength(sheet.rows.length);
    expect(html).toContain('data-quantity="set.enrober.belt_speed"');
    expect(html).not.toMatch(/undefined|NaN/);
  });
});

describe('clock', () => {
  it.each([
    [405, '06:45'],
    [1539, '01:39 next day'],
    [-75, '22:45 the day before'],
    [2900, '00:20, day +2'],
  ])('%d min is %s', (minutes, text) => expect(clock(minutes)).toBe(text));
});

describe('the run sheets of all three plants', () => {
  it.each(['pellamoor', 'tollhythe', 'highmark'])('that of %s stays within four A4 pages', async (name) => {
    const { from, session, sheet } = await open(name);
    const laid = layOut(sheet, from, session);
    await laid.pen.end();
    expect(laid.pages).toBeLessThanOrEqual(4);
  });

  it('give the whip its pressures and its cup, as far as the plant wrote them', async () => {
    const notes = async (name: string, component: string) =>
      (await open(name)).sheet.charges
        .find((list) => list.component === component)!
        .notes.find((note) => note.startsWith('whip'))!
        .replaceAll('\u202f', ' ');
    const demo = await notes('pellamoor', 'nougat');
    expect(demo).toMatch(/^whip: 3\.5 bar absolute \(3\.\d\d bar to 3\.\d\d bar keep the density in its window/);
    expect(demo).toContain('density cup 0.92 g/cm³ ± 0.02 g/cm³: 35.4 % air');
    // A density without a tolerance has no pressures to keep to.
    expect(await notes('highmark', 'honey nougat')).toMatch(/^whip: 50 psi absolute, density cup 57 lb\/ft³: 36\.\d % air$/);
  });
});
