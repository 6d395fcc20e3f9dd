import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NoSolution, OutOfRange } from '../../src/errors.js';
import { sucroseSolutionDensity, waterDensity } from '../../src/process/sugar-solution.js';
import {
  baume,
  brixOfDensity,
  glucoseSyrup,
  gravityOfBaume,
  refractiveIndex,
  refractometerReading,
  solidsOfReading,
  solidsOfRefractiveIndex,
  solutionDensity,
  sucroseViscosity,
  syrupViscosity,
  waterRefractiveIndex,
  type Solution,
} from '../../src/water/index.js';

/** A glucose syrup as a solution. */
function syrup(solids: number, de: number): Solution {
  const s = glucoseSyrup(solids, de);
  return {
    water: s.water!,
    glucose: s.glucose!,
    maltose: s.maltose!,
    higherSaccharides: s.higher_saccharides!,
    higherSaccharidesMol: s.higher_saccharides_mol!,
  };
}

describe('solutionDensity', () => {
  it('of sucrose is the ICUMSA density, of water that of water', () => {
    for (const w of [0.1, 0.5, 0.8])
      expect(solutionDensity({ water: 1 - w, sucrose: w }, 35)).toBeCloseTo(sucroseSolutionDensity(w, 35), 6);
    expect(solutionDensity({ water: 1 }, 20)).toBeCloseTo(waterDensity(20), 9);
  });
  it('rises with solids and falls with temperature', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 0.85, noNaN: true }), fc.double({ min: 10, max: 95, noNaN: true }), (w, t) => {
        expect(solutionDensity(syrup(w + 0.02, 42), t)).toBeGreaterThan(solutionDensity(syrup(w, 42), t));
        expect(solutionDensity(syrup(w, 42), t + 5)).toBeLessThan(solutionDensity(syrup(w, 42), t));
      }),
    );
  });
  it.each([-1, 131, NaN])('refuses %d °C', (t) => expect(() => solutionDensity(syrup(0.8, 42), t)).toThrow(OutOfRange));
});

describe('Brix and Baumé', () => {
  it('are undone', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.94, noNaN: true }), fc.double({ min: 0, max: 100, noNaN: true }), (w, t) => {
        expect(brixOfDensity(sucroseSolutionDensity(w, t), t)).toBeCloseTo(w, 6);
      }),
    );
    for (const degrees of [0, 20, 43]) expect(baume(gravityOfBaume(degrees))).toBeCloseTo(degrees, 10);
  });
  it.each([900, 2000, NaN])('refuse a density of %d', (density) => expect(() => brixOfDensity(density, 20)).toThrow(OutOfRange));
});

describe('refractiveIndex', () => {
  it('of water is 1.33299 at 20 °C', () => expect(waterRefractiveIndex(20)).toBeCloseTo(1.33299, 5));
  it('is undone by solidsOfRefractiveIndex for any syrup', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.02, max: 0.85, noNaN: true }),
        fc.double({ min: 15, max: 95, noNaN: true }),
        fc.double({ min: 15, max: 60, noNaN: true }),
        (w, de, t) => {
          const solution = syrup(w, de);
          expect(solidsOfRefractiveIndex(solution, refractiveIndex(solution, t), t)).toBeCloseTo(w, 6);
          expect(solidsOfReading(solution, refractometerReading(solution, t, true), t, true)).toBeCloseTo(w, 5);
        },
      ),
    );
  });
  it('a sucrose scale is right for sucrose at 20 °C, low for invert, high for glucose syrup', () => {
    expect(refractometerReading({ water: 30, sucrose: 70 }, 20, false)).toBeCloseTo(0.7, 6);
    expect(refractometerReading({ water: 30, glucose: 35, fructose: 35 }, 20, false)).toBeLessThan(0.69);
    expect(refractometerReading(syrup(0.8, 42), 20, false)).toBeGreaterThan(0.82);
  });
  // ICUMSA corrections of a sucrose reading, from memory: +0.80 at 30 °C, +1.62 at 40 °C for 60 °Brix.
  it.each([
    [30, 0.8],
    [40, 1.62],
  ])('a warm uncompensated reading of 60 Brix is low: at %d °C by %d', (t, correction) => {
    expect(60 - 100 * refractometerReading({ water: 40, sucrose: 60 }, t, false)).toBeCloseTo(correction, 1);
  });
  it('refuses what no concentration shows', () => {
    expect(() => solidsOfRefractiveIndex({ water: 0, sucrose: 1 }, 1.59, 20)).toThrow(NoSolution);
    expect(() => solidsOfRefractiveIndex({ water: 0, sucrose: 1 }, 1.32, 20)).toThrow(NoSolution);
    expect(() => refractiveIndex({ water: 1, sucrose: 1 }, NaN)).toThrow(OutOfRange);
  });
});

describe('viscosity', () => {
  it('of sucrose in a mixture of one is that of sucrose', () => {
    expect(syrupViscosity({ water: 40, sucrose: 60 }, 30)).toBeCloseTo(sucroseViscosity(0.6, 30), 10);
  });
  it('rises with solids, falls with temperature and with the dextrose equivalent', () => {
    for (let w = 0.1; w < 0.8; w += 0.05) expect(sucroseViscosity(w + 0.05, 40)).toBeGreaterThan(sucroseViscosity(w, 40));
    expect(sucroseViscosity(0.7, 60)).toBeLessThan(sucroseViscosity(0.7, 40));
    const series = [20, 36, 42, 62, 95].map((de) => syrupViscosity(syrup(0.75, de), 40));
    expect([...series].sort((a, b) => b - a)).toEqual(series);
  });
  it.each([-0.1, 0.95, NaN])('refuses solids of %d', (w) => expect(() => sucroseViscosity(w, 20)).toThrow(OutOfRange));
});
