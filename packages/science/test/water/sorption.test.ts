import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { composition } from '../../src/composition.js';
import { saturationTemperature } from '../../src/core/index.js';
import { BadInput, NoSolution, OutOfRange } from '../../src/errors.js';
import {
  betFromLine,
  boilingPoint,
  boilingPointOf,
  calibrationSalts,
  cookingHeat,
  equilibriumMoisture,
  fitGab,
  flash,
  gabActivity,
  gabMoisture,
  gabSlope,
  lienhardWaterDiffusivity,
  saltWaterActivity,
  sameSolidsTemperature,
  solutionOf,
  solutionSpecificHeat,
  sorbedMoisture,
  sorptionActivity,
  sorptionMaterials,
  waterActivity,
  waterActivityOf,
  waterDiffusivity,
  zobristWaterDiffusivity,
  type Gab,
} from '../../src/water/index.js';

const gab = fc
  .record({
    m0: fc.double({ min: 0.01, max: 0.15, noNaN: true }),
    C: fc.double({ min: 1.5, max: 80, noNaN: true }),
    K: fc.double({ min: 0.5, max: 1, noNaN: true }),
  })
  .map(({ m0, C, K }): Gab => [m0, C, K]);
const aw = fc.double({ min: 0.05, max: 0.95, noNaN: true });

describe('GAB', () => {
  it('is undone, and its slope is its slope', () => {
    fc.assert(
      fc.property(gab, aw, (constants, a) => {
        expect(gabActivity(constants, gabMoisture(constants, a))).toBeCloseTo(a, 9);
        const difference = (gabMoisture(constants, a + 1e-6) - gabMoisture(constants, a - 1e-6)) / 2e-6;
        expect(gabSlope(constants, a) / difference).toBeCloseTo(1, 4);
      }),
    );
  });
  it('is found again by the fit', () => {
    fc.assert(
      fc.property(gab, (constants) => {
        const points = [0.1, 0.25, 0.4, 0.6, 0.8, 0.9];
        const found = fitGab(
          points,
          points.map((a) => gabMoisture(constants, a)),
        );
        for (let i = 0; i < 3; i++) expect(found[i]! / constants[i]!).toBeCloseTo(1, 4);
      }),
    );
  });
  it('with K = 1 has the straight plot of BET', () => {
    const constants: Gab = [0.05, 12, 1];
    const y = [0.1, 0.3].map((a) => a / ((1 - a) * gabMoisture(constants, a)));
    const slope = (y[1]! - y[0]!) / 0.2;
    const { monolayer, C } = betFromLine(slope, y[0]! - 0.1 * slope);
    expect(monolayer).toBeCloseTo(0.05, 10);
    expect(C).toBeCloseTo(12, 8);
  });
  it('refuses what it cannot hold', () => {
    expect(() => gabMoisture([0.05, 10, 1.2], 0.9)).toThrow(OutOfRange);
    expect(() => gabMoisture([0.05, 10, 0.8], NaN)).toThrow(OutOfRange);
    expect(() => fitGab([0.1, 0.2], [0.01, 0.02])).toThrow(BadInput);
    expect(() => fitGab([0.2, 0.2, 0.2], [0.01, 0.02, 0.03])).toThrow(BadInput);
  });
});

describe('isotherms of materials', () => {
  it.each(sorptionMaterials)('%s rises and is undone', (material) => {
    let last = 0;
    for (const a of [0.15, 0.3, 0.45, 0.6, 0.75]) {
      const m = sorbedMoisture(material, a, 25);
      expect(m).toBeGreaterThan(last);
      expect(sorptionActivity(material, m, 25)).toBeCloseTo(a, 6);
      last = m;
    }
  });
  it('refuses a moisture that no activity gives', () => expect(() => sorptionActivity('cocoa_bean', 3, 25)).toThrow(NoSolution));
  it('every salt lies within 0 to 1 and in order at 25 °C', () => {
    const values = calibrationSalts.map((salt) => saltWaterActivity(salt, 25));
    expect([...values].sort((a, b) => a - b)).toEqual(values);
    expect(() => saltWaterActivity('potassium_acetate', 60)).toThrow(OutOfRange);
  });
});

describe('food', () => {
  const nougat = composition({
    water: 0.08,
    sucrose: 0.42,
    glucose: 0.06,
    maltose: 0.04,
    higher_saccharides: 0.2,
    higher_saccharides_mol: 0.26,
    egg_protein: 0.01,
    milk_protein: 0.02,
    vegetable_fat: 0.12,
    lactose: 0.03,
    starch: 0.02,
  });
  it('water activity and equilibrium moisture undo each other', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.15, max: 0.9, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), (a, crystalline) => {
        const moisture = equilibriumMoisture(nougat, a, 25, crystalline);
        const factor = (1 - moisture) / (1 - 0.08);
        const moist = nougat.map((value) => value * factor);
        moist[0] = moisture;
        expect(waterActivityOf(moist, 25, crystalline)).toBeCloseTo(a, 6);
      }),
    );
  });
  it('without proteins and starch is its solution', () => {
    const plain = composition({ water: 0.2, sucrose: 0.5, glucose: 0.2, vegetable_fat: 0.1 });
    expect(waterActivityOf(plain, 25)).toBeCloseTo(waterActivity(solutionOf(plain), 25), 9);
    expect(boilingPointOf(plain, 101_325)).toBeCloseTo(boilingPoint(solutionOf(plain), 101_325), 5);
  });
  it('protein lowers it, crystals raise it, starch alone has its isotherm', () => {
    const without = composition({ ...{ water: 0.08, sucrose: 0.42, glucose: 0.06, maltose: 0.04, vegetable_fat: 0.4 } });
    const withProtein = composition({ water: 0.08, sucrose: 0.42, glucose: 0.06, maltose: 0.04, vegetable_fat: 0.3, egg_protein: 0.1 });
    expect(waterActivityOf(withProtein, 25)).toBeLessThan(waterActivityOf(without, 25));
    expect(waterActivityOf(without, 25, 0.5)).toBeGreaterThan(waterActivityOf(without, 25));
    const starch = composition({ water: 0.1, starch: 0.9 });
    expect(waterActivityOf(starch, 25)).toBeCloseTo(sorptionActivity('starch', 0.1 / 0.9, 25), 6);
  });
  it('refuses a food of fat alone and a dry one that should boil', () => {
    expect(() => boilingPointOf(composition({ vegetable_fat: 1 }), 101_325)).toThrow(NoSolution);
    expect(() => equilibriumMoisture(nougat, 1, 25)).toThrow(OutOfRange);
  });
});

describe('cooking', () => {
  const syrup = { water: 14, sucrose: 45, glucose: 8, maltose: 5, higherSaccharides: 28, higherSaccharidesMol: 36 };
  it('flashing balances heat and ends at the boiling point', () => {
    const after = flash(syrup, 130, 20_000);
    expect(after.temperature).toBeCloseTo(boilingPoint(after.syrup, 20_000), 9);
    expect(after.syrup.water + after.steam).toBeCloseTo(14, 9);
    const heat = 97 * solutionSpecificHeat(syrup, 105) * (130 - after.temperature);
    expect(after.steam).toBeCloseTo(heat / 2.28e6, 0);
  });
  it('does nothing to a syrup that does not boil there', () => {
    expect(flash(syrup, 90, 101_325)).toEqual({ syrup, temperature: 90, steam: 0 });
  });
  it('the same solids boil lower at a lower pressure, and come back', () => {
    const low = sameSolidsTemperature(syrup, 118, 101_325, 20_000);
    expect(low).toBeLessThan(118);
    expect(sameSolidsTemperature(syrup, low, 20_000, 101_325)).toBeCloseTo(118, 6);
    expect(low).toBeGreaterThan(saturationTemperature(20_000));
  });
  it('cooking heat is warming plus evaporation', () => {
    const feed = { ...syrup, water: 30 };
    expect(cookingHeat(feed, 30, 60, 100)).toBeCloseTo(solutionSpecificHeat(feed, 80) * 40, 6);
    expect(cookingHeat(feed, 14, 60, 118)).toBeGreaterThan(cookingHeat(feed, 20, 60, 118));
    expect(() => cookingHeat(feed, 31, 60, 118)).toThrow(OutOfRange);
  });
});

describe('diffusivity', () => {
  it('rises with water and temperature', () => {
    for (let a = 0.2; a < 0.95; a += 0.05) {
      expect(waterDiffusivity('sucrose', a + 0.05)).toBeGreaterThan(waterDiffusivity('sucrose', a));
      expect(zobristWaterDiffusivity(a + 0.05, 20)).toBeGreaterThan(zobristWaterDiffusivity(a, 20));
      expect(zobristWaterDiffusivity(a, 30)).toBeGreaterThan(zobristWaterDiffusivity(a, 20));
      expect(lienhardWaterDiffusivity(a, 25)).toBeGreaterThan(lienhardWaterDiffusivity(a, 5));
    }
  });
  it('water moves faster than the sugar', () => {
    for (const a of [0.4, 0.6, 0.8]) expect(waterDiffusivity('sucrose', a)).toBeGreaterThan(10 * waterDiffusivity('sucroseSelf', a));
  });
  it.each([-0.1, 1.1, NaN])('refuses an activity of %d', (a) => {
    expect(() => waterDiffusivity('sucrose', a)).toThrow(OutOfRange);
    expect(() => zobristWaterDiffusivity(a, 20)).toThrow(OutOfRange);
    expect(() => lienhardWaterDiffusivity(a, 20)).toThrow(OutOfRange);
  });
});
