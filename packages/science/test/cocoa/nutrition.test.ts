import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { composition, mix } from '../../src/composition.js';
import { OutOfRange } from '../../src/errors.js';
import { energyEu, nutritionPer100g } from '../../src/law/nutrition.js';
import { nutrientsEu, roundEu, roundHalfUp, toleranceEu } from '../../src/law/nutrition-rounding.js';
import { nutrientsUs, nutritionUs, percentDailyValue, roundUs } from '../../src/law/nutrition-us.js';

describe('nutritionPer100g', () => {
  const of = composition({
    water: 0.05,
    sucrose: 0.3,
    lactose: 0.1,
    higher_saccharides: 0.05,
    polyols: 0.1,
    starch: 0.02,
    fibre: 0.03,
    cocoa_butter: 0.15,
    emulsifier: 0.01,
    milk_protein: 0.08,
    nut_protein: 0.05,
    organic_acids: 0.01,
    salt: 0.02,
    ash: 0.03,
    saturates: 0.09,
    sodium: 0.0085,
  });
  it('sums what the law sums', () => {
    const n = nutritionPer100g(of);
    expect(n.carbohydrate).toBeCloseTo(57, 9);
    expect(n.sugars).toBeCloseTo(40, 9);
    expect(n.fat).toBeCloseTo(16, 9);
    expect(n.protein).toBeCloseTo(13, 9);
    expect(n.salt).toBeCloseTo(2.125, 9);
    expect(n.energyKj).toBeCloseTo(37 * 16 + 17 * 47 + 10 * 10 + 17 * 13 + 8 * 3 + 13 * 1, 9);
    expect(n.energyKcal).toBeCloseTo(9 * 16 + 4 * 47 + 2.4 * 10 + 4 * 13 + 2 * 3 + 3 * 1, 9);
  });
  it('mixes by mass', () => {
    const water = composition({ water: 1 });
    const half = nutritionPer100g(
      mix([
        [1, of],
        [1, water],
      ]),
    );
    const whole = nutritionPer100g(of);
    for (const key of Object.keys(whole) as (keyof typeof whole)[]) expect(half[key]).toBeCloseTo(whole[key] / 2, 9);
  });
  it('matches its example', () => {
    const e = energyEu({ fat: 24.3, carbohydrate: 58.9, protein: 9.1, fibre: 2.4 });
    expect([+e.energyKj.toFixed(6), +e.energyKcal.toFixed(6)]).toEqual([2074.3, 495.5]);
  });
  it('US carbohydrate by difference holds fibre and polyols', () => {
    expect(nutritionUs(of, 100).total_carbohydrate).toBeCloseTo(100 * (1 - 0.05 - 0.16 - 0.13 - 0.05), 9);
  });
});

describe('rounding', () => {
  it.each([
    [0.25, 0.1, 0.3],
    [1.15, 0.1, 1.2], // 1.15 / 0.1 is 11.499999999999998
    [2.675, 0.01, 2.68],
    [0.05, 0.1, 0.1],
    [12.5, 1, 13],
  ])('%d to steps of %d is %d', (value, step, expected) => expect(roundHalfUp(value, step)).toBe(expected));
  it('never moves an amount by more than half a step or the negligible limit, and rounds once', () => {
    fc.assert(
      fc.property(fc.constantFrom(...nutrientsEu), fc.double({ min: 0, max: 100, noNaN: true }), (nutrient, amount) => {
        const { value } = roundEu(nutrient, amount);
        expect(Math.abs(value - amount)).toBeLessThanOrEqual(0.5 + 1e-6);
        // Rounded onto the negligible limit (0.54 g to 0.5 g), the declared figure would itself count as negligible.
        if (![0.5, 0.1, 0.01].includes(value)) expect(roundEu(nutrient, value).value).toBe(value);
      }),
    );
  });
  it('US rounding is idempotent and does not fall as the amount rises', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...nutrientsUs),
        fc.double({ min: 0, max: 900, noNaN: true }),
        fc.double({ min: 0, max: 50, noNaN: true }),
        (n, a, more) => {
          expect(roundUs(n, a + more).value).toBeGreaterThanOrEqual(roundUs(n, a).value);
          expect(roundUs(n, roundUs(n, a).value).value).toBe(roundUs(n, a).value);
        },
      ),
    );
  });
  it.each(['salt', 'fat'] as const)('refuses a negative or missing amount of %s', (n) => {
    expect(() => roundEu(n, -1)).toThrow(OutOfRange);
    expect(() => roundEu(n, NaN)).toThrow(OutOfRange);
  });
  it('has no daily value for total sugars', () => expect(percentDailyValue('total_sugars', 10)).toBeUndefined());
});

describe('toleranceEu', () => {
  it('holds the declared amount inside', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('fat', 'saturates', 'sugars', 'protein', 'fibre', 'salt'),
        fc.double({ min: 0, max: 100, noNaN: true }),
        (n, g) => {
          const { low, high } = toleranceEu(n, g);
          expect(low).toBeLessThanOrEqual(g);
          expect(high).toBeGreaterThan(g);
        },
      ),
    );
  });
  it.each([
    ['sugars', 10, 8, 12],
    ['sugars', 40, 32, 48],
    ['fat', 10, 8, 12],
    ['saturates', 4, 3.2, 4.8],
    ['salt', 1.25, 1, 1.5],
  ] as const)('of %s at the break %d runs from %d to %d', (n, g, low, high) => {
    expect(toleranceEu(n, g).low).toBeCloseTo(low, 9);
    expect(toleranceEu(n, g).high).toBeCloseTo(high, 9);
  });
});
