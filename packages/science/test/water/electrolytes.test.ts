import { describe, expect, it } from 'vitest';
import { NoSolution } from '../../src/errors.js';
import { composition } from '../../src/composition.js';
import { concentratedSyrupViscosity } from '../../src/process/index.js';
import {
  boilingPoint,
  freezingPoint,
  sugarDiffusivityInWater,
  syrupViscosity,
  waterActivity,
  waterForActivity,
} from '../../src/water/index.js';
import type { Solution } from '../../src/water/index.js';

describe('salts beside sugars', () => {
  const brines: readonly Solution[] = [
    { water: 0, salt: 1 },
    { water: 0, potassiumChloride: 1 },
    { water: 0, calciumChloride: 1 },
    { water: 0, salt: 0.3, potassiumChloride: 0.2, calciumChloride: 0.2, sucrose: 5, ash: 0.5 },
  ];
  it('hold less water the drier they stand, and the inverse comes back', () => {
    for (const solids of brines) {
      let before = Infinity;
      for (let aw = 0.98; aw > 0.3; aw -= 0.02) {
        const water = waterForActivity(solids, aw, 25);
        expect(water).toBeLessThan(before);
        before = water;
        expect(waterActivity({ ...solids, water }, 25)).toBeCloseTo(aw, 8);
      }
    }
  });
  it('tend to the ideal law in much water', () => {
    expect(1 - waterActivity({ water: 1e6, salt: 58.44 }, 25)).toBeCloseTo((2 * 18.015) / 1e6, 6);
    expect(1 - waterActivity({ water: 1e6, calciumChloride: 110.98 }, 25)).toBeCloseTo((3 * 18.015) / 1e6, 6);
  });
  it('lower the freezing point less than their activity at 25 °C would', () => {
    expect(freezingPoint({ water: 80, salt: 20 })).toBeGreaterThan(-17);
    expect(boilingPoint({ water: 71.6, salt: 28.4 }, 101_325)).toBeLessThan(109);
  });
});

describe('syrup between thin and thick', () => {
  const invert = (water: number) => composition({ water, glucose: (1 - water) / 2, fructose: (1 - water) / 2 });
  it('thins steadily with water and is the thin law from 35 % water up', () => {
    let before = Infinity;
    for (let water = 0.12; water < 0.9; water += 0.005) {
      const viscosity = concentratedSyrupViscosity(invert(water), 25);
      expect(viscosity).toBeLessThan(before);
      before = viscosity;
    }
    expect(concentratedSyrupViscosity(invert(0.4), 25)).toBeCloseTo(syrupViscosity({ water: 0.4, glucose: 0.3, fructose: 0.3 }, 25), 10);
  });
  it('leaves crystals out, and has no answer without a syrup', () => {
    const grained = composition({ water: 0.2, sucrose: 0.8 });
    expect(concentratedSyrupViscosity(grained, 25, { crystallineSucrose: 0.9 })).toBeLessThan(concentratedSyrupViscosity(grained, 25));
    expect(() => concentratedSyrupViscosity(composition({ milk_fat: 1 }), 25)).toThrow(NoSolution);
  });
});

describe('diffusivity of a sugar in water', () => {
  it('rises with temperature without a jump at the ends of the table', () => {
    let before = 0;
    for (let t = 0; t <= 100; t += 0.5) {
      const here = sugarDiffusivityInWater('lactose', t);
      expect(here).toBeGreaterThan(before);
      if (before > 0) expect(here / before).toBeLessThan(1.03);
      before = here;
    }
  });
});
