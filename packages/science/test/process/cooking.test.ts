import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { atMoisture, composition } from '../../src/composition.js';
import { NoSolution, OutOfRange } from '../../src/errors.js';
import { batchCook, evaporate, filmConductance, filmCook } from '../../src/process/cooking/evaporate.js';
import { cookMoisture, levelSensitivity } from '../../src/process/cooking/moisture.js';
import { cookRelation } from '../../src/process/cooking/relation.js';
import { densityAtFoamingPower, densityConsequence, stiffnessRatio } from '../../src/process/foaming/consequence.js';
import { cupDensity, densityWithInclusions } from '../../src/process/foaming/cup.js';
import { gasExpansion, whippedDensity, whippingPressure } from '../../src/process/foaming/whipping.js';
import { boilingPoint } from '../../src/water/boiling.js';
import { solutionOf } from '../../src/water/solution.js';

const mass = composition({
  water: 0.225,
  sucrose: 0.29,
  glucose: 0.055,
  maltose: 0.04,
  higher_saccharides: 0.19,
  lactose: 0.03,
  vegetable_fat: 0.13,
  milk_protein: 0.02,
  salt: 0.01,
  ash: 0.01,
});
const relation = cookRelation(mass, 101_325);
const feed = { mass: 536.6, moisture: 0.225, temperature: 60 };

describe('boiling relation of a cook', () => {
  it('is the boiling point of the syrup phase, within a hundredth of a kelvin', () => {
    for (const m of [0.05, 0.08, 0.12, 0.25, 0.5, 0.9, 0.99]) {
      expect(Math.abs(relation.boiling(m) - boilingPoint(solutionOf(atMoisture(mass, m)), 101_325))).toBeLessThan(0.01);
    }
  });
  it('and its inverse agree', () => {
    for (const t of [104, 110, 118, 130, 140]) expect(relation.boiling(relation.moisture(t))).toBeCloseTo(t, 2);
  });
  it('shifts by the plant offset', () => {
    const shifted = cookRelation(mass, 101_325, 1.5);
    expect(shifted.moisture(119.5)).toBeCloseTo(relation.moisture(118), 12);
    expect(shifted.boiling(0.1) - relation.boiling(0.1)).toBeCloseTo(1.5, 12);
  });
  it('gives the same moisture for the same dry matter, however wet it was fed', () => {
    expect(cookRelation(atMoisture(mass, 0.4), 101_325).moisture(118)).toBeCloseTo(relation.moisture(118), 12);
  });
  it('refuses a mass in which nothing is dissolved', () => {
    expect(() => cookRelation(composition({ vegetable_fat: 1 }), 101_325)).toThrow(OutOfRange);
  });
});

describe('evaporation', () => {
  it('keeps the solids and the mass', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.12, max: 0.6, noNaN: true }), fc.double({ min: 0.04, max: 0.1, noNaN: true }), (from, to) => {
        const result = evaporate({ mass: 100, moisture: from, temperature: 50 }, to, relation);
        expect(result.product + result.evaporated).toBeCloseTo(100, 9);
        expect(result.product * (1 - to)).toBeCloseTo(100 * (1 - from), 9);
        expect(result.endTemperature).toBeCloseTo(relation.boiling(to), 6);
      }),
      { numRuns: 30 },
    );
  });
  it('costs at least the latent heat of the water', () => {
    const result = evaporate(feed, 0.095, relation);
    expect(result.boilOff / result.evaporated).toBeGreaterThan(2.1e6);
    expect(result.boilOff / result.evaporated).toBeLessThan(2.6e6);
  });
  it('refuses to dry upwards', () => {
    expect(() => evaporate(feed, 0.3, relation)).toThrow(OutOfRange);
    expect(() => evaporate(feed, NaN, relation)).toThrow(OutOfRange);
  });
});

describe('kettle', () => {
  it('takes half the time with twice the conductance', () => {
    const slow = batchCook(feed, 0.095, relation, { medium: 165, conductance: 2000 });
    const fast = batchCook(feed, 0.095, relation, { medium: 165, conductance: 4000 });
    expect(slow.boilTime / fast.boilTime).toBeCloseTo(2, 9);
    expect(slow.heatUpTime / fast.heatUpTime).toBeCloseTo(2, 9);
  });
  it('evaporates slower as the boiling point rises, and uses more steam with a loss', () => {
    const cook = batchCook(feed, 0.095, relation, { medium: 165, conductance: 2500 });
    expect(cook.endRate).toBeLessThan(cook.startRate);
    expect(batchCook(feed, 0.095, relation, { medium: 165, conductance: 2500, loss: 5000 }).steam).toBeGreaterThan(cook.steam);
  });
  it('says so when the steam is too cold', () => {
    expect(() => batchCook(feed, 0.095, relation, { medium: 115, conductance: 2500 })).toThrow(NoSolution);
  });
});

describe('film', () => {
  const stream = { mass: 0.23, moisture: 0.225, temperature: 80 };
  it('and the conductance it needs undo each other', () => {
    const film = filmCook(stream, relation, { medium: 160, conductance: 2000 });
    expect(filmConductance(stream, film.endMoisture, relation, 160).conductance / 2000).toBeCloseTo(1, 6);
  });
  it('leaves drier with more area, and its level acts like area', () => {
    const wet = filmCook(stream, relation, { medium: 160, conductance: 1900 });
    const dry = filmCook(stream, relation, { medium: 160, conductance: 2100 });
    expect(dry.endMoisture).toBeLessThan(wet.endMoisture);
    const level = levelSensitivity(stream, relation, { medium: 160, conductance: 2000 });
    expect(level.moisture * 0.1).toBeCloseTo(dry.endMoisture - wet.endMoisture, 3);
  });
  it('says so when it is starved, and never gets hotter than its steam', () => {
    expect(() => filmCook(stream, relation, { medium: 160, conductance: 20 })).toThrow(NoSolution);
    const large = filmCook(stream, relation, { medium: 150, conductance: 50_000 });
    expect(large.endTemperature).toBeLessThan(150);
    expect(large.endTemperature).toBeGreaterThan(148);
  });
});

describe('moisture of a cook by its thermometer', () => {
  it('rises when the probe reads too high', () => {
    const cook = cookMoisture(relation, 118, 0.3, 1);
    expect(cook.withProbeError).toBeGreaterThan(cook.moisture);
    expect(cook.withProbeError - cook.moisture).toBeCloseTo(-cook.perKelvin, 3);
    expect(cook.standardDeviation).toBeCloseTo(0.3 * Math.abs(cook.perKelvin), 12);
  });
});

describe('whipping', () => {
  const whip = { pressure: 450_000, temperature: 90, waterActivity: 0.55 };
  const after = { pressure: 101_325, temperature: 42, waterActivity: 0.55 };
  it('expands dry gas by Boyle and Gay-Lussac', () => {
    const dry = (pressure: number, temperature: number) => ({ pressure, temperature, waterActivity: 0 });
    expect(gasExpansion(dry(3e5, 20), dry(1e5, 20))).toBeCloseTo(3, 9);
    expect(gasExpansion(dry(1e5, 20), dry(1e5, 80))).toBeCloseTo(353.15 / 293.15, 9);
    expect(gasExpansion(whip, after) * gasExpansion(after, whip)).toBeCloseTo(1, 12);
  });
  it('needs the pressure that gave the density', () => {
    const foam = whippedDensity(0.12, 1390, whip, after, 0.85);
    expect(whippingPressure(foam.density, 0.12, 1390, whip, after, 0.85)).toBeCloseTo(450_000, 3);
    expect(foam.density).toBeLessThan(1390);
    expect(foam.airFraction).toBeCloseTo(1 - foam.density / 1390, 12);
  });
  it('is lighter with more pressure, heavier with loss', () => {
    const at = (pressure: number, kept: number) => whippedDensity(0.12, 1390, { ...whip, pressure }, after, kept).density;
    expect(at(500_000, 1)).toBeLessThan(at(400_000, 1));
    expect(at(450_000, 0.8)).toBeGreaterThan(at(450_000, 1));
    expect(at(450_000, 0)).toBe(1390);
  });
  it('refuses a mass that would boil', () => {
    expect(() => gasExpansion({ pressure: 50_000, temperature: 110, waterActivity: 0.9 }, after)).toThrow(NoSolution);
  });
  it('weak albumen: mass at constant thickness and thickness at constant mass are reciprocal', () => {
    const rho = densityAtFoamingPower(920, 1390, 0.9);
    expect(rho).toBeGreaterThan(920);
    const { massRatio, thicknessRatio } = densityConsequence(920, rho);
    expect(massRatio * thicknessRatio).toBeCloseTo(1, 12);
    expect(densityAtFoamingPower(920, 1390, 1)).toBeCloseTo(920, 9);
    expect(stiffnessRatio(920, 920, 1390)).toBe(1);
    expect(() => stiffnessRatio(500, 920, 1390)).toThrow(OutOfRange);
  });
  it('the cup gives mass by volume, with what filling and weighing add', () => {
    const reading = cupDensity(0.196, 0.104, 1e-4, 0.01, 1e-4);
    expect(reading.density).toBeCloseTo(920, 6);
    expect(reading.uncertainty).toBeCloseTo(Math.hypot(9.2, Math.SQRT2), 6);
    expect(() => cupDensity(0.1, 0.1, 1e-4)).toThrow(OutOfRange);
    expect(densityWithInclusions(550, 748, 0)).toBeCloseTo(550, 9);
  });
});
