import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { composition } from '../../src/composition.js';
import { BadInput, OutOfRange } from '../../src/errors.js';
import { foodDensity, foodSpecificHeat } from '../../src/process/choi-okos.js';
import { airFraction, foamConductivity, foamDensity, overrun } from '../../src/process/foaming/foam.js';
import { sucroseSolutionDensity } from '../../src/process/sugar-solution.js';
import { density, specificHeat, thermalConductivity, thermalDiffusivity } from '../../src/process/thermal.js';

const caramel = composition({
  water: 0.1,
  sucrose: 0.3,
  maltose: 0.2,
  lactose: 0.05,
  glucose: 0.17,
  milk_fat: 0.13,
  milk_protein: 0.04,
  ash: 0.01,
});

describe('density of a composition', () => {
  it('is that of the sucrose solution for sucrose and water', () => {
    for (const w of [0, 0.2, 0.6, 0.9]) {
      expect(density(composition({ water: 1 - w, sucrose: w }), 40)).toBeCloseTo(sucroseSolutionDensity(w, 40), 6);
    }
  });
  it('falls as the mass warms and rises with solids', () => {
    expect(density(caramel, 100)).toBeLessThan(density(caramel, 20));
    expect(density(composition({ water: 0.1, sucrose: 0.9 }), 20)).toBeGreaterThan(density(composition({ water: 0.2, sucrose: 0.8 }), 20));
  });
  it('is higher for crystal than for dissolved sugar', () => {
    expect(density(composition({ sucrose: 1 }), 20, { crystallineSucrose: 1 })).toBeGreaterThan(density(composition({ sucrose: 1 }), 20));
  });
  it.each([NaN, -41, 201])('refuses %d °C', (t) => {
    expect(() => density(caramel, t)).toThrow(OutOfRange);
    expect(() => specificHeat(caramel, t)).toThrow(OutOfRange);
    expect(() => thermalConductivity(caramel, t)).toThrow(OutOfRange);
  });
});

describe('thermal properties', () => {
  it('lie between those of the parts, whatever the shares', () => {
    fc.assert(
      fc.property(
        fc.tuple(...Array.from({ length: 5 }, () => fc.double({ min: 0.01, max: 1, noNaN: true }))),
        fc.double({ min: 0, max: 100, noNaN: true }),
        (x, t) => {
          const sum = x.reduce((a, b) => a + b, 0);
          const [water, sucrose, milk_fat, milk_protein, ash] = x.map((v) => v / sum) as [number, number, number, number, number];
          const of = composition({ water, sucrose, milk_fat, milk_protein, ash });
          expect(density(of, t)).toBeGreaterThan(880);
          expect(density(of, t)).toBeLessThan(2424);
          expect(specificHeat(of, t)).toBeGreaterThan(1090);
          expect(specificHeat(of, t)).toBeLessThan(4225);
          expect(thermalConductivity(of, t)).toBeGreaterThan(0.15);
          expect(thermalConductivity(of, t)).toBeLessThan(0.69);
        },
      ),
    );
  });
  it('make the diffusivity k / (rho cp)', () => {
    expect(thermalDiffusivity(caramel, 60) * density(caramel, 60) * specificHeat(caramel, 60)).toBeCloseTo(
      thermalConductivity(caramel, 60),
      12,
    );
  });
  it('do not depend on the scale of a proximate composition', () => {
    const one = { water: 0.1, protein: 0.04, fat: 0.13, carbohydrate: 0.72, fibre: 0, ash: 0.01 };
    const hundred = { water: 10, protein: 4, fat: 13, carbohydrate: 72, fibre: 0, ash: 1 };
    expect(foodDensity(hundred, 20)).toBeCloseTo(foodDensity(one, 20), 9);
    expect(foodSpecificHeat(hundred, 20)).toBeCloseTo(foodSpecificHeat(one, 20), 9);
  });
  it('refuse a food made of nothing', () => {
    expect(() => foodDensity({ water: 0, protein: 0, fat: 0, carbohydrate: 0, fibre: 0, ash: 0 }, 20)).toThrow(BadInput);
  });
});

describe('foam', () => {
  it('air fraction and density undo each other', () => {
    for (const air of [0, 0.3, 0.6]) expect(airFraction(foamDensity(air, 1380), 1380)).toBeCloseTo(air, 12);
  });
  it('overrun is air over the rest', () => {
    const air = airFraction(700, 1380);
    expect(overrun(700, 1380)).toBeCloseTo(air / (1 - air), 12);
  });
  it('conducts less than the mass and no less than air', () => {
    expect(foamConductivity(0.3, 0)).toBeCloseTo(0.3, 12);
    expect(foamConductivity(0.3, 1)).toBeCloseTo(0.026, 12);
    expect(foamConductivity(0.3, 0.4)).toBeLessThan(0.3);
  });
  it.each([0, -1, 1381, NaN])('refuses a foam of %d kg/m³ from a mass of 1380', (rho) => {
    expect(() => airFraction(rho, 1380)).toThrow(OutOfRange);
  });
});
