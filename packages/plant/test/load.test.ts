import { describe, expect, it } from 'vitest';
import { loadPlant, plantLoader, problemCodes, type Problem } from '../src/index.js';
import { elsewhere, rows, without } from './faults.js';
import { changed, smallest } from './smallest.js';

function problems(files: ReadonlyMap<string, string>): readonly Problem[] {
  const loaded = loadPlant(files);
  return loaded.ok ? [] : loaded.problems;
}

describe('loadPlant', () => {
  it('loads the smallest plant, with nothing to remark', () => {
    expect(loadPlant(smallest)).toMatchObject({ ok: true, notes: [] });
  });

  it.each(rows)('refuses %s', (_title, files, code, place, words) => {
    const found = problems(files);
    const right = found.filter((problem) => problem.code === code && `${problem.file}:${problem.line}`.startsWith(place));
    expect(right, JSON.stringify(found.slice(0, 5), null, 1)).not.toHaveLength(0);
    expect(right.map(({ message, expected, advice }) => `${message}\n${expected ?? ''}\n${advice ?? ''}`).join('\n')).toMatch(words);
  });

  it('has a row for every code', () => {
    expect(new Set([...rows.map(([, , code]) => code), ...elsewhere])).toEqual(new Set(Object.keys(problemCodes)));
  });

  it('says one fault once, and does not invent others behind it', () => {
    for (const [title, files, code] of rows) {
      if (['TOO_MANY_FILES'].includes(code)) continue;
      const found = problems(files).filter((problem) => problem.code !== code);
      expect(
        found.map((problem) => `${problem.code} ${problem.message}`),
        title,
      ).toHaveLength(allowedBeside[title] ?? 0);
    }
  });

  it('collects the faults of all files and of all layers of meaning at once', () => {
    let files = changed('bars/plain.yaml', 'nominal: 20 g', 'nominal: 20 °C');
    files = changed('bars/plain.yaml', 'cut length', 'cut lenght', files);
    files = changed('components.yaml', 'sugar: 70 %', 'suger: 69 %', files);
    files = changed('plan.yaml', 'Line 1', 'Line 9', files);
    expect(
      problems(files)
        .map(({ code }) => code)
        .sort(),
    ).toEqual(['MISSING_KEY', 'RECIPE_SUM', 'UNKNOWN_KEY', 'UNKNOWN_LINE', 'UNKNOWN_MATERIAL', 'WRONG_DIMENSION'].sort());
  });

  it('answers the same when it remembers the other files', () => {
    const load = plantLoader();
    for (const [, files] of rows) {
      expect(load(files)).toEqual(loadPlant(files));
      expect(load(smallest).ok).toBe(true);
    }
  }, 60_000);

  it('keeps the line right behind an item that was cut out', () => {
    let files = changed('components.yaml', 'does: mix', 'does: mixx');
    files = changed('components.yaml', '10 % ± 0.5 %', '10 % ± 0.5 %\n        add: { nosuch: 0 % }', files);
    expect(problems(files)).toEqual(expect.arrayContaining([expect.objectContaining({ code: 'UNKNOWN_MATERIAL', line: 13 })]));
  });
});

/** Faults that rightly bring a second one. */
const allowedBeside: Readonly<Record<string, number>> = {
  'an unknown key': 1, // the right key is missing then
  'a thousand faults': 200,
};

describe('what is loaded', () => {
  const loaded = loadPlant(smallest);
  if (!loaded.ok) throw new Error('the smallest plant does not load');
  const { plant } = loaded;

  it('carries text, unit, place and path with every number', () => {
    const moisture = plant.components.get('fudge')!.stages[1]!.cook!.end;
    expect(moisture).toMatchObject({
      by: 'finished moisture',
      moisture: {
        value: 0.1,
        low: 0.095,
        high: 0.105,
        text: '10 % ± 0.5 %',
        unit: '%',
        dimension: 'fraction',
        form: 'plus-minus',
        place: 'components.yaml:12',
        path: ['components', 'fudge', 'stages', 1, 'finished moisture'],
      },
    });
  });

  it('divides a recipe in masses by its sum', () => {
    const inPounds = loadPlant(changed('components.yaml', '{ sugar: 70 %, water: 30 % }', '{ sugar: 7 lb, water: 48 oz }'));
    if (!inPounds.ok) throw new Error(inPounds.problems[0]!.message);
    const [sugar, water] = inPounds.plant.components.get('fudge')!.stages[0]!.adds;
    expect(sugar!.share).toMatchObject({ text: '7 lb', dimension: 'fraction', unit: '%' });
    expect(sugar!.share.value).toBeCloseTo(0.7, 12);
    expect(water!.share.value).toBeCloseTo(0.3, 12);
  });

  it('takes the previous stage where nothing is written, and none where the list is empty', () => {
    expect(plant.components.get('fudge')!.stages.map(({ takes }) => takes)).toEqual([[], ['mix']]);
  });

  it('reads losses both ways', () => {
    const ways = [
      '1 % of made',
      '1 % of what is made',
      '1 % of on bars',
      '1 % of what ends on bars',
      '{ share: 1 %, of: on bars, note: so }',
    ];
    const read = ways.map((way) => {
      const one = loadPlant(changed('bars/plain.yaml', '1 % of made', way));
      return one.ok ? one.plant.bars.get('Plain')!.layers[0]!.loss!.of : one.problems;
    });
    expect(read).toEqual(['made', 'made', 'on bars', 'on bars', 'on bars']);
  });

  it('reads a price per drum', () => {
    const one = loadPlant(changed('materials.yaml', '0.85 EUR/kg', '210 EUR/drum\n    drum: 300 kg'));
    expect(one.ok && one.plant.materials.get('sugar')!.price).toMatchObject({ value: 0.7, text: '210 EUR/drum' });
  });

  it('counts higher saccharides by DE as by their mean molar mass', () => {
    const of = (words: string) => {
      const one = loadPlant(
        changed(
          'materials.yaml',
          '{ water: 0.1 %, sucrose: 99.9 % }',
          `{ water: 20 %, glucose: 15 %, maltose: 11 %, higher saccharides: 54 %, ${words} }`,
        ),
      );
      if (!one.ok) throw new Error(one.problems[0]!.message);
      return one.plant.materials.get('sugar')!.composition.at(-1)!;
    };
    // DE 42: 0.42 / 180.156 · 0.8 reducing ends per g, less those of glucose and maltose.
    const moles = (0.42 / 180.156) * 800 - 150 / 180.156 - 110 / 342.297;
    expect(of('DE: 42')).toBeCloseTo(moles, 9);
    expect(of(`mean molar mass: ${(540 / moles).toFixed(6)} g/mol`)).toBeCloseTo(moles, 6);
  });

  it('notes what is odd but no fault', () => {
    let files = changed('bars/plain.yaml', 'target: 20.5 g', 'target: 20.9 g');
    files = changed('materials.yaml', '    price: 0.003 EUR/kg\n', '', files);
    files.set('materials.yaml', `${files.get('materials.yaml')}  salt:\n    composition: { salt: 100 % }\n`);
    const one = loadPlant(files);
    expect(one.ok && one.notes.map(({ code }) => code).sort()).toEqual(['MASS_DIFFERS', 'NOT_USED', 'NO_PRICE']);
    expect(loadPlant(without('bars/plain.yaml')).ok).toBe(false);
    const noBars = new Map([...smallest].filter(([file]) => file !== 'plan.yaml' && !file.startsWith('bars/')));
    const bare = loadPlant(noBars);
    expect(bare.ok && bare.notes.map(({ code }) => code)).toContain('NO_BARS');
  });

  it('does not mistake names of the language for names of the plant', () => {
    for (const name of ['constructor', 'toString', '__proto__', 'hasOwnProperty']) {
      const files = changed('components.yaml', 'sugar: 70 %', `${name}: 70 %`);
      expect(loadPlant(files).ok, name).toBe(false);
    }
  });
});
