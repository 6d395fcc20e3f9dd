import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BadInput, NoSolution, OutOfRange } from '../../src/errors.js';
import { runModel } from '../../src/model.js';
import { cautions, cautionsOn } from '../../src/safety/caution/cautions.js';
import { burnTime, dustClass, flush, kst, layerOfCloud } from '../../src/safety/caution/hazards.js';
import { fire } from '../../src/safety/caution/models.js';
import { dStudies } from '../../src/safety/data/d-values.js';
import { declinePerDay, dFromZ, milkChocolateDValue, studyD, zValue } from '../../src/safety/lethality/d-value.js';
import { equivalentMinutes, logReduction, tableRate } from '../../src/safety/lethality/integrate.js';
import { dValue, roastLethality, weibull } from '../../src/safety/lethality/models.js';
import { cereusOnNibs, weibullAlong, weibullReduction, weibullShape, weibullTime } from '../../src/safety/lethality/weibull.js';

const { temperature, d } = dStudies['salmonella cocoa bean'].values;
const rate = tableRate(temperature, d, 'no credit');

describe('lethality of a curve', () => {
  it('at one temperature is time over D, by every rule', () => {
    for (const rule of ['trapezoid', 'exact', 'rectangle'] as const) {
      expect(logReduction([0, 5, 10], [130, 130, 130], rate, rule)).toBeCloseTo(10 / 4.2, 12);
      expect(equivalentMinutes([0, 5, 10], [121.1, 121.1, 121.1], 121.1, 10, rule)).toBeCloseTo(10, 12);
    }
  });
  it('exact is the limit of many readings between two', () => {
    const n = 4000;
    const times = Array.from({ length: n + 1 }, (_, i) => (10 * i) / n);
    const fine = equivalentMinutes(
      times,
      times.map((t) => 100 + 2 * t),
      121.1,
      10,
    );
    expect(equivalentMinutes([0, 10], [100, 120], 121.1, 10, 'exact')).toBeCloseTo(fine, 6);
    expect(equivalentMinutes([0, 10], [100, 120], 121.1, 10, 'trapezoid')).toBeGreaterThan(fine);
  });
  it('adds over pieces and rises with temperature', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 60, max: 170, noNaN: true }), { minLength: 4, maxLength: 30 }), (temps) => {
        const minutes = temps.map((_, i) => i);
        const cut = temps.length >> 1;
        const whole = logReduction(minutes, temps, rate);
        const parts =
          logReduction(minutes.slice(0, cut + 1), temps.slice(0, cut + 1), rate) + logReduction(minutes.slice(cut), temps.slice(cut), rate);
        expect(parts).toBeCloseTo(whole, 9);
        expect(
          logReduction(
            minutes,
            temps.map((t) => t + 1),
            rate,
          ),
        ).toBeGreaterThanOrEqual(whole);
      }),
    );
  });
  it('gives nothing below the lowest temperature tested and no more than 5 log of credit', () => {
    expect(logReduction([0, 1000], [99.9, 99.9], rate)).toBe(0);
    const r = runModel(roastLethality, { time_min: [0, 60], temperature_c: [140, 140] }).outputs;
    expect(r.log_reduction!.value).toBeCloseTo(60 / 1.9, 9);
    expect(r.credited_log_reduction!.value).toBe(5);
  });
  it('refuses a clock that runs back, lists of two lengths, and what is no number', () => {
    expect(() => logReduction([0, 2, 1], [100, 100, 100], rate)).toThrow('must not run back');
    expect(() => logReduction([0, 1], [100], rate)).toThrow(BadInput);
    expect(() => logReduction([0, 1], [NaN, 100], rate)).toThrow(BadInput);
    expect(() => logReduction([], [], rate)).toThrow('0 reading');
    expect(() => equivalentMinutes([0, 1], [100, 100], 100, 0)).toThrow(NoSolution);
  });
});

describe('D and z', () => {
  it('z carries D ten times per z', () => {
    expect(dFromZ(5, 100, 12, 112)).toBeCloseTo(0.5, 12);
    expect(zValue([60, 70], [10, 1])).toBeCloseTo(10, 12);
    expect(zValue([50, 60], [245, 306])).toBe(Infinity);
  });
  it('a study of one temperature answers only there; one that does not fall not at all between', () => {
    expect(studyD('salmonella dark chocolate', 50).d).toBe(1574);
    expect(() => studyD('salmonella dark chocolate', 60)).toThrow('at 50 °C only');
    expect(() => studyD('salmonella cocoa butter', 55)).toThrow(NoSolution);
    expect(() => studyD('salmonella cocoa bean', NaN)).toThrow(OutOfRange);
  });
  it('beyond the temperatures tested it answers and says so', () => {
    const answer = runModel(dValue, { temperature_c: 160 });
    expect(answer.findings.map((f) => f.code)).toContain('OUTSIDE_FITTED_RANGE');
    expect(answer.outputs.tested!.value).toBe(false);
  });
  it('milk chocolate: drier and colder is slower, and the slowest work stands beside', () => {
    expect(milkChocolateDValue(70, 0.43).d).toBeLessThan(milkChocolateDValue(70, 0.23).d);
    expect(milkChocolateDValue(80, 0.23).d).toBeLessThan(milkChocolateDValue(70, 0.23).d);
    expect(milkChocolateDValue(71, 0.23).slowest).toBeCloseTo(1200, 9);
    expect(declinePerDay(20, 0.33)).toBeLessThan(0.001);
  });
});

describe('Weibull', () => {
  it('with a shape of 1 is log-linear, and its parts undo each other', () => {
    expect(weibullReduction(10, 4, 1)).toBe(2.5);
    expect(weibullReduction(weibullTime(5, 12, 0.6), 12, 0.6)).toBeCloseTo(5, 12);
    expect(weibullShape(12, 4, weibullTime(4, 12, 0.7))).toBeCloseTo(0.7, 12);
  });
  it('along one temperature is the closed curve; a tail gives less than log-linear beyond the first log', () => {
    const minutes = Array.from({ length: 41 }, (_, i) => i);
    expect(
      weibullAlong(
        minutes,
        minutes.map(() => 110),
        () => ({ delta: 8, p: 0.7 }),
      ),
    ).toBeCloseTo((40 / 8) ** 0.7, 9);
    expect(weibullReduction(40, 8, 0.7)).toBeLessThan(5);
    expect(runModel(weibull, { time_min: 40, delta_min: 8, shape: 0.7 }).outputs.time_of_logs_min!.value).toBeGreaterThan(40);
    expect(cereusOnNibs(120).delta).toBeGreaterThan(cereusOnNibs(130).delta);
  });
});

describe('hazards', () => {
  it('dust classes meet at their limits and the cubic law scales with the cube root', () => {
    expect([dustClass(0), dustClass(200), dustClass(201), dustClass(300), dustClass(301)]).toEqual([
      'St 0',
      'St 1',
      'St 2',
      'St 2',
      'St 3',
    ]);
    expect(kst(100, 8)).toBeCloseTo(200, 9);
    expect(layerOfCloud(0.06, 3, 500)).toBeCloseTo(0.00036, 9);
    expect(() => dustClass(NaN)).toThrow(OutOfRange);
  });
  it('burn time falls with temperature and is refused where it means nothing', () => {
    let last = Infinity;
    for (let t = 43; t < 75; t++) {
      expect(burnTime(t)).toBeLessThanOrEqual(last);
      last = burnTime(t);
    }
    expect(burnTime(118)).toBe(0);
    expect(() => burnTime(40)).toThrow(OutOfRange);
  });
  it('a flush reaches its target with its own mass, never nothing', () => {
    const { massToTarget } = flush(6070, 2.5, 0, 0.368);
    expect(flush(6070, 2.5, massToTarget, 0.368).after).toBeCloseTo(2.5, 9);
    expect(() => flush(6070, 0, 1, 0.368)).toThrow('never reaches 0');
    expect(runModel(fire, { exhaust_set_c: 180, exhaust_c: 196 }).outputs.alarm!.value).toBe(true);
  });
  it('each caution says whose word counts', () => {
    for (const c of cautions) expect(c.defersTo.length).toBeGreaterThan(10);
    expect(cautionsOn('dust').length).toBeGreaterThan(0);
  });
});
