import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BadInput, NoSolution, OutOfRange } from '../../src/errors.js';
import { temperCurve, temperState } from '../../src/cocoa/temper-curve.js';
import { coolingCurve, fitGrowthRate } from '../../src/cocoa/temper-simulation.js';
import { crystalsFromCurve, crystalsFromDuty, logMeanDifference, tempererCause, tempererDuty } from '../../src/cocoa/temperer.js';
import { minutesToLimit } from '../../src/cocoa/trend.js';

const time = Array.from({ length: 85 }, (_, i) => 5 * i);
const sample = { start: 30, coolant: 8, coolingRate: 0.01, fat: 0.32, blend: { milkFat: 0.2, oil: 0 }, specificHeat: 1590 };

describe('temperCurve', () => {
  it('finds slope, temperature and time of a known inflection, for any slope and place', () => {
    fc.assert(
      fc.property(fc.double({ min: -1.2, max: 1.2, noNaN: true }), fc.double({ min: 140, max: 280, noNaN: true }), (slope, t0) => {
        const curve = temperCurve(
          time,
          time.map((t) => 23 + (slope / 60) * (t - t0) - 2e-7 * (t - t0) ** 3),
        );
        expect(curve.inflection).toBe(true);
        expect(curve.slope).toBeCloseTo(slope, 1);
        expect(Math.abs(curve.time - t0)).toBeLessThan(12);
      }),
    );
  });
  it('does not care where the clock starts, or the thermometer', () => {
    const value = time.map((t) => 23 - 2e-7 * (t - 200) ** 3);
    const a = temperCurve(time, value);
    const b = temperCurve(
      time.map((t) => t + 1000),
      value.map((v) => v + 2),
    );
    expect(b.slope).toBeCloseTo(a.slope, 6);
    expect(b.time - a.time).toBe(1000);
    expect(b.temperature - a.temperature).toBeCloseTo(2, 6);
  });
  it('stands noise and uneven readings, with limits that hold the truth', () => {
    let seed = 7;
    const uniform = () => ((seed = (seed * 1103515245 + 12345) % 2147483648) + 0.5) / 2147483648;
    let held = 0;
    for (let n = 0; n < 60; n++) {
      const t = time.map((x) => x + 2 * (uniform() - 0.5));
      const value = t.map((x) => 23 + 0.005 * (x - 200) - 3e-7 * (x - 200) ** 3 + 0.04 * (uniform() + uniform() + uniform() - 1.5));
      const c = temperCurve(t, value);
      if (c.slopeLow <= 0.3 + 0.05 && c.slopeHigh >= 0.3 - 0.05) held++;
      expect(c.slope).toBeCloseTo(0.3, 0);
    }
    expect(held).toBeGreaterThan(50);
  });
  it('says so where there is no inflection: a plain exponential', () => {
    expect(
      temperCurve(
        time,
        time.map((t) => 8 + 22 * Math.exp(-t / 120)),
      ).inflection,
    ).toBe(false);
  });
  it('takes the seven nearest readings where the window holds fewer (regression: NaN slope)', () => {
    const curve = temperCurve(
      time,
      time.map((t) => 23 - 2e-7 * (t - 200) ** 3),
      1e-5,
    );
    expect(curve.slope).toBeCloseTo(0, 1);
    expect(Number.isFinite(curve.steepest)).toBe(true);
  });
  it('measures the rise of a curve that warms', () => {
    const value = time.map((t) => (t < 150 ? 30 - 0.05 * t : 22.5 + 0.6 * (1 - Math.cos(((t - 150) * Math.PI) / 135)) * (t < 285 ? 1 : 1)));
    expect(temperCurve(time, value).rise).toBeGreaterThan(1);
  });
  it.each([
    ['too few readings', [0, 1, 2], [30, 29, 28]],
    ['unlike lists', time, [1]],
    ['times that do not rise', time.map(() => 0), time],
  ])('refuses %s', (_, t, v) => expect(() => temperCurve(t, v)).toThrow(BadInput));
});

describe('coolingCurve', () => {
  it('more crystals give a lower slope at the inflection', () => {
    const slopes = [0.003, 0.01, 0.03, 0.1].map((crystals) => {
      const made = coolingCurve({ ...sample, crystals }, 480, 3);
      return temperCurve(made.time, made.temperature).slope;
    });
    for (let i = 1; i < slopes.length; i++) expect(slopes[i]!).toBeLessThan(slopes[i - 1]!);
  });
  it('gives up and gains heat in balance: crystals read back from the curve', () => {
    const made = coolingCurve({ ...sample, crystals: 0.015 }, 480, 1);
    const read = crystalsFromCurve(made.time, made.temperature, 8, 0.01, 0.32, 1590);
    expect(read.at(-1)! + 0.015).toBeCloseTo(made.solids.at(-1)!, 2);
  });
});

describe('fitGrowthRate', () => {
  it('gives back the rate that made a curve', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 0.4, noNaN: true }), (growthRate) => {
        const made = coolingCurve({ ...sample, crystals: 0.015, growthRate }, 420, 5);
        expect(fitGrowthRate(made.time, made.temperature, { ...sample, crystals: 0.015 }).rate / growthRate).toBeCloseTo(1, 1);
      }),
      { numRuns: 15 },
    );
  });
  it('refuses a curve of a few readings', () =>
    expect(() => fitGrowthRate([0, 1], [30, 29], { ...sample, crystals: 0.015 })).toThrow(BadInput));
});

describe('temperState', () => {
  it('reads the band with its ends inside', () => {
    expect([0.41, 0.4, -0.4, -0.41].map((s) => temperState(s, -0.4, 0.4))).toEqual(['under', 'well', 'well', 'over']);
    expect(() => temperState(0, 1, -1)).toThrow(BadInput);
  });
});

describe('temperer', () => {
  const load = { throughput: 1600, inlet: 45, coldest: 27, fat: 0.32, crystals: 0.015, specificHeat: 1590, shaftPower: 3000 };
  it('crystals and duty undo each other', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.1, noNaN: true }), (crystals) => {
        expect(crystalsFromDuty(tempererDuty({ ...load, crystals }), load)).toBeCloseTo(crystals, 9);
      }),
    );
  });
  it('names coolant for the chiller, throughput for the pump, and neither for nothing', () => {
    const good = { ...load, coolantIn: 12 };
    const here = { throughput: 1600, coolantIn: 12, inlet: 45 };
    expect(tempererCause(good, { ...here, coolantIn: 16.4 }, 6000)).toMatchObject({ cause: 'coolant' });
    expect(tempererCause(good, { ...here, throughput: 1750 }, 6000)).toMatchObject({ cause: 'throughput' });
    expect(tempererCause(good, { ...here, inlet: 48 }, 6000)).toMatchObject({ cause: 'inlet temperature' });
    const same = tempererCause(good, here, 6000);
    expect(same.cause).toBe('none');
    expect(same.now).toBeCloseTo(0.015, 6);
  });
  it('warmer coolant leaves fewer crystals', () => {
    const good = { ...load, coolantIn: 12 };
    const crystals = [12, 14, 16].map((coolantIn) => tempererCause(good, { throughput: 1600, coolantIn, inlet: 45 }, 6000).now);
    expect(crystals[1]!).toBeLessThan(crystals[0]!);
    expect(crystals[2]!).toBeLessThan(crystals[1]!);
  });
  it('has no crystals without fat', () => expect(() => crystalsFromDuty(1e4, { ...load, fat: 0 })).toThrow(OutOfRange));
  it('refuses coolant warmer than chocolate', () => {
    expect(() => logMeanDifference(45, 27, 28, 30)).toThrow(NoSolution);
    expect(() => tempererDuty({ ...load, throughput: -1 })).toThrow(OutOfRange);
  });
});

describe('minutesToLimit', () => {
  it('is exact on a line, with an interval of no width', () => {
    const r = minutesToLimit([0, 10, 20, 30], [1, 2, 3, 4], 6, 'above');
    expect(r.minutes).toBeCloseTo(20, 9);
    expect(r.earliest).toBeCloseTo(20, 6);
    expect(r.latest).toBeCloseTo(20, 6);
    expect(r.trend).toBe(true);
  });
  it('gives no minutes for a line that runs away, and says when the limit is passed', () => {
    expect(minutesToLimit([0, 1, 2], [3, 2, 1], 5, 'above').minutes).toBeUndefined();
    expect(minutesToLimit([0, 1, 2], [3, 4, 6], 5, 'above').passed).toBe(true);
    expect(minutesToLimit([0, 1, 2], [6, 5, 4], 1, 'below').minutes).toBeCloseTo(3, 9);
  });
  it('leaves the later end open where the trend may be flat', () => {
    const r = minutesToLimit([0, 1, 2, 3, 4, 5], [0, 0.4, -0.3, 0.5, -0.2, 0.3], 3, 'above');
    expect(r.trend).toBe(false);
    expect(r.latest).toBeUndefined();
  });
  it('holds the true crossing in about 95 of 100 noisy lines', () => {
    let seed = 99;
    const uniform = () => ((seed = (seed * 1103515245 + 12345) % 2147483648) + 0.5) / 2147483648;
    const noise = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    const t = Array.from({ length: 12 }, (_, i) => 5 * i);
    let held = 0;
    for (let n = 0; n < 400; n++) {
      const r = minutesToLimit(
        t,
        t.map((x) => 0.01 * x + 0.05 * noise()),
        1,
        'above',
      ); // true crossing 45 min after the last
      if ((r.earliest ?? Infinity) <= 45 && 45 <= (r.latest ?? Infinity)) held++;
    }
    expect(held).toBeGreaterThan(366);
    expect(held).toBeLessThan(398);
  });
  it.each([
    ['two readings', [0, 1], [1, 2]],
    ['one time', [1, 1, 1], [1, 2, 3]],
    ['a missing value', [0, 1, 2], [1, NaN, 3]],
  ])('refuses %s', (_, t, v) => expect(() => minutesToLimit(t, v, 5, 'above')).toThrow(BadInput));
});
