import { describe, expect, it } from 'vitest';
import type { Component, Entered, Loaded, Material, Plant } from '../src/types.js';
import { decodeLoaded, decodePlant, encodeLoaded, encodePlant } from '../src/wire.js';

const entered = (value: number): Entered => ({ value, text: `${value} m`, unit: 'm', low: value - 1, place: 'plant.yaml:1' });
const material: Material = {
  name: 'white sugar',
  slug: 'white_sugar',
  label: 'sugar',
  composition: Float64Array.from([0.1 + 0.2, 1 / 3, 0, 5e-324]),
  allergens: ['milk'],
  crystalline: true,
  place: 'materials.yaml:3',
};
const component: Component = {
  name: 'nib',
  slug: 'nib',
  label: 'nib',
  texture: 'bean',
  stages: [],
  targets: [],
  composition: { value: Float64Array.of(0.05, 0.95), source: 'house', place: 'components.yaml:9' },
  place: 'components.yaml:8',
};
const { composition: _, ...plain } = component;
const plant: Plant = {
  name: 'Pellamoor Works',
  altitude: entered(110),
  currency: 'EUR',
  timeZone: 'Europe/London',
  market: 'EU',
  // A name may be anything a person writes, also what an object would stumble over.
  materials: new Map([
    ['white sugar', material],
    ['__proto__', material],
  ]),
  components: new Map([
    ['nib', component],
    ['10', plain],
    ['2', plain],
  ]),
  bars: new Map(),
  lines: new Map(),
  plans: [],
  checks: [],
  shifts: [],
  scales: [{ upTo: 5, division: 0.005 }],
  validations: [],
  changeover: ['one', 'two'],
};
const overTheWire = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;

describe('encodePlant and decodePlant', () => {
  it('give the plant back after JSON, maps in their order and every number to the last bit', () => {
    const back = decodePlant(overTheWire(encodePlant(plant)));
    expect(back).toEqual(plant);
    expect([...back.materials.keys()]).toEqual(['white sugar', '__proto__']);
    expect([...back.components.keys()]).toEqual(['nib', '10', '2']);
    expect(back.materials.get('white sugar')!.composition).toBeInstanceOf(Float64Array);
    expect(back.components.get('nib')!.composition!.value).toBeInstanceOf(Float64Array);
    expect('composition' in back.components.get('2')!).toBe(false);
  });

  it('write maps as entries and vectors as lists', () => {
    const wire = encodePlant(plant);
    expect(wire.materials[0]).toEqual(['white sugar', { ...material, composition: [0.1 + 0.2, 1 / 3, 0, 5e-324] }]);
  });

  it.each([NaN, Infinity])('refuse %d and name its place', (value) => {
    const broken = { ...plant, shifts: [], materials: new Map([['m', { ...material, composition: Float64Array.of(0, value) }]]) };
    expect(() => encodePlant(broken)).toThrow(/plant\.materials\.m\.composition\[1\] is (NaN|Infinity), but a finite number/);
  });
});

describe('encodeLoaded and decodeLoaded', () => {
  const problem = { code: 'UNKNOWN_UNIT', file: 'plant.yaml', line: 4, message: '‘furlong’ came', expected: 'a length' };
  it.each<Loaded>([
    { ok: true, plant, notes: [problem] },
    { ok: false, problems: [problem] },
  ])('give back what the loader said (ok: $ok)', (loaded) => {
    expect(decodeLoaded(overTheWire(encodeLoaded(loaded)))).toEqual(loaded);
  });
});
