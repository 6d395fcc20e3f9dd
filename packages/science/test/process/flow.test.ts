import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { composition } from '../../src/composition.js';
import { NoSolution, OutOfRange } from '../../src/errors.js';
import { caramelPlantFactor, caramelViscosity, suspensionFactor } from '../../src/process/flow/caramel.js';
import { restingFront, similarityFront, slump } from '../../src/process/flow/slump.js';
import { concentratedSyrupViscosity } from '../../src/process/flow/syrup.js';
import { arrheniusFactor, wlfShift } from '../../src/process/flow/temperature.js';
import { chainGlass, glassTransition, waterAtGlassTransition } from '../../src/process/glass/mixture.js';
import { fox, gordonTaylor, gordonTaylorMixture } from '../../src/process/glass/rules.js';

const caramel = composition({
  water: 0.095,
  sucrose: 0.31,
  glucose: 0.06,
  maltose: 0.05,
  higher_saccharides: 0.22,
  lactose: 0.05,
  vegetable_fat: 0.15,
  milk_protein: 0.03,
  ash: 0.01,
});

describe('glass transition', () => {
  it('of a mixture with one solid is the Gordon-Taylor rule', () => {
    for (const w of [0, 0.03, 0.1, 0.5]) {
      expect(glassTransition(composition({ water: w, sucrose: 1 - w }))).toBeCloseTo(gordonTaylor(62, 5.42, w), 9);
    }
  });
  it('falls with water, for any mixture', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 0.8, noNaN: true }),
        (a, b, w) => {
          const of = (water: number) =>
            composition({ water, sucrose: ((1 - water) * a) / (a + b), higher_saccharides: ((1 - water) * b) / (a + b) });
          expect(glassTransition(of(w + 0.01))).toBeLessThan(glassTransition(of(w)));
        },
      ),
    );
  });
  it('does not heed fat and protein', () => {
    const lean = composition({ water: 0.1, sucrose: 0.5, maltose: 0.4 });
    const rich = composition({ water: 0.05, sucrose: 0.25, maltose: 0.2, milk_fat: 0.4, milk_protein: 0.1 });
    expect(glassTransition(rich)).toBeCloseTo(glassTransition(lean), 9);
  });
  it('is undone by waterAtGlassTransition', () => {
    const water = waterAtGlassTransition(caramel, 20);
    const dry = composition({ sucrose: 0.31, glucose: 0.06, maltose: 0.05, higher_saccharides: 0.22, lactose: 0.05 });
    const sugars = 0.69;
    const wet = composition({
      water,
      sucrose: (0.31 / sugars) * (1 - water),
      glucose: (0.06 / sugars) * (1 - water),
      maltose: (0.05 / sugars) * (1 - water),
      higher_saccharides: (0.22 / sugars) * (1 - water),
      lactose: (0.05 / sugars) * (1 - water),
    });
    expect(glassTransition(wet)).toBeCloseTo(20, 8);
    expect(waterAtGlassTransition(dry, 20)).toBeCloseTo(water, 9);
  });
  it('of glucose chains rises as they grow', () => {
    for (let de = 0; de < 100; de += 4) expect(chainGlass(de).tg).toBeGreaterThan(chainGlass(de + 4).tg);
  });
  it('of equal components is theirs under either rule', () => {
    const parts = [
      { mass: 1, tg: 40, k: 2 },
      { mass: 3, tg: 40, k: 5 },
    ];
    expect(gordonTaylorMixture(parts)).toBeCloseTo(40, 12);
    expect(fox(parts)).toBeCloseTo(40, 9);
  });
  it('refuses a food without sugar or water, and a temperature above the dry glass', () => {
    expect(() => glassTransition(composition({ milk_fat: 1 }))).toThrow(NoSolution);
    expect(() => waterAtGlassTransition(composition({ sucrose: 1 }), 80)).toThrow(OutOfRange);
    expect(() => gordonTaylor(62, 5.42, NaN)).toThrow(OutOfRange);
  });
});

describe('viscosity', () => {
  it('is that of the glass at the glass transition', () => {
    expect(concentratedSyrupViscosity(caramel, glassTransition(caramel))).toBeCloseTo(1e12, -3);
    expect(wlfShift(0, 17.44, 51.6)).toBeCloseTo(0, 12);
  });
  it('falls with temperature and with water', () => {
    const wetter = composition({ water: 0.12, sucrose: 0.48, maltose: 0.4 });
    const drier = composition({ water: 0.11, sucrose: 0.49, maltose: 0.4 });
    expect(concentratedSyrupViscosity(wetter, 60)).toBeLessThan(concentratedSyrupViscosity(drier, 60));
    expect(concentratedSyrupViscosity(drier, 61)).toBeLessThan(concentratedSyrupViscosity(drier, 60));
  });
  it('of a calibrated caramel meets the measurement it was calibrated with', () => {
    const factor = caramelPlantFactor({ composition: caramel, temperature: 78, viscosity: 38 });
    expect(caramelViscosity(caramel, 78, factor)).toBeCloseTo(38, 9);
    expect(caramelViscosity(caramel, 60, factor)).toBeGreaterThan(38);
  });
  it('of a suspension is that of the liquid without solids, and none at dense packing', () => {
    expect(suspensionFactor(0)).toBe(1);
    expect(suspensionFactor(0.01)).toBeCloseTo(1.025, 3);
    expect(() => suspensionFactor(0.72)).toThrow(OutOfRange);
  });
  it('refuses the pole of the WLF equation', () => {
    expect(() => wlfShift(-60, 17.44, 51.6)).toThrow(OutOfRange);
  });
  it('Arrhenius factors multiply along the way', () => {
    expect(arrheniusFactor(9e4, 10, 20) * arrheniusFactor(9e4, 20, 35)).toBeCloseTo(arrheniusFactor(9e4, 10, 35), 9);
  });
});

describe('slump', () => {
  const slab = { height: 0.01, width: 0.04, density: 1300, viscosity: 1e6 };
  const section = (shape: { x: Float64Array; height: Float64Array }) =>
    shape.height.reduce((sum, h, i) => sum + h * (shape.x[i + 1]! - shape.x[i]!), 0);

  it('keeps its mass and its order, and only spreads', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.002, max: 0.02, noNaN: true }),
        fc.double({ min: 0.02, max: 0.5, noNaN: true }),
        fc.double({ min: 2, max: 9, noNaN: true }),
        fc.double({ min: 0, max: 8, noNaN: true }),
        fc.constantFrom(0, 0, 3, 30),
        (height, width, logViscosity, logTime, yieldStress) => {
          const shape = slump({ height, width, density: 1300, viscosity: 10 ** logViscosity, yieldStress }, 10 ** logTime, 30);
          expect(section(shape) / ((height * width) / 2)).toBeCloseTo(1, 10);
          expect(shape.front).toBeGreaterThanOrEqual((width / 2) * (1 - 1e-9));
          for (let i = 0; i < 30; i++) expect(shape.x[i + 1]!).toBeGreaterThan(shape.x[i]!);
          for (let i = 1; i < 30; i++) expect(shape.height[i]!).toBeLessThanOrEqual(shape.height[i - 1]! * (1 + 1e-6));
        },
      ),
      { numRuns: 40 },
    );
  });
  it('stands still at the start', () => {
    const shape = slump(slab, 0);
    expect(shape.front).toBe(0.02);
    expect(shape.centre).toBeCloseTo(0.01, 12);
  });
  it('forgets its start and follows the similarity solution', () => {
    const shape = slump(slab, 1e8, 120);
    expect(shape.front / similarityFront(2e-4, 1300, 1e6, 1e8)).toBeCloseTo(1, 2);
    for (const share of [0.25, 0.5, 0.75]) {
      const i = shape.x.findIndex((x) => x > share * shape.front) - 1;
      const x = (shape.x[i]! + shape.x[i + 1]!) / 2 / shape.front;
      expect(shape.height[i]! / shape.centre).toBeCloseTo(Math.cbrt(1 - x * x), 2);
    }
  });
  it('depends on time over viscosity only', () => {
    expect(slump({ ...slab, viscosity: 1e5 }, 1e4).front).toBeCloseTo(slump(slab, 1e5).front, 12);
  });
  it('comes to rest on its yield stress', () => {
    const soft = { ...slab, viscosity: 1e3, yieldStress: 5 };
    expect(slump(soft, 1e8).front / restingFront(2e-4, 1300, 5)).toBeCloseTo(1, 2);
    const stiff = { ...slab, yieldStress: 500 };
    expect(slump(stiff, 1e8).front).toBeLessThan(0.0206);
  });
  it('does not depend on the number of strips', () => {
    expect(slump(slab, 1e6, 30).front / slump(slab, 1e6, 240).front).toBeCloseTo(1, 2);
  });
  it.each([0, -1, NaN])('refuses a height of %d', (height) => {
    expect(() => slump({ ...slab, height }, 1)).toThrow(OutOfRange);
  });
});
