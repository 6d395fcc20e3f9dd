import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { atSpeed, chocolateNames, chocolateOf, lotAnswer, tunnelHistory } from '@barwright/line';
import { toSvg } from '@barwright/drawing';
import { beforeAll, describe, expect, it } from 'vitest';
import { Engine } from '../src/engine/engine.js';
import { trialParts, type AskedFor, type TrialSheet } from '../src/engine/trial-protocol.js';
import { takeFile, trial, trialLines, type PromptPart } from '../src/engine/trials/answer.js';
import { examplePlant, examples } from './plants.js';

const folder = join(import.meta.dirname, '../../../examples/pellamoor/days/2026-03-17');
const open = async (name: string, units: 'metric' | 'us' = 'metric') => new Engine(await examplePlant(name), undefined, 1, units);
const bytesOf = (text: string | Buffer): ArrayBuffer => {
  const buffer = Buffer.from(text as string);
  return buffer.buffer.slice(buffer.byteOffset, buffer.byteOffset + buffer.byteLength) as ArrayBuffer;
};
const bring = (name: string, text: string) => takeFile({ name, bytes: bytesOf(text) });
const plain = (text: string) => text.replace(/[\u2009\u202f\u00a0]/g, ' ');
const said = (sheet: TrialSheet) => plain(sheet.said.flatMap(({ lines }) => lines.map(({ text }) => text)).join(' '));
const cellsOf = (sheet: TrialSheet, name: string) =>
  sheet.tables
    .flatMap(({ rows }) => rows)
    .find((row) => row.name === name)
    ?.cells.map(({ text }) => plain(text));

/** Every drawing can be drawn, every number that opens is a number of the chain, every sentence ends. */
function check(engine: Engine, sheet: TrialSheet): void {
  for (const { marks, width, height, name } of sheet.plates)
    expect(toSvg(marks, { width, height, title: name, theme: 'day' }), name).not.toMatch(/NaN|Infinity|undefined/);
  for (const { rows, head } of sheet.tables)
    for (const { cells, id, name } of rows) {
      expect(cells.length, name).toBe(head.length);
      for (const opens of [id, ...cells.map((cell) => cell.id)]) if (opens) expect(engine.from.chain.index.has(opens), opens).toBe(true);
      for (const { text } of cells) expect(text, name).not.toMatch(/NaN|undefined/);
    }
  for (const id of sheet.knobs) expect(engine.from.chain.index.has(id)).toBe(true);
  expect(sheet.title).toMatch(/[.]$/);
  expect(`${sheet.title} ${sheet.sub} ${said(sheet)}`).not.toMatch(/NaN|undefined|Infinity/);
  expect(
    sheet.said.some(({ caution }) => caution),
    `cautions of ${sheet.part}`,
  ).toBe(true);
}

/** Those that answer at once; the blend fetches an optimiser. */
const prompt = trialParts.filter((part): part is PromptPart => part !== 'blend');

describe.each(examples)('the trials of %s without a log', (name) => {
  it('answer or say what is missing, in both habits of units', async () => {
    for (const units of ['metric', 'us'] as const) {
      const engine = await open(name, units);
      const before = engine.session.overrides();
      for (const part of prompt) {
        let sheet: TrialSheet;
        try {
          sheet = trial(engine, part, {}, 900);
        } catch (error) {
          expect((error as { code?: string }).code, `${part}: ${(error as Error).message}`).toBeDefined();
          continue;
        }
        check(engine, sheet);
      }
      expect(engine.session.overrides()).toEqual(before);
    }
  });
});

describe('the trials of the demo day', () => {
  let engine: Engine;
  const ask = (part: PromptPart, asked: AskedFor = {}) => trial(engine, part, asked, 900);
  beforeAll(async () => {
    engine = await open('pellamoor');
    for (const name of readdirSync(folder).filter((file) => file.endsWith('.csv')))
      await takeFile({ name, bytes: bytesOf(readFileSync(join(folder, name))), day: '2026-03-17' }).catch(() => undefined);
  });

  it('all answer, at any width, and four ask for a person', () => {
    for (const width of [320, 900, 1900]) for (const part of prompt) check(engine, trial(engine, part, {}, width));
    const lines = trialLines(engine);
    expect(lines.map(({ part }) => part)).toEqual(trialParts);
    expect(lines.filter(({ mark }) => mark === 'act').map(({ part }) => part)).toEqual(['cooks', 'lots', 'temper', 'coat']);
  });

  it('say what a wet caramel does and what to set', () => {
    const sheet = ask('batch', { moisture: '10.3', temperature: '117.7', refractometer: '89.4' });
    expect(plain(sheet.title)).toBe(
      'Caramel at 10.30 % instead of 9.50 %: temperature and solids contradict, the probe shows 1.8 K too much.',
    );
    expect(said(sheet)).toContain('cook to 119.5 °C');
    expect(cellsOf(sheet, 'viscosity of caramel as it is laid')).toEqual(['38.0 Pa·s', '23.1 Pa·s']);
    expect(cellsOf(sheet, 'step in water activity, at most 0.050')![1]).toBe('0.079');
    expect(sheet.plates).toHaveLength(1);
  });

  it('find the wet cooks in the log of the day, and leave one result alone', () => {
    const sheet = ask('cooks');
    expect(plain(sheet.title)).toBe('Caramel, C06 to C08: temperature and solids contradict.');
    expect(plain(sheet.sub)).toContain('10:31');
    expect(plain(sheet.sub)).toContain('C14: one result of the laboratory that nothing confirms');
    expect(ask('cooks', { file: '2026-03-17/nougat_batches.csv' }).mark).toBeUndefined();
  });

  it('do nothing about the second tanker, and say so of the first', () => {
    const second = ask('syrup');
    expect(plain(second.title)).toBe('Glucose syrup 42 DE, lot GS-260316 at 79.8 % and DE 42.6: do nothing.');
    expect(ask('syrup', { de: '36' }).mark).toBe('act');
  });

  it('move every cook with the pressure, and open a window that holds today', () => {
    const up = ask('pressure', { height: '1600' });
    expect(plain(up.title)).toContain('nougat −5.8 K, caramel −5.5 K');
    expect(ask('pressure', { way: 'pressure', pressure: '400' }).title).toContain('400');
    const window = ask('window');
    expect(window.mark).toBeUndefined();
    expect(ask('window', { activity: '0.4' }).mark).toBe('act');
    expect(plain(ask('slab').title)).toMatch(/slab/);
  });

  it('say what 1 050 bars/min does, as the line computes it', () => {
    const sheet = ask('speed', { rate: '1050' });
    const answer = atSpeed(engine.from, engine.session, 1050);
    expect(plain(sheet.title)).toBe('At 1 050 bars/min the slab former cannot: it is full at 1 000.');
    expect(sheet.mark).toBe('act');
    const used = sheet.tables[0]!.rows.find(({ name }) => name === 'peanut spreader')!;
    expect(used.id).toBe('station.peanut_spreader.utilisation');
    expect(plain(used.cells[1]!.text)).toBe(
      `${(100 * answer.stations.find(({ name }) => name === 'peanut spreader')!.after).toFixed(1)} %`,
    );
    const buffer = sheet.tables.at(-1)!.rows.find(({ name }) => name === 'flow wrappers')!;
    expect(buffer.cells.map(({ text }) => plain(text))).toEqual(['24.2 min', '13.8 min']);
    expect(cellsOf(sheet, 'speed of the enrober and tunnel belt')).toEqual(['3.90 m/min', '4.27 m/min']);
  });

  it('grade both bean lots and set the worse against the other', () => {
    const { worth } = lotAnswer(engine.from, engine.session, 'CB-2614', { material: 'cocoa beans' });
    const tonne = Math.round(1000 * (worth!.price - worth!.fairPrice));
    expect(plain(ask('lots').title)).toBe(
      `CB-2614, cocoa beans, is worth EUR ${tonne} a tonne less than the recipe as costed; count is outside the control plan.`,
    );
    expect(plain(ask('lots', { against: 'CB-2609' }).title)).toContain('less than lot CB-2609');
    expect(plain(ask('lots', { lot: 'CB-2609', against: 'CB-2614' }).title)).toContain('more than lot CB-2614; every result is inside');
    expect(said(ask('lots', { material: 'blanched peanuts' }))).toMatch(
      /aflatoxin total .*the chance that the mean of the lot is above is \d+ %/i,
    );
  });

  it('tell coolant from throughput, the bars and the minutes', () => {
    const sheet = ask('temper');
    expect(plain(sheet.title)).toBe('Under-tempered from 17 Mar 13:30 to 14:30: the coolant supply moved it, not the throughput.');
    expect(plain(sheet.sub)).toContain('Enrobed 17 Mar 13:05 to 14:34 (89 min)');
    expect(cellsOf(sheet, 'coolant')).toEqual(['11.9 °C', '16.2 °C']);
    expect(plain(ask('temper', { until: '17 Mar 13:00' }).title)).toBe('Temper held in all 14 tests.');
  });

  it('show the far side of the coat, and what flow and settings do', () => {
    expect(plain(ask('coat').title)).toMatch(
      /^The far side carried too much chocolate from 17 Mar 19:00 to 20:00: 1\.7 g more in lanes 21–32/,
    );
    const thick = ask('coat', { yield: '12' });
    expect(plain(thick.title)).toBe('Expect a coat of 17.2 g (14.6 to 19.8) instead of 15.0 g, outside its window.');
    expect(said(thick)).toMatch(
      /Blower at 34\.4 m\/s brings it back.*Feet come from.*narrower than now.*Tails: threads break 1\.5 times as late/s,
    );
    expect(said(ask('coat', { yield: '20' }))).toContain('a thread never breaks by itself');
    const grams = (blower: string) => parseFloat(cellsOf(ask('coat', { blower }), 'coat of a bar')![1]!);
    expect(grams('30')).toBeLessThan(grams('25'));
  });

  it('design the tunnel for a rate, moved as its log asks or as entered', () => {
    const exit = tunnelHistory(engine.from, engine.session, { rate: 1050 }).exitSurface.value;
    const raw = ask('tunnel', { rate: '1050', offset: 'as entered' });
    expect(plain(raw.title)).toBe(`At 1 050 bars/min bars leave the cooling tunnel at ${exit.toFixed(1)} °C, outside 17.0 to 19.5.`);
    expect(plain(raw.sub)).toMatch(/With zone 2 at .* outside its own window, they would leave at 19\.5 °C/);
    const moved = ask('tunnel', { rate: '1050' });
    expect(plain(moved.title)).toContain('inside their window');
    expect(plain(moved.sub)).toContain('The model is moved by −1.92 K, as tunnel.csv of 17 March 2026 asks');
    expect(moved.knobs).toEqual([1, 2, 3].map((zone) => `set.cooling_tunnel.zone_${zone}`));
  });

  it('name the cheapest lawful way to a yield value', () => {
    const sheet = ask('flow', { measured: '12', yield: '9' });
    expect(plain(sheet.title)).toBe('+0.08 % E476 brings milk chocolate from 12.0 Pa to 9.3 Pa for EUR 0.0025 a kg.');
    expect(ask('flow').title).toBe('Milk chocolate is where it should be: nothing to add.');
    expect(ask('flow', { measured: '12', yield: '1' }).mark).toBe('act');
  });

  it('give the names of every market', () => {
    const names = chocolateNames(engine.from, engine.session, chocolateOf(engine.from));
    const sheet = ask('names');
    expect(sheet.plates).toHaveLength(3);
    expect(new Set(sheet.tables[0]!.rows.map(({ name }) => name.replace(', also', '')))).toEqual(
      new Set(names.markets[0]!.allowed.map(({ name }) => name)),
    );
  });

  it('prove the kill step of the day, and refuse it where one limit is left', async () => {
    expect(plain(ask('roasts').title)).toBe(
      'The kill step of the peanut roaster is proven: all 78 readings lie inside every limit of PV-07.',
    );
    const lines = readFileSync(join(folder, 'peanut_roast.csv'), 'utf8').split('\n');
    const slow = lines.map((line, i) => (i >= 30 && i < 34 ? line.replace(/^((?:[^,]*,){3})[^,]*/, '$11.0') : line));
    await bring('slow.csv', slow.join('\n'));
    const sheet = ask('roasts', { file: 'slow.csv' });
    expect(plain(sheet.title)).toBe('The kill step of the peanut roaster is not proven: 4 of 78 readings fail PV-07.');
    expect(plain(sheet.sub)).toContain('Hold that product and every bar made from it');
    expect(ask('roasts', { file: '2026-03-17/peanut_roast.csv' }).mark).toBeUndefined();
    expect(() => ask('roasts', { file: 'gone.csv' })).toThrow(/There is no roast log/);
  });
});

describe('a file that is brought', () => {
  let engine: Engine;
  beforeAll(async () => {
    engine = await open('pellamoor');
  });

  it('is fitted where it is the table of a viscometer', async () => {
    // A Casson fluid of 10 Pa and 2 Pa·s, read off without error.
    const rates = [2, 5, 10, 20, 40, 50];
    const stress = (rate: number) => (Math.sqrt(10) + Math.sqrt(2 * rate)) ** 2;
    const text = ['shear rate (1/s),stress (Pa)', ...rates.map((rate) => `${rate},${stress(rate).toFixed(4)}`)].join('\n');
    expect(await bring('flow.csv', text)).toMatchObject({ kind: 'viscometer', part: 'flow', rows: 7 });
    const sheet = trial(engine, 'flow', {}, 900);
    check(engine, sheet);
    expect(plain(sheet.sub)).toContain('flow.csv reads 10.0 Pa and 2.00 Pa·s by Casson');
    expect(cellsOf(sheet, 'Casson: yield value')![0]).toBe('10.00 Pa');
    expect(cellsOf(sheet, 'stress at 5 1/s')).toEqual([`${stress(5).toFixed(1)} Pa`]);
  });

  it('is drawn with its heating rate and stages where it is a roast curve', async () => {
    const at = (minute: number) => (minute < 20 ? 40 + 5 * minute : 140);
    const text = ['time (min),nib bed (°C),hold (min)', ...Array.from({ length: 81 }, (_, i) => `${i / 2},${at(i / 2)},18`)].join('\n');
    await bring('curve.csv', text);
    const sheet = trial(engine, 'roasts', { file: 'curve.csv' }, 900);
    check(engine, sheet);
    expect(plain(sheet.title)).toMatch(/^The kill step of the bean roaster is not proven: 38 of 81 readings fail BV-03/);
    expect(plain(sheet.sub)).toContain('Heated at 5.0 K/min');
    expect(sheet.tables.find(({ caption }) => caption === 'Stages found in the log')!.rows.map(({ name }) => name)).toEqual([
      'heating',
      'holding',
    ]);
    // 20 min at 140 °C alone give more than the 5 log that was tested (D 1.9 min).
    expect(sheet.plates[0]!.caption).toContain('to 5 log, the most that was tested');
    expect(said(sheet)).toContain('135.0 °C or more for 21.0 min on end; BV-03 asks for 18.0 min');
  });

  it('is read as one cooling curve where it has a time and one temperature', async () => {
    const at = (s: number) => 12 + 20 * Math.exp(-s / 260) + 1.4 / (1 + Math.exp(-(s - 230) / 28));
    await bring(
      'sample.csv',
      ['time (s),temperature (°C)', ...Array.from({ length: 61 }, (_, i) => `${10 * i},${at(10 * i).toFixed(3)}`)].join('\n'),
    );
    const sheet = trial(engine, 'temper', { file: 'sample.csv' }, 900);
    check(engine, sheet);
    expect(plain(sheet.title)).toMatch(/(Well tempered|-tempered): slope .* K\/min at the inflection/);
  });

  it.each([
    ['nothing.csv', '', /^nothing.csv is empty/],
    ['pallets.csv', 'pallet,cases\nP1,20\n', /^pallets.csv has the columns "pallet", "cases", which tell no log/],
    ['open.csv', 'time,slope\n06:30,"0.1\n', /^open.csv, line 2: a quotation mark/],
    ['stops.csv', 'start,end\n06:30,06:40\n', /no trial asks for by itself/],
    ['numbers.csv', '1,2\n3,4\n', /has no line of headers/],
  ])('%s is refused in one sentence', async (name, text, words) => {
    await expect(bring(name, text)).rejects.toThrow(words);
  });

  it('of two points is told to be too short', async () => {
    await bring('short.csv', 'shear rate (1/s),stress (Pa)\n5,40\n10,60\n');
    expect(() => trial(engine, 'flow', { file: 'short.csv' }, 900)).toThrow(/2 usable points; at least 3 are needed/);
  });

  it('of 100 000 lines is read, judged and drawn with few marks', async () => {
    const line = (i: number) =>
      `${(i / 60).toFixed(4)},${(162 + Math.sin(i / 500)).toFixed(2)},${(1.3 + 0.02 * Math.sin(i / 70)).toFixed(3)},${(75 + Math.sin(i / 90)).toFixed(2)},${(16.5 + 0.2 * Math.sin(i / 80)).toFixed(2)},6.2`;
    const text = [
      'time (min),zone air (°C),air velocity (m/s),bed depth (mm),residence (min),raw moisture (%)',
      ...Array.from({ length: 100_000 }, (_, i) => line(i)),
    ].join('\n');
    await bring('long.csv', text);
    const sheet = trial(engine, 'roasts', { file: 'long.csv', station: 'peanut_roaster' }, 900);
    expect(sheet.mark).toBeUndefined();
    const [plate] = sheet.plates;
    expect(toSvg(plate!.marks, { width: plate!.width, height: plate!.height, title: '', theme: 'day' }).length).toBeLessThan(400_000);
  });
});

describe('the cooker', () => {
  it('tells steam and time where the plant describes it, and what a probe off does', async () => {
    const engine = await open('tollhythe');
    const sheet = trial(engine, 'cooker', {}, 900);
    check(engine, sheet);
    expect(plain(sheet.title)).toMatch(/^Soft caramel asks 51 kW of its kettle, 88 kg\/h of steam; a batch boils 38\.5 min\.$/);
    expect(sheet.knobs).toContain('soft_caramel.steam_pressure');
    expect(cellsOf(sheet, 'time to boil a batch of soft caramel down')).toEqual(['38.5 min']);
    const more = trial(engine, 'cooker', { probe: '2' }, 900);
    const water = (one: TrialSheet) => Number.parseFloat(cellsOf(one, 'water in soft caramel, wet basis')![1]!);
    expect(water(more)).toBeGreaterThan(water(sheet));
    // A difference is in kelvin in both habits of units, as its label says.
    const us = trial(await open('tollhythe', 'us'), 'cooker', { probe: '2' }, 900);
    expect(water(us)).toBeCloseTo(water(more), 2);
  });

  it('says what the demo has not written, with the scatter of the log of its day', async () => {
    const engine = await open('pellamoor');
    await bring('caramel_batches.csv', readFileSync(join(folder, 'caramel_batches.csv'), 'utf8'));
    const sheet = trial(engine, 'cooker', {}, 900);
    check(engine, sheet);
    expect(sheet.mark).toBe('seen');
    expect(said(sheet)).toContain('Steam and time need the cooker');
    expect(JSON.stringify(sheet.tables)).toContain('good cooks of the log');
    expect(() => trial(engine, 'cooker', { probe: '40' }, 900)).toThrow(/a few kelvin/);
  });
});
