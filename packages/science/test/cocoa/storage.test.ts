import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutOfRange } from '../../src/errors.js';
import { oilDiffusivity, penetrationDepth, storageResult, uptakeShare } from '../../src/cocoa/migration.js';
import { concheLoad, endPoint, heatUpTime, hoursToMoisture, shaftPower } from '../../src/cocoa/conche.js';

describe('oil in chocolate', () => {
  it('moves faster when warmer', () => {
    fc.assert(
      fc.property(fc.double({ min: 5, max: 34, noNaN: true }), (t) => {
        expect(oilDiffusivity(t + 1)).toBeGreaterThanOrEqual(oilDiffusivity(t));
      }),
    );
  });
  it('falls off a cliff between 30 and 20 °C', () => expect(oilDiffusivity(30) / oilDiffusivity(20)).toBeGreaterThan(100));
  it('short and long time join, and end at 1', () => {
    expect(uptakeShare(1e-11, (0.1999 * 1e-6) / 1e-11, 1e-3)).toBeCloseTo(uptakeShare(1e-11, (0.2001 * 1e-6) / 1e-11, 1e-3), 3);
    expect(uptakeShare(1e-11, 1e9, 1e-3)).toBeCloseTo(1, 9);
  });
  it.each([36, -1, NaN])('has no diffusivity at %d °C', (t) => expect(() => oilDiffusivity(t)).toThrow(OutOfRange));
});

describe('storageResult', () => {
  it('of a steady store is plain diffusion', () => {
    const r = storageResult({ time: [0, 24, 48], temperature: [30, 30, 30] }, 26);
    expect(r.oilDepth).toBeCloseTo(penetrationDepth(oilDiffusivity(30), 48 * 3600), 12);
    expect(r.hoursAt30).toBeCloseTo(48, 9);
    expect(r).toMatchObject({ hoursAbove: 48, swing: 0 });
  });
  it('counts hours above by straight lines', () => {
    expect(storageResult({ time: [0, 10], temperature: [20, 30] }, 25).hoursAbove).toBeCloseTo(5, 12);
  });
  it('swing is the largest warming, not cooling', () => {
    expect(storageResult({ time: [0, 1, 2, 3], temperature: [25, 10, 18, 16] }, 30).swing).toBe(8);
  });
});

describe('conche', () => {
  const load = {
    mass: 3000,
    moisture: 0.016,
    moistureEnd: 0.005,
    acid: 1,
    temperature: 60,
    dryHours: 4,
    liquidHours: 0,
    airFlow: Infinity,
    airTemperature: 25,
    airHumidity: 0.5,
  };
  it('dries along the closed form where air does not limit', () => {
    expect(concheLoad(load).moisture).toBeCloseTo(0.005 + 0.011 * Math.exp(-0.35 * 4), 9);
    expect(concheLoad(load).evaporated).toBeCloseTo(3000 * (0.016 - concheLoad(load).moisture), 9);
  });
  it('less air never dries more, and no air not at all', () => {
    const end = [0, 50, 200, 1000, Infinity].map((airFlow) => concheLoad({ ...load, airFlow }).moisture);
    for (let i = 1; i < end.length; i++) expect(end[i]!).toBeLessThanOrEqual(end[i - 1]! + 1e-12);
    expect(end[0]).toBeCloseTo(0.016, 12);
  });
  it('warmer dries and strips more; the liquid phase less', () => {
    expect(concheLoad({ ...load, temperature: 70 }).moisture).toBeLessThan(concheLoad(load).moisture);
    expect(concheLoad({ ...load, temperature: 70 }).acid).toBeLessThan(concheLoad(load).acid);
    expect(concheLoad({ ...load, dryHours: 0, liquidHours: 4 }).moisture).toBeGreaterThan(concheLoad(load).moisture);
  });
  it('hours to a moisture undo the drying, and are endless below the end', () => {
    expect(hoursToMoisture(0.016, 0.005, concheLoad(load).moisture, 0.35)).toBeCloseTo(4, 6);
    expect(hoursToMoisture(0.016, 0.005, 0.004, 0.35)).toBe(Infinity);
    expect(hoursToMoisture(0.006, 0.005, 0.008, 0.35)).toBe(0);
  });
  it('end point of a clean decay', () => {
    const t = [0, 1, 2, 3, 4];
    expect(
      endPoint(
        t,
        t.map((x) => 2 + 3 * Math.exp(-x / 1.5)),
        2,
        0.05,
      ).hours,
    ).toBeCloseTo(1.5 * Math.log(3 / 0.1), 6);
  });
  it('power and heat-up', () => {
    expect(shaftPower(60, 100)).toBeCloseTo(2 * Math.PI * 100, 9);
    expect(() => heatUpTime(1000, 1590, 10, 5000, 6000)).toThrow(OutOfRange);
  });
});
