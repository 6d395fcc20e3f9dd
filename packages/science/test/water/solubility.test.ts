import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BadInput, OutOfRange } from '../../src/errors.js';
import {
  grainAtEquilibrium,
  inverted,
  invertedShare,
  inversionRate,
  invertSyrup,
  kelvinSolubilityRatio,
  lactoseFinalSolubility,
  lactoseInitialSolubility,
  pureSolubility,
  saturationCoefficient,
  solubility,
  sucroseSolubility,
  typicalIngredient,
  typicalIngredientNames,
  withMoisture,
  type Solution,
} from '../../src/water/index.js';
import { constituents } from '../../src/composition.js';

const share = fc.double({ min: 0, max: 1, noNaN: true });

describe('solubility', () => {
  it('rises with temperature without a step', () => {
    for (let t = 0; t < 139; t += 0.5) {
      expect(sucroseSolubility(t + 0.5)).toBeGreaterThan(sucroseSolubility(t));
      expect(sucroseSolubility(t + 0.5) / sucroseSolubility(t)).toBeLessThan(1.013);
    }
    for (let t = 0; t < 99; t++) expect(lactoseFinalSolubility(t + 1)).toBeGreaterThan(lactoseFinalSolubility(t));
    for (const sugar of ['glucose', 'fructose', 'maltose', 'sorbitol'] as const)
      expect(solubility(sugar, 45)).toBeGreaterThan(solubility(sugar, 25));
  });
  it('alpha lactose dissolves in part before it turns', () =>
    expect(lactoseInitialSolubility(20)).toBeLessThan(lactoseFinalSolubility(20)));
  it.each([-1, 141, NaN])('refuses %d °C', (t) => expect(() => sucroseSolubility(t)).toThrow(OutOfRange));
  it('a large crystal has the solubility of the table', () => {
    expect(kelvinSolubilityRatio(1e-3, 25)).toBeCloseTo(1, 5);
    expect(kelvinSolubilityRatio(1e-7, 25)).toBeGreaterThan(1.03);
  });
});

describe('grainAtEquilibrium', () => {
  const syrup = (x: { sucrose: number; glucose: number; water: number }): Solution => ({ ...x, maltose: 5, fructose: 3 });
  it('keeps the mass, and leaves a syrup that is just saturated', () => {
    fc.assert(
      fc.property(
        fc.record({
          sucrose: fc.double({ min: 1, max: 90, noNaN: true }),
          glucose: fc.double({ min: 0, max: 40, noNaN: true }),
          water: fc.double({ min: 5, max: 60, noNaN: true }),
        }),
        fc.double({ min: 5, max: 90, noNaN: true }),
        (x, t) => {
          const total = syrup(x);
          const state = grainAtEquilibrium(total, 'sucrose', t);
          expect(state.crystal + state.syrup.sucrose!).toBeCloseTo(x.sucrose, 6);
          expect(state.crystal > 0).toBe(state.supersaturation > 1);
          if (state.crystal > 1e-6) expect(grainAtEquilibrium(state.syrup, 'sucrose', t).supersaturation).toBeCloseTo(1, 4);
        },
      ),
      { numRuns: 40 },
    );
  });
  it('of sucrose alone is what lies above its solubility', () => {
    const state = grainAtEquilibrium({ water: 20, sucrose: 80 }, 'sucrose', 20);
    expect(state.crystal).toBeCloseTo(80 - 20 * pureSolubility('sucrose', 20), 6);
  });
  it('lactose takes its water of crystallisation along', () => {
    const state = grainAtEquilibrium({ water: 27, sucrose: 44.5, lactose: 11.2 }, 'lactose', 20);
    expect(27 - state.syrup.water).toBeCloseTo((state.crystal * 18.015) / 342.3, 6);
  });
  it('others lower the solubility, more of them more, and it is 1 without', () => {
    expect(saturationCoefficient({ water: 1, sucrose: 2 }, 'sucrose', 20).expected).toBe(1);
    const series = [0.2, 0.6, 1.2, 2.5].map(
      (q) => saturationCoefficient({ water: 1, glucose: q / 2, fructose: q / 2 }, 'sucrose', 20).expected,
    );
    expect([...series].sort((a, b) => b - a)).toEqual(series);
    expect(series[0]!).toBeLessThan(1);
  });
  it('refuses a syrup without water', () => expect(() => grainAtEquilibrium({ water: 0, sucrose: 1 }, 'sucrose', 20)).toThrow(OutOfRange));
});

describe('inversion', () => {
  it('one pH unit is a factor of ten', () => expect(inversionRate(110, 4, 0.4) / inversionRate(110, 5, 0.4)).toBeCloseTo(10, 9));
  it('a history of one temperature is first order', () => {
    const k = inversionRate(110, 4.5, 0.4);
    expect(invertedShare([0, 15, 30], [110, 110, 110], 4.5, () => 0.4)).toBeCloseTo(1 - Math.exp(-30 * k), 12);
  });
  it('does not depend on how a straight rise is cut into points', () => {
    const whole = invertedShare([0, 30], [60, 120], 5, () => 0.3);
    const cut = invertedShare([0, 7, 16, 30], [60, 74, 92, 120], 5, () => 0.3);
    expect(cut / whole).toBeCloseTo(1, 4);
  });
  it('keeps the mass and splits into equal parts', () => {
    fc.assert(
      fc.property(share, (part) => {
        const after = inverted({ water: 25, sucrose: 75 }, part);
        expect(after.water + after.sucrose! + after.glucose! + after.fructose!).toBeCloseTo(100, 9);
        expect(after.glucose).toBe(after.fructose);
      }),
    );
  });
  it('refuses logs that do not fit', () => {
    expect(() => invertedShare([0, 10], [100], 5, () => 0.3)).toThrow(BadInput);
    expect(() => invertedShare([10, 0], [100, 100], 5, () => 0.3)).toThrow(BadInput);
    expect(() => inversionRate(NaN, 5, 0.3)).toThrow(OutOfRange);
  });
});

describe('ingredients', () => {
  it.each(typicalIngredientNames)('%s sums to 1', (name) => {
    const parts = typicalIngredient(name);
    const sum = constituents.reduce((total, key) => total + (parts[key] ?? 0), 0);
    expect(sum).toBeCloseTo(1, 3);
  });
  it('keep their make-up at another moisture', () => {
    const parts = withMoisture(typicalIngredient('honey'), 0.2);
    expect(parts.water).toBe(0.2);
    expect(parts.fructose! / parts.glucose!).toBeCloseTo(0.382 / 0.313, 10);
  });
  it('invert syrup sums to 1 and gains a twentieth on splitting', () => {
    const full = invertSyrup(0.72, 1);
    expect(full.water! + full.sucrose! + full.glucose! + full.fructose!).toBeCloseTo(1, 12);
    const half = invertSyrup(0.72, 0.5);
    expect((half.glucose! + half.fructose!) / half.sucrose!).toBeCloseTo(1.0526, 3);
  });
});
