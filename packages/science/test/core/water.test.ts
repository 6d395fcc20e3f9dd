import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  activityOfIce,
  latentHeatOfVaporisation,
  saturatedSteamDensity,
  saturatedWaterDensity,
  saturationPressure,
  saturationSlope,
  saturationTemperature,
  standardAltitude,
  standardPressure,
  stationPressure,
} from '../../src/core/index.js';
import { OutOfRange } from '../../src/errors.js';

describe('saturationPressure', () => {
  it('is undone by saturationTemperature', () => {
    fc.assert(
      fc.property(fc.double({ min: -60, max: 373.9, noNaN: true }), (t) => {
        expect(saturationTemperature(saturationPressure(t))).toBeCloseTo(t, 5);
      }),
    );
  });
  it('rises with temperature, across the triple point too', () => {
    for (let t = -60; t < 373; t += 0.5) expect(saturationPressure(t + 0.5)).toBeGreaterThan(saturationPressure(t));
    expect(saturationPressure(0.01) / saturationPressure(0.0099999)).toBeCloseTo(1, 5);
  });
  it.each([-60.1, 374, NaN, Infinity])('refuses %d °C', (t) => expect(() => saturationPressure(t)).toThrow(OutOfRange));
  it.each([0, -5, 23e6, NaN])('saturationTemperature refuses %d Pa', (p) => expect(() => saturationTemperature(p)).toThrow(OutOfRange));
});

describe('saturated water and steam', () => {
  // Steam tables: density of water and of steam, kg/m³.
  it.each([
    [20, 998.2, 0.01731],
    [100, 958.35, 0.5981],
    [150, 917.0, 2.547],
    [250, 798.9, 19.97],
  ])('at %d °C has %d and %d kg/m³', (t, water, steam) => {
    expect(saturatedWaterDensity(t) / water).toBeCloseTo(1, 3);
    expect(saturatedSteamDensity(t) / steam).toBeCloseTo(1, 3);
  });
  it('the slope is that of the vapour pressure curve', () => {
    for (const t of [10, 60, 118, 180]) {
      const difference = (saturationPressure(t + 0.01) - saturationPressure(t - 0.01)) / 0.02;
      expect(saturationSlope(t) / difference).toBeCloseTo(1, 3);
    }
  });
  it('latent heat falls with temperature', () => {
    for (let t = 0; t < 370; t += 5) expect(latentHeatOfVaporisation(t + 3)).toBeLessThan(latentHeatOfVaporisation(t));
  });
  it.each([-1, 374, NaN])('refuses %d °C', (t) => expect(() => latentHeatOfVaporisation(t)).toThrow(OutOfRange));
});

describe('standardPressure', () => {
  it('is undone by standardAltitude', () => {
    for (const h of [-1500, 0, 305, 2250, 10_500]) expect(standardAltitude(standardPressure(h))).toBeCloseTo(h, 6);
  });
  it('moves with the weather', () => {
    expect(stationPressure(0, 98_000)).toBeCloseTo(98_000, 6);
    expect(stationPressure(500, 103_000)).toBeGreaterThan(standardPressure(500));
  });
  it.each([-2001, 11_001, NaN])('refuses %d m', (h) => expect(() => standardPressure(h)).toThrow(OutOfRange));
});

describe('activityOfIce', () => {
  it('is 1 at the triple point and falls', () => {
    expect(activityOfIce(0.01)).toBeCloseTo(1, 4);
    for (let t = -60; t < 0; t++) expect(activityOfIce(t)).toBeLessThan(activityOfIce(t + 1));
  });
  it.each([0.1, -101, NaN])('refuses %d °C', (t) => expect(() => activityOfIce(t)).toThrow(OutOfRange));
});
