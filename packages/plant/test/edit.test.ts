import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editPlant, EditError, loadPlant, locate, type Edit, type Entered } from '../src/index.js';
import { exampleFiles, examplePlant } from './folder.js';
import { smallest } from './smallest.js';

const pellamoor = await exampleFiles('pellamoor');
const plant = await examplePlant('pellamoor');

function edit(files: ReadonlyMap<string, string>, entered: Entered, value: string): Edit {
  expect(files.has(entered.place.split(':')[0]!)).toBe(true);
  return { file: entered.place.split(':')[0]!, path: entered.path!, value };
}

describe('editPlant', () => {
  it('changes one value and keeps everything else, comments and columns included', () => {
    const altitude = plant.altitude;
    const edited = editPlant(pellamoor, [edit(pellamoor, altitude, '95 m')]);
    const before = pellamoor.get('plant.yaml')!.split('\n');
    const after = edited.get('plant.yaml')!.split('\n');
    const changed = after.flatMap((line, index) => (line === before[index] ? [] : [index]));
    expect(changed).toEqual([Number(altitude.place.split(':')[1]) - 1]);
    expect(after[changed[0]!]!.indexOf('#')).toBe(before[changed[0]!]!.indexOf('#'));
    expect(after[changed[0]!]).toContain('altitude: 95 m ');
    expect(pellamoor.get('plant.yaml')).toBe(before.join('\n'));
  });

  it('finds every number of the plant by its path, and writing back what stands there changes nothing', () => {
    const edits: Edit[] = [];
    (function walk(value: unknown): void {
      if (typeof value !== 'object' || value === null || value instanceof Float64Array) return;
      if (value instanceof Map) return [...value.values()].forEach(walk);
      const entered = value as Entered;
      if (typeof entered.text === 'string' && Array.isArray(entered.path))
        edits.push({ file: entered.place.split(':')[0]!, path: entered.path, value: entered.text });
      Object.values(value).forEach(walk);
    })(plant);
    expect(edits.length).toBeGreaterThan(300);
    const windows = edits.filter(({ value }) => /\(|…/.test(value));
    const simple = edits.filter((one) => !windows.includes(one));
    // A window written with low and high keeps them: only its aim is edited.
    const same = editPlant(pellamoor, simple.slice(0, 150));
    for (const [file, text] of same) expect(text).toBe(pellamoor.get(file));
  });

  it('edits the number of an object form', () => {
    const point = plant.lines.get('Line 2')!.stations.find(({ name }) => name === 'flow wrappers')!.setPoints[0]!;
    const again = loadPlant(editPlant(pellamoor, [edit(pellamoor, point.value, '135 °C')]));
    expect(again.ok && again.plant.lines.get('Line 2')!.stations.find(({ name }) => name === 'flow wrappers')!.setPoints[0]).toMatchObject({
      value: { value: 135, low: 124, high: 142 },
      reaction: point.reaction,
    });
  });

  it('quotes what would not read back, as in braces', () => {
    const edited = editPlant(smallest, [
      { file: 'plan.yaml', path: ['plans', 0, 'order'], value: '12,500 bars' },
      { file: 'bars/plain.yaml', path: ['bar', 'name'], value: 'Plain: no. 2 # new' },
      { file: 'bars/plain.yaml', path: ['bar', 'format'], value: 'yes' },
    ]);
    expect(edited.get('plan.yaml')).toContain('order: "12,500 bars" }');
    expect(edited.get('bars/plain.yaml')).toContain('name: "Plain: no. 2 # new"');
    expect(edited.get('bars/plain.yaml')).toContain('format: yes');
    const loaded = loadPlant(editPlant(edited, [{ file: 'plan.yaml', path: ['plans', 0, 'bar'], value: 'Plain: no. 2 # new' }]));
    expect(loaded.ok && loaded.plant.plans[0]!.order.value).toBe(12_500);
  });

  it('adds a key that is not there yet, in block and in braces', () => {
    const edited = editPlant(smallest, [
      { file: 'plant.yaml', path: ['plant', 'barometer'], value: '1004 hPa' },
      { file: 'bars/plain.yaml', path: ['bar', 'layers', 0, 'varies'], value: '2.2 %' },
      { file: 'bars/plain.yaml', path: ['bar', 'best before'], value: '200 d' },
      { file: 'plan.yaml', path: ['plans', 0, 'planned OEE'], value: '79 %' },
      { file: 'components.yaml', path: ['components', 'fudge', 'lead'], value: '30 min' },
    ]);
    const loaded = loadPlant(edited);
    if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems));
    expect(loaded.plant.barometer!.value).toBe(100_400);
    const bar = loaded.plant.bars.get('Plain')!;
    expect(bar.layers[0]!.variation!.value).toBe(0.022);
    expect(bar.bestBefore!.value).toBe(200 * 86_400);
    expect(loaded.plant.plans[0]!.plannedOee!.value).toBe(0.79);
    expect(loaded.plant.components.get('fudge')!.lead!.value).toBe(1800);
    expect(edited.get('bars/plain.yaml')).toContain('# the only one');
  });

  it('gives back what was written, for any text', () => {
    fc.assert(
      fc.property(
        fc
          .string({ minLength: 1, maxLength: 30 })
          .filter((text) => text.trim() === text && !/[\u0000-\u001f\u007f-\u009f\u2028\u2029\ufeff\ufffd]/.test(text)),
        (text) => {
          const edited = editPlant(smallest, [
            { file: 'bars/plain.yaml', path: ['bar', 'format'], value: text },
            { file: 'checks.yaml', path: ['checks', 0, 'every'], value: text },
          ]);
          const loaded = loadPlant(edited);
          if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems));
          const bar = loaded.plant.bars.get('Plain')!;
          // A bare number is taken as the number it is.
          for (const read of [bar.format, loaded.plant.checks[0]!.every]) expect(read === text || String(Number(text)) === read).toBe(true);
        },
      ),
      { numRuns: 100 },
    );
  }, 60_000);

  it.each([
    [{ file: 'nowhere.yaml', path: ['plant'], value: 'x' }],
    [{ file: 'plant.yaml', path: ['plant', 'name', 'first'], value: 'x' }],
    [{ file: 'plant.yaml', path: ['plant'], value: 'x' }],
    [{ file: 'plant.yaml', path: ['shifts', 0, 'name'], value: 'x' }],
    [{ file: 'plant.yaml', path: [], value: 'x' }],
  ])('refuses %o', (wrong) => {
    expect(() => editPlant(smallest, [wrong])).toThrow(EditError);
  });
});

describe('locate', () => {
  it('finds a place and the path that leads to it', () => {
    const { place, path } =
      plant.bars.get('Kestrowan')!.layers[1]!.amount.by === 'mass'
        ? (plant.bars.get('Kestrowan')!.layers[1]!.amount as { mass: Entered }).mass
        : plant.altitude;
    expect(locate(pellamoor, place)).toMatchObject({ file: 'bars/kestrowan.yaml', path, text: 'mass: 11.8 g ± 0.5 g' });
  });

  it('finds stations, layers and list items by their place', () => {
    for (const station of plant.lines.get('Line 2')!.stations) {
      const found = locate(pellamoor, station.place)!;
      expect(found.path.slice(0, 2)).toEqual(['line', 'stations']);
      expect(found.text).toContain(station.name);
    }
  });

  it.each(['plant.yaml:999', 'nowhere.yaml:1', 'plant.yaml', 'plant.yaml:x'])('has nothing for %s', (place) => {
    expect(locate(smallest, place)).toBeUndefined();
  });
});
