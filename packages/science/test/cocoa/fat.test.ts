import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { composition } from '../../src/composition.js';
import { OutOfRange } from '../../src/errors.js';
import {
  chocolateConductivity,
  chocolateSpecificHeat,
  fatBlend,
  forms,
  origins,
  polymorph,
  solidFat,
  temperatureOfSolidFat,
} from '../../src/cocoa/fat.js';
import { growthOf } from '../../src/cocoa/growth.js';
import { monotoneCurve } from '../../src/cocoa/interpolate.js';
import { avrami, foubert } from '../../src/cocoa/kinetics.js';

describe('solidFat', () => {
  it('falls with temperature, milk fat and oil, for every origin, and stays within 0 to 1', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...origins),
        fc.double({ min: -10, max: 45, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        fc.double({ min: 0, max: 0.2, noNaN: true }),
        (origin, t, warmer, milkFat, oil) => {
          const here = solidFat(t, { milkFat, oil, origin });
          expect(here).toBeGreaterThanOrEqual(0);
          expect(here).toBeLessThanOrEqual(1);
          expect(solidFat(t + warmer, { milkFat, oil, origin })).toBeLessThanOrEqual(here + 1e-12);
          expect(solidFat(t, { milkFat: milkFat + 0.05, oil, origin })).toBeLessThanOrEqual(here + 1e-12);
          expect(solidFat(t, { milkFat, oil: oil + 0.05, origin })).toBeLessThanOrEqual(here + 1e-12);
        },
      ),
    );
  });
  it('is undone by temperatureOfSolidFat', () => {
    for (const s of [0.05, 0.3, 0.6, 0.8])
      expect(solidFat(temperatureOfSolidFat(s, { milkFat: 0, oil: 0 }), { milkFat: 0, oil: 0 })).toBeCloseTo(s, 6);
  });
  it('keeps the order of origins: Brazil softest, Malaysia hardest', () => {
    const at = (origin: (typeof origins)[number]) => solidFat(25, { milkFat: 0, oil: 0, origin });
    expect(at('brazil')).toBeLessThan(at('ivory-coast'));
    expect(at('ivory-coast')).toBeLessThan(at('malaysia'));
  });
  it('reads the blend of a composition', () => {
    expect(fatBlend(composition({ cocoa_butter: 0.24, milk_fat: 0.06, sucrose: 0.7 }))).toEqual({ milkFat: 0.2, oil: 0 });
    expect(() => fatBlend(composition({ sucrose: 1 }))).toThrow(OutOfRange);
  });
  it.each([NaN, 200])('refuses a temperature of %d', (t) => expect(() => solidFat(t, { milkFat: 0, oil: 0 })).toThrow(OutOfRange));
});

describe('polymorph', () => {
  it('melts higher and holds more heat with each form', () => {
    const all = forms.map(polymorph);
    for (let i = 1; i < all.length; i++) {
      expect(all[i]!.meltingPoint).toBeGreaterThan(all[i - 1]!.meltingPoint);
      expect(all[i]!.heat).toBeGreaterThan(all[i - 1]!.heat);
    }
  });
});

describe('chocolateSpecificHeat', () => {
  it('matches its example', () => expect(chocolateSpecificHeat(0.31, 0.46, 40, 0)).toBeCloseTo(1620, 0));
  it('refuses more sugar than room', () => expect(() => chocolateSpecificHeat(0.5, 0.6, 20, 0)).toThrow(OutOfRange));
});

describe('monotoneCurve', () => {
  it('never leaves the values of its neighbours', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 3, maxLength: 8 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (y, u) => {
          const x = y.map((_, i) => i);
          const at = u * (y.length - 1);
          const i = Math.min(y.length - 2, Math.floor(at));
          const value = monotoneCurve(x, y)(at);
          expect(value).toBeGreaterThanOrEqual(Math.min(y[i]!, y[i + 1]!) - 1e-9);
          expect(value).toBeLessThanOrEqual(Math.max(y[i]!, y[i + 1]!) + 1e-9);
        },
      ),
    );
  });
});

describe('kinetics', () => {
  it('Foubert solves its differential equation', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.2, max: 6, noNaN: true }),
        fc.double({ min: 0.5, max: 8, noNaN: true }),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (n, k, t) => {
          const d = 1e-5;
          const f = (time: number) => foubert(1, 0.02, n, k, time);
          const h = 1 - f(t);
          expect((f(t + d) - f(t - d)) / (2 * d)).toBeCloseTo(-k * (h ** n - h), 3);
        },
      ),
    );
  });
  it('Foubert starts at the start and ends at the end', () => {
    expect(foubert(0.8, 0.02, 2, 5, 0)).toBeCloseTo(0.02, 12);
    expect(foubert(0.8, 0.02, 2, 5, 1000)).toBeCloseTo(0.8, 9);
  });
  it('Avrami runs from 0 to 1', () => {
    expect(avrami(0.1, 2, 0)).toBe(0);
    expect(avrami(0.1, 2, 1e3)).toBe(1);
  });
  it('growth does not pass equilibrium, needs seed, and melts back', () => {
    const grow = growthOf({ milkFat: 0.2, oil: 0 }, 'kinetics', 0.015);
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 34, noNaN: true }),
        fc.double({ min: 1e-4, max: 0.9, noNaN: true }),
        fc.double({ min: 0.1, max: 600, noNaN: true }),
        (t, s, dt) => {
          const end = solidFat(t, { milkFat: 0.2, oil: 0 });
          const after = s + grow(t, s, dt);
          expect(after).toBeGreaterThanOrEqual(Math.min(s, end) - 2e-3);
          expect(after).toBeLessThanOrEqual(Math.max(s, end) + 2e-3);
        },
      ),
    );
    expect(growthOf({ milkFat: 0.2, oil: 0 }, 'kinetics', 0)(20, 0, 100)).toBe(0);
    expect(grow(40, 0.3, 10)).toBeLessThan(0);
  });
});

describe('milk fat beside cocoa butter', () => {
  it('alone is its own curve, and without it nothing changes', () => {
    expect(solidFat(20, { milkFat: 1, oil: 0 })).toBeCloseTo(0.19, 6);
    expect(solidFat(20, { milkFat: 0, oil: 0 })).toBeCloseTo(0.76, 6);
  });
  it('softens, falls with temperature and never leaves 0 to 1', () => {
    for (const t of [5, 12, 20, 27]) {
      for (let m = 0; m < 0.35; m += 0.05) {
        const here = solidFat(t, { milkFat: m, oil: 0 });
        expect(solidFat(t, { milkFat: m + 0.05, oil: 0 })).toBeLessThan(here);
        expect(solidFat(t + 1, { milkFat: m, oil: 0 })).toBeLessThanOrEqual(here);
        expect(here).toBeGreaterThan(0);
      }
    }
  });
});

describe('chocolateConductivity', () => {
  it('is that of the fat alone, and rises with sugar and with crystals of fat', () => {
    expect(chocolateConductivity(1, 0, 40, 0)).toBeCloseTo(0.1697, 3);
    expect(chocolateConductivity(0.3, 0.5, 40, 0)).toBeGreaterThan(chocolateConductivity(0.4, 0.4, 40, 0));
    expect(chocolateConductivity(0.3, 0.5, 20, 0.8)).toBeGreaterThan(chocolateConductivity(0.3, 0.5, 20, 0));
  });
  it('lies between its parts', () => expect(chocolateConductivity(0.01, 0.99, 20, 0)).toBeLessThan(0.58));
  it.each([NaN, -50, 130])('refuses %d °C', (t) => expect(() => chocolateConductivity(0.3, 0.5, t, 0)).toThrow(OutOfRange));
});
