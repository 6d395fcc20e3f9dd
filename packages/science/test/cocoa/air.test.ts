import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NoSolution, OutOfRange } from '../../src/errors.js';
import { saturationPressure } from '../../src/core/index.js';
import {
  condensationRate,
  dewMargin,
  dewPoint,
  humidityRatio,
  humidityRatioFromWetBulb,
  mixAir,
  moistAirEnthalpy,
  surfaceHumidity,
  surfaceTemperatureFor,
  vapourPressure,
  wetBulb,
} from '../../src/cocoa/air.js';

const warm = fc.double({ min: -15, max: 45, noNaN: true });
const humid = fc.double({ min: 0.05, max: 1, noNaN: true });

describe('moist air', () => {
  it('humidity ratio and vapour pressure undo each other', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 50_000, noNaN: true }), (p) => {
        expect(vapourPressure(humidityRatio(p))).toBeCloseTo(p, 6);
      }),
    );
  });
  it('saturated air has its dew point and its wet bulb at its temperature', () => {
    fc.assert(
      fc.property(warm, (t) => {
        expect(dewPoint(t, 1)).toBeCloseTo(t, 5);
        expect(wetBulb(t, humidityRatio(saturationPressure(t)))).toBeCloseTo(t, 4);
      }),
    );
  });
  it('wet bulb lies between dew point and temperature and is undone', () => {
    fc.assert(
      fc.property(fc.double({ min: 2, max: 45, noNaN: true }), fc.double({ min: 0.2, max: 0.99, noNaN: true }), (t, rh) => {
        const ratio = humidityRatio(rh * saturationPressure(t));
        const bulb = wetBulb(t, ratio);
        expect(bulb).toBeLessThanOrEqual(t);
        expect(bulb).toBeGreaterThanOrEqual(dewPoint(t, rh) - 0.35); // ice on the bulb near 0 °C
        expect(humidityRatioFromWetBulb(t, bulb)).toBeCloseTo(ratio, 6);
      }),
    );
  });
  it('mixing keeps water and enthalpy', () => {
    const a = { dryAir: 2, temperature: 12, ratio: 0.006 };
    const b = { dryAir: 5, temperature: 28, ratio: 0.014 };
    const m = mixAir(a, b);
    expect(7 * m.ratio).toBeCloseTo(2 * a.ratio + 5 * b.ratio, 12);
    expect(7 * moistAirEnthalpy(m.temperature, m.ratio)).toBeCloseTo(2 * moistAirEnthalpy(12, 0.006) + 5 * moistAirEnthalpy(28, 0.014), 6);
  });
  it('condenses exactly where the surface is below the dew point', () => {
    fc.assert(
      fc.property(fc.double({ min: 15, max: 30, noNaN: true }), humid, fc.double({ min: 1, max: 30, noNaN: true }), (room, rh, surface) => {
        const margin = dewMargin(surface, room, rh);
        if (Math.abs(margin) < 0.01) return;
        expect(condensationRate(surface, room, rh, 8) > 0).toBe(margin < 0);
        expect(surfaceHumidity(room, rh, surface) > 1).toBe(margin < 0);
      }),
    );
  });
  it('the surface for a limit has that humidity', () => {
    expect(surfaceHumidity(20, 0.5, surfaceTemperatureFor(0.78, 20, 0.5))).toBeCloseTo(0.78, 6);
  });
  it('refuses what cannot be', () => {
    expect(() => dewPoint(20, 1.2)).toThrow(OutOfRange);
    expect(() => dewPoint(NaN, 0.5)).toThrow(OutOfRange);
    expect(() => humidityRatioFromWetBulb(40, 5)).toThrow(NoSolution);
    expect(() => humidityRatioFromWetBulb(20, 25)).toThrow(OutOfRange);
    expect(() => wetBulb(20, 0.05)).toThrow(OutOfRange);
  });
});
