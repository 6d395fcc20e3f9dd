import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { toSvg } from '@barwright/drawing';
import { beforeAll, describe, expect, it } from 'vitest';
import { Engine } from '../src/engine/engine.js';
import type { TrialSheet } from '../src/engine/trial-protocol.js';
import { takeFile, trial } from '../src/engine/trials/answer.js';
import { examplePlant } from './plants.js';

const folder = join(import.meta.dirname, '../../../examples/pellamoor/days/2026-03-17');
const bytesOf = (text: string | Buffer): ArrayBuffer => Uint8Array.from(Buffer.from(text as string)).buffer;
const plain = (text: string) => text.replace(/[\u2009\u202f\u00a0]/g, ' ');
const lines = (sheet: TrialSheet, title: string) =>
  plain(
    sheet.said
      .filter((said) => said.title === title)
      .flatMap((said) => said.lines.map(({ text }) => text))
      .join(' '),
  );
const held = (sheet: TrialSheet, word: string) =>
  sheet.tables
    .find(({ caption }) => caption.startsWith('Pallets to hold'))!
    .rows.filter(({ cells }) => cells.at(-1)!.text === word)
    .map(({ name }) => name);
const run = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, i) => `P${String(from + i).padStart(3, '0')}`);
const drawingOf = (sheet: TrialSheet) => sheet.plates.find(({ name }) => name.startsWith('From '));
const slow = () =>
  readFileSync(join(folder, 'peanut_roast.csv'), 'utf8')
    .split('\n')
    .map((row, i) => (i >= 20 && i <= 22 ? row.replace(/^([^,]*,[^,]*,[^,]*),[^,]*/, '$1,1.0') : row))
    .join('\n');

let engine: Engine;
beforeAll(async () => {
  engine = new Engine(await examplePlant('pellamoor'), undefined, 1, 'metric');
});

describe('without counts and pallets beside', () => {
  it('a log of cooks says when its bars were packed, and what cannot be told', async () => {
    await takeFile({ name: 'cooks.csv', bytes: bytesOf(readFileSync(join(folder, 'caramel_batches.csv'))) });
    const sheet = trial(engine, 'cooks', { file: 'cooks.csv' }, 900);
    const told = lines(sheet, 'Which bars and pallets');
    expect(told).toMatch(/packed 11:39 to 13:56: how many bars cannot be told; which pallets cannot be told/);
    expect(told).toMatch(/there is no log of pallets/);
    expect(toSvg(drawingOf(sheet)!.marks, { width: 900, height: 300, title: 't', theme: 'day' })).toContain('no log of pallets');
  });

  it('counts and pallets brought by hand are told by their headings and laid beside', async () => {
    const taken = async (name: string, file: string) => (await takeFile({ name, bytes: bytesOf(readFileSync(join(folder, file))) })).kind;
    expect(await taken('made.csv', 'flow_5min.csv')).toBe('counts');
    expect(await taken('packed.csv', 'pallets.csv')).toBe('pallets');
    expect(await taken('stood.csv', 'stops.csv')).toBe('stops');
    const sheet = trial(engine, 'cooks', { file: 'cooks.csv' }, 900);
    expect(held(sheet, 'for certain')).toEqual(run(18, 29));
    expect(lines(sheet, 'How the bars were found')).toMatch(/Laid beside: made.csv, packed.csv, stood.csv/);
  });

  it('a plant whose line cannot be followed says why', async () => {
    const plant = await examplePlant('pellamoor');
    const line = plant.lines.get('Line 2')!;
    const bare = { ...plant, lines: new Map([['Line 2', { ...line, transit: [] }]]) };
    const sheet = trial(new Engine(bare, undefined, 1, 'metric'), 'cooks', { file: 'cooks.csv' }, 900);
    expect(drawingOf(sheet)).toBeUndefined();
    expect(lines(sheet, 'Which bars and pallets')).toMatch(
      /cannot be told: Line 2 writes no transit to the wrapper; write it under "transit"/,
    );
  });
});

describe('with the day of the plant', () => {
  beforeAll(async () => {
    for (const name of readdirSync(folder))
      await takeFile({ name, bytes: bytesOf(readFileSync(join(folder, name))), day: '2026-03-17' }).catch(() => undefined);
  });

  it.each([560, 900])('temper: sentence, drawing, table and who may release, %d px wide', (width) => {
    const sheet = trial(engine, 'temper', { file: '2026-03-17/temper.csv' }, width);
    expect(plain(sheet.sub)).toMatch(/Packed 17 Mar 13:17 to 14:46: 51 854 bars \(50 639 to 53 151\) on 6 pallets, P025 to P030/);
    expect(held(sheet, 'for certain')).toEqual(run(25, 30));
    expect(held(sheet, 'to be safe')).toEqual(run(31, 32));
    const drawn = drawingOf(sheet)!;
    const svg = toSvg(drawn.marks, { width: drawn.width, height: drawn.height, title: drawn.name, theme: 'day' });
    expect(svg).not.toMatch(/NaN|Infinity|undefined/);
    for (const word of ['13:05', '14:34', 'P025', 'P032', 'enrobed']) expect(svg).toContain(word);
    expect(sheet.said.find(({ title }) => title === 'Mind the hold')?.caution).toBe(true);
  });

  it('as one stood there at 13:30: what was packed so far, still open', () => {
    const sheet = trial(engine, 'temper', { file: '2026-03-17/temper.csv', until: '17 Mar 13:30' }, 900);
    expect(plain(sheet.sub)).toMatch(/Enrobed from 17 Mar 13:05 on, still open \(25 min\)/);
    expect(held(sheet, 'for certain')).toEqual(run(25, 27));
    expect(lines(sheet, 'Which bars and pallets')).toMatch(/more were between cutter and wrapper when the log of counts ends/);
  });

  it('more windows than a picture holds are counted, not drawn', async () => {
    const times = Array.from(
      { length: 40 },
      (_, i) => `2026-03-17T${String(7 + Math.floor(i / 4)).padStart(2, '0')}:${['00', '15', '30', '45'][i % 4]}`,
    );
    await takeFile({
      name: 'odd.csv',
      bytes: bytesOf(`time,temper_slope_C_min\n${times.map((time, i) => `${time},${i % 3 ? 0 : 0.9}`).join('\n')}`),
    });
    const sheet = trial(engine, 'temper', { file: 'odd.csv' }, 900);
    expect(drawingOf(sheet)!.caption).toMatch(/The first 6 of 14 windows are drawn/);
    expect(lines(sheet, 'Which bars and pallets')).toMatch(/9 more windows/);
  });

  it('a roast brought by hand is followed through the logs of the day that it names', async () => {
    await takeFile({ name: 'slow.csv', bytes: bytesOf(slow()) });
    const sheet = trial(engine, 'roasts', { file: 'slow.csv' }, 900);
    expect(held(sheet, 'for certain')).toEqual(run(17, 24));
    expect(lines(sheet, 'How the bars were found')).toMatch(/30 to 60 min from the peanut roaster to the cutter, as the plant writes it/);
    expect(drawingOf(trial(engine, 'roasts', { file: '2026-03-17/peanut_roast.csv' }, 900))).toBeUndefined();
  });
});
