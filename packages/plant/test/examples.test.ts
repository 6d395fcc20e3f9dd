import { readdir } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { at } from '@barwright/science';
import { loadPlant } from '../src/index.js';
import { exampleFiles, exampleFolder, examplePlant } from './folder.js';

describe('the example plants', () => {
  it.each(['pellamoor', 'tollhythe', 'highmark'])('%s loads, with nothing to remark', async (name) => {
    const loaded = loadPlant(await exampleFiles(name));
    expect(loaded.ok ? loaded.notes : loaded.problems).toEqual([]);
  });

  it('are built differently', async () => {
    const [pellamoor, tollhythe, highmark] = await Promise.all(['pellamoor', 'tollhythe', 'highmark'].map(examplePlant));
    expect([pellamoor, tollhythe, highmark].map((plant) => plant!.shifts.length)).toEqual([3, 2, 1]);
    expect([pellamoor, tollhythe, highmark].map((plant) => plant!.market)).toEqual(['EU', 'EU', 'US']);
    expect([pellamoor, tollhythe, highmark].map((plant) => [...plant!.bars.values()][0]!.pack.barsPerPack)).toEqual([1, 4, 1]);
  });

  it('the demo day lies beside the demo plant, without its answer key', async () => {
    const files = await readdir(`${exampleFolder('pellamoor')}/days/2026-03-17`);
    expect(files).toHaveLength(16);
    expect(files.every((file) => file.endsWith('.csv') || file === 'handover.txt')).toBe(true);
  });
});

describe('Tollhythe', async () => {
  const plant = await examplePlant('tollhythe');
  const bar = plant.bars.get('Orvenby')!;

  it('lays caramel by thickness below a sheet by mass per area, and coats it without underside', () => {
    expect(bar.layers.map(({ amount }) => amount.by)).toEqual(['thickness', 'mass per area']);
    expect(bar.layers.map(({ loss }) => loss!.of)).toEqual(['on bars', 'on bars']);
    expect(bar.coat).toMatchObject({ covers: 'without underside', loss: { of: 'on bars' } });
    const area = bar.cutLength.value * bar.cutWidth.value;
    const caramel = 0.0045 * area * plant.components.get('soft caramel')!.density!.value;
    expect(caramel + 0.6 * area + 0.00703).toBeCloseTo(bar.target.value, 5);
  });

  it('cooks under vacuum in a vessel that limits the batch', () => {
    const caramel = plant.components.get('soft caramel')!;
    expect(caramel.batch).toMatchObject({ by: 'vessel', volume: { value: 0.25 } });
    expect(caramel.stages[1]!.cook).toMatchObject({ end: { by: 'moisture' }, pressure: { by: 'absolute', pressure: { value: 40_000 } } });
  });

  it('divides its recipe in kilograms, and takes a syrup at other solids', () => {
    const adds = plant.components.get('soft caramel')!.stages.flatMap((stage) => stage.adds);
    expect(adds.reduce((sum, { share }) => sum + share.value, 0)).toBeCloseTo(1, 12);
    expect(adds.find(({ name }) => name === 'glucose syrup 38 DE')!.solids!.value).toBe(0.817);
    expect(plant.materials.get('glucose syrup 38 DE')!.price).toMatchObject({ value: 0.7, text: '210 EUR/drum' });
  });

  it('shares its cooker with other lines', () => {
    const cooker = plant.lines.get('Line A')!.stations.find(({ name }) => name === 'vacuum cooker')!;
    expect(cooker).toMatchObject({ rate: { by: 'mass' }, usedElsewhere: { value: 120, dimension: 'mass rate' } });
  });
});

describe('Highmark', async () => {
  const plant = await examplePlant('highmark');
  const bar = plant.bars.get('Tamsel')!;

  it('stands high, and reads ounces, inches, pounds and degrees Fahrenheit', () => {
    expect(plant.altitude.value).toBe(1600);
    expect(bar.target.value).toBeCloseTo(0.0496117, 6);
    expect(bar.cutLength.value).toBeCloseTo(0.1016, 12);
    expect(plant.components.get('honey nougat')!.stages[1]!.cook).toMatchObject({ end: { by: 'temperature' } });
    const { end, probeOffset } = plant.components.get('honey nougat')!.stages[1]!.cook!;
    expect(end.by === 'temperature' && end.temperature.value).toBeCloseTo(118.8889, 3);
    expect(probeOffset!.value).toBeCloseTo(5 / 9, 12);
    expect(plant.materials.get('sugar')!.price!.value).toBeCloseTo(0.41 / 0.45359237, 12);
    expect(plant.lines.get('The line')!.edgeTrim.value).toBeCloseTo(0.00635, 12);
  });

  it('coats with what is missing to the target', () => {
    expect(bar.coat!.amount).toEqual({ by: 'rest' });
    expect(bar.layers).toHaveLength(1);
  });

  it('counts the higher saccharides of its honey by their mean molar mass', () => {
    const honey = plant.materials.get('honey')!.composition;
    expect(honey[at.higher_saccharides_mol]! * 540).toBeCloseTo(1000 * honey[at.higher_saccharides]!, 9);
  });
});
