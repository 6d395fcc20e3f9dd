import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BadInput, OutOfRange } from '../../src/errors.js';
import { runModel } from '../../src/model.js';
import { chanceLotExceeds, planAcceptance, resultBelow, testVariance } from '../../src/safety/peanut/aflatoxin.js';
import { aflatoxinPosterior, kernelQuality } from '../../src/safety/peanut/models.js';
import { aflatoxinSortedOut, concentrationAfter } from '../../src/safety/peanut/sorting.js';
import { attributePlan, operatingCharacteristic, presenceAbsence } from '../../src/safety/sampling/models.js';
import { codeLetter, singlePlan } from '../../src/safety/sampling/attribute-plan.js';
import { acceptance, qualityAt } from '../../src/safety/sampling/operating-characteristic.js';

const test = { sampleMass: 20_000, portionMass: 100, analyses: 1, limit: 15, samples: 1 };

describe('aflatoxin plan', () => {
  it('accepts less as the lot gets worse, and parts of the variance go down with effort', () => {
    let last = 1;
    for (const c of [0, 1, 2, 5, 10, 20, 50, 100, 500]) {
      const accept = planAcceptance('shelled peanut', c, test);
      expect(accept).toBeLessThanOrEqual(last + 1e-12);
      last = accept;
    }
    const v = testVariance('shelled peanut', 20, test);
    expect(testVariance('shelled peanut', 20, { ...test, sampleMass: 40_000 }).sampling).toBeCloseTo(v.sampling / 2, 10);
    expect(testVariance('shelled peanut', 20, { ...test, portionMass: 200 }).preparation).toBeCloseTo(v.preparation / 2, 10);
    expect(testVariance('shelled peanut', 20, { ...test, analyses: 2 }).analysis).toBeCloseTo(v.analysis / 2, 10);
    const old = testVariance('shelled peanut', 20, { ...test, sampleMass: 5443, portionMass: 280 });
    expect(old.sampling / old.total).toBeGreaterThan(0.8);
  });
  it('a larger sample separates good from bad lots better', () => {
    const at = (kg: number, c: number) => planAcceptance('shelled peanut', c, { ...test, sampleMass: kg * 1000 });
    expect(at(20, 5)).toBeGreaterThan(at(1, 5));
    expect(at(20, 60)).toBeLessThan(at(1, 60));
  });
  it('two samples protect the eater and cost the seller, as published', () => {
    const one = { ...test, sampleMass: 21_800, portionMass: 1100, limit: 15 };
    expect(planAcceptance('shelled peanut', 40, { ...one, samples: 2 })).toBeLessThan(0.01);
    expect(planAcceptance('shelled peanut', 12, { ...one, samples: 2 })).toBeLessThan(planAcceptance('shelled peanut', 12, one));
  });
  it('a clean lot always passes; without variance the limit cuts', () => {
    expect(resultBelow(0, 0, 15)).toBe(1);
    expect([resultBelow(14, 0, 15), resultBelow(16, 0, 15)]).toEqual([1, 0]);
    expect(() => testVariance('almond', -1, test)).toThrow(OutOfRange);
    expect(() => testVariance('almond', NaN, test)).toThrow(OutOfRange);
  });
  it('a higher result makes an unlawful lot likelier; a bigger sample is believed more', () => {
    const p = (result: number, kg = 20) => chanceLotExceeds('shelled peanut', result, { ...test, sampleMass: kg * 1000 }, 4, 1, 1.5);
    expect(p(0)).toBeLessThan(p(3));
    expect(p(3)).toBeLessThan(p(10));
    expect(p(0, 50)).toBeLessThan(p(0, 2));
    fc.assert(
      fc.property(fc.double({ min: 0, max: 300, noNaN: true }), (result) => p(result) >= 0 && p(result) <= 1),
      { numRuns: 20 },
    );
    expect(runModel(aflatoxinPosterior, { test_result_ug_kg: 1.1 }).outputs.probability_above_limit!.value).toBeLessThan(0.3);
  });
});

describe('sorting and quality', () => {
  it('removing nothing changes nothing, and sorting never raises the concentration in the tested range', () => {
    expect(aflatoxinSortedOut(0)).toBe(0);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.1, noNaN: true }), (r) => concentrationAfter(10, aflatoxinSortedOut(r), r) <= 10 + 1e-12),
    );
    expect(() => aflatoxinSortedOut(1.1)).toThrow(OutOfRange);
  });
  it('says what a kernel lot breaks', () => {
    const verdict = (x: object) =>
      runModel(kernelQuality, { moisture: 0.06, peroxide_meq_kg: 0.8, free_fatty_acids: 0.003, ...x }).outputs.verdict!.value;
    expect(verdict({})).toBe('within');
    expect(verdict({ peroxide_meq_kg: 1.4, state: 'roasted', moisture: 0.015 })).toBe('Peroxide value 1.4 meq/kg is above 1');
    expect(verdict({ moisture: 0.095 })).toMatch(/outgoing limit of 9 %/);
  });
});

describe('acceptance sampling', () => {
  it('the three laws agree for a small sample of a large lot', () => {
    const plan = { n: 50, c: 1 };
    const binomial = acceptance(plan, 0.02);
    expect(acceptance(plan, 0.02, 'hypergeometric', 1e6)).toBeCloseTo(binomial, 4);
    expect(acceptance(plan, 0.02, 'poisson')).toBeCloseTo(binomial, 1);
    expect(acceptance(plan, qualityAt(plan, 0.1))).toBeCloseTo(0.1, 9);
  });
  it('reads the printed rows of the table', () => {
    // Table II-A rows, J across: 0.15 % 80/0 … 10 % 80/14.
    const row = (letter: string, aql: number) => {
      const p = singlePlan(letter, aql);
      return `${p.n}/${p.accept}`;
    };
    expect([0.15, 0.25, 0.4, 0.65, 1, 1.5, 2.5, 4, 6.5, 10].map((aql) => row('J', aql))).toEqual([
      '80/0',
      '50/0',
      '125/1',
      '80/1',
      '80/2',
      '80/3',
      '80/5',
      '80/7',
      '80/10',
      '80/14',
    ]);
    expect(row('R', 1)).toBe('1250/21');
    expect(codeLetter(281)).toBe('H');
    expect(codeLetter(280)).toBe('G');
    expect(() => singlePlan('J', 1.1)).toThrow(BadInput);
    expect(() => singlePlan('I', 1)).toThrow('one of A, B, C');
  });
  it('tells when the sample is the lot, and what negative portions exclude', () => {
    expect(runModel(attributePlan, { lot_size: 5, aql_percent: 0.25 }).findings[0]!.code).toBe('INSPECT_ALL');
    expect(runModel(presenceAbsence, { organisms_per_kg: 10 }).outputs.acceptance_probability!.value).toBeCloseTo(Math.exp(-2.5), 12);
    expect(() =>
      runModel(operatingCharacteristic, {
        sample_size: 50,
        acceptance_number: 0,
        fraction_defective: 0.1,
        law: 'hypergeometric',
        lot_size: 20,
      }),
    ).toThrow(OutOfRange);
  });
});
