import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rewritten } from '../src/engine/edits.js';
import { materialOf } from '../src/engine/materials.js';
import { turnUntil } from '../src/engine/solve-bend.js';
import { deviationStrip, strain } from '../src/evidence/deviations.js';
import { trailAfter } from '../src/inspector/opening.js';
import { readAddress, writeAddress } from '../src/lib/address.js';
import type { EvidenceRow } from '../src/lib/api.js';
import { stepOf, windowWords } from '../src/number/words.js';
import { waterScale } from '../src/section/layout.js';

describe('an address', () => {
  it('comes back as it was written', () => {
    const id = fc.stringMatching(/^[a-z_]{1,12}(\.[a-z_]{1,12}){1,2}$/);
    fc.assert(
      fc.property(
        fc.dictionary(id, fc.double({ min: -1e6, max: 1e6, noNaN: true })),
        fc.option(id, { nil: undefined }),
        (changes, open) => {
          const kept = Object.fromEntries(Object.entries(changes).map(([key, value]) => [key, Number(value.toPrecision(7))]));
          const address = { plant: 'a b', bar: 'c', screen: 'bench' as const, version: 3, ...(open ? { open } : {}), changes: kept };
          const [path, search = ''] = writeAddress(address).split('?');
          expect(readAddress(path!, search)).toEqual(address);
        },
      ),
    );
  });

  it('keeps what a trial was asked, times of day too, and drops it elsewhere', () => {
    const address = {
      plant: 'a',
      bar: 'b',
      screen: 'trials' as const,
      part: 'temper',
      asked: { until: '17 Mar 13:30', file: 'a b.csv' },
      changes: {},
    };
    const [path, search = ''] = writeAddress(address).split('?');
    expect(path).toBe('/a/b/trials/temper');
    expect(readAddress(path!, search)).toEqual(address);
    expect(writeAddress({ ...address, screen: 'band' })).toBe('/a/b/band');
    expect(readAddress('/a/b/trials', 'ask=x:1')).toEqual({ plant: 'a', bar: 'b', screen: 'trials', changes: {} });
  });

  it('keeps where the cut of the band stands, on the band alone, and drops what is no minute', () => {
    const address = { plant: 'a', bar: 'b', screen: 'band' as const, cut: 4.25, changes: {} };
    expect(writeAddress(address)).toBe('/a/b/band?cut=4.25');
    expect(readAddress('/a/b/band', 'cut=4.25')).toEqual(address);
    expect(writeAddress({ ...address, screen: 'bench' })).toBe('/a/b/bench');
    for (const cut of ['', '-1', 'x', 'Infinity', '1e999']) expect(readAddress('/a/b/band', `cut=${cut}`)).not.toHaveProperty('cut');
  });

  it('is the section where it says nothing, and drops what is no number', () => {
    expect(readAddress('/', '')).toEqual({ screen: 'section', changes: {} });
    expect(readAddress('/a/b/nowhere', '?version=0&set=x:&set=y:z&set=q:1')).toEqual({
      plant: 'a',
      bar: 'b',
      screen: 'section',
      changes: { q: 1 },
    });
  });
});

describe('turning a root until a number is right', () => {
  it('finds it for any straight line', () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(number(0.01, 50), number(-5, 5), number(0.1, 9), number(0.1, 9), (slope, offset, start, wanted) => {
        const x = turnUntil((at) => slope * at + offset, start, wanted, [-1e6, 1e6]);
        expect(x).toBeDefined();
        expect(slope * x! + offset).toBeCloseTo(wanted, 6);
      }),
    );
  });
  it('finds it for a curve', () => expect(turnUntil((x) => x * x, 2, 9, [0, 100])).toBeCloseTo(3, 7));
  it('gives up where nothing moves, or nothing is there', () => {
    expect(turnUntil(() => 5, 1, 6, [0, 9])).toBeUndefined();
    expect(turnUntil((x) => (x > 1.00005 ? NaN : x), 1, 6, [0, 9])).toBeUndefined();
  });
});

describe('an entered number written anew', () => {
  const entered = { place: 'a.yaml:1', path: ['a'], low: undefined, high: undefined } as const;
  it.each([
    ['9.5 % ± 0.4 %', '%', 'fraction', 'plus-minus', 0.095, 0.093, '9.3 % ± 0.4 %'],
    ['48 g', 'g', 'mass', 'value', 0.048, 0.0492, '49.2 g'],
    ['119 °C', '°C', 'temperature', 'value', 119, 120.25, '120.25 °C'],
    ['260 °F', '°F', 'temperature', 'value', 126.6667, 130, '266 °F'],
    ['4.60 EUR/kg', 'EUR/kg', 'money per mass', 'value', 4.6, 5, '5 EUR/kg'],
    ['1,050 bars/min', 'bars/min', 'count rate', 'value', 1050, 1100, '1100 bars/min'],
    ['≤ 0.05', '', 'plain', 'at most', 0.05, 0.04, '0.04'],
  ] as const)('%s', (text, unit, dimension, form, was, value, wanted) => {
    const { low: _low, high: _high, ...rest } = entered;
    expect(rewritten({ ...rest, value: was, text, unit, dimension, form }, value, was)).toBe(wanted);
  });
});

describe('the trail of a sheet', () => {
  it('begins anew from outside, grows from inside, goes back to where a number stood', () => {
    expect(trailAfter(['a', 'b'], 'c', false)).toEqual(['c']);
    expect(trailAfter(['a'], 'b', true)).toEqual(['a', 'b']);
    expect(trailAfter(['a', 'b', 'c'], 'b', true)).toEqual(['a', 'b']);
  });
});

describe('words and steps', () => {
  it('say a window in its own digits', () => {
    expect(windowWords({ low: 9.1, high: 9.9 }, 2)).toBe('window 9.10 to 9.90');
    expect(windowWords({ high: 0.05 }, 3)).toBe('limit 0.050');
    expect(windowWords({ low: 0.9 }, 1)).toBe('least 0.9');
    expect(windowWords(undefined, 1)).toBe('');
  });
  it('step at least the last digit', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e4, max: 1e4, noNaN: true }), fc.integer({ min: 0, max: 4 }), (value, decimals) => {
        const step = stepOf({ id: 'a', meaning: '', unit: '', root: true, decimals }, value);
        expect(step).toBeGreaterThanOrEqual(10 ** -decimals * 0.999);
      }),
    );
  });
  it('know a material by its name', () => {
    expect(materialOf('glucose syrup 42 DE')).toBe('syrup');
    expect(materialOf('cocoa butter')).toBe('fat');
    expect(materialOf('sweetened condensed whole milk')).toBe('milk');
    expect(materialOf('lecithin')).toBe('dry');
  });
});

describe('the water axis', () => {
  it('holds every level with room, in tenths', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0.05, max: 0.95, noNaN: true }), { minLength: 1, maxLength: 6 }), (levels) => {
        const { scale, ticks } = waterScale(levels)!;
        expect(scale[0]).toBeLessThan(Math.min(...levels));
        expect(scale[1]).toBeGreaterThan(Math.max(...levels));
        expect(ticks.length).toBeLessThanOrEqual(6);
      }),
    );
  });
  it('is none without a level', () => expect(waterScale([NaN])).toBeUndefined());
});

describe('a deviation on its window', () => {
  const row = { deviation: 0.2, tolerance: 0.1, expected: 1, computed: 1.2, inside: false } as EvidenceRow;
  it('counts in tolerances', () => expect(strain(row)).toBe(2));
  it('is none where there is no number', () => expect(strain({ ...row, deviation: null })).toBeUndefined());
  it('is drawn as a wedge outside and as a ring inside', () => {
    const marks = (rows: EvidenceRow[]) => deviationStrip(rows, 190).map(({ tag }) => tag);
    expect(marks([row])).toEqual(['path', 'line', 'line', 'path']);
    expect(marks([{ ...row, deviation: 0.05, inside: true }])).toEqual(['path', 'line', 'line', 'circle']);
  });
});
