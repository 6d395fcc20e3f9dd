import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BadInput, OutOfRange } from '../../src/errors.js';
import { cassonRate, cassonStress, stressOf, type FlowLaw } from '../../src/cocoa/flow-laws.js';
import { fitBingham, fitCasson, flowPoints } from '../../src/cocoa/flow-fit.js';
import { fitHerschelBulkley, fitWindhab } from '../../src/cocoa/flow-fit-nonlinear.js';
import { flowReport, stressAt } from '../../src/cocoa/flow-report.js';
import { flowShift, packingFactor, type FlowRecipe } from '../../src/cocoa/flow-shift.js';
import { cheapestCorrection, pgprLimit, withAdditions } from '../../src/cocoa/flow-correction.js';
import { cassonPipeDrop, cassonPipeFlow } from '../../src/cocoa/pipe.js';

const rates = [2, 5, 10, 15, 20, 30, 40, 50];
const table = (law: FlowLaw) =>
  flowPoints(
    rates,
    rates.map((g) => stressOf(law, g)),
    2,
  );
const tau = fc.double({ min: 0.5, max: 60, noNaN: true });
const eta = fc.double({ min: 0.2, max: 15, noNaN: true });

describe('fits', () => {
  it('give back the parameters of any exact Casson curve', () => {
    fc.assert(
      fc.property(tau, eta, (yieldValue, plasticViscosity) => {
        const fit = fitCasson(table({ law: 'casson', yieldValue, plasticViscosity }));
        expect(fit.parameters['yield_value_pa']!.value / yieldValue).toBeCloseTo(1, 6);
        expect(fit.parameters['plastic_viscosity_pa_s']!.value / plasticViscosity).toBeCloseTo(1, 6);
        expect(fit.r2).toBeGreaterThan(0.999999);
      }),
    );
  });
  it('give back the parameters of any exact Bingham curve', () => {
    fc.assert(
      fc.property(tau, eta, (yieldValue, plasticViscosity) => {
        const fit = fitBingham(table({ law: 'bingham', yieldValue, plasticViscosity }));
        expect(fit.parameters['yield_value_pa']!.value / yieldValue).toBeCloseTo(1, 6);
      }),
    );
  });
  it('Herschel-Bulkley and Windhab reproduce the stresses of their own curves', () => {
    fc.assert(
      fc.property(tau, eta, fc.double({ min: 0.5, max: 1, noNaN: true }), (yieldValue, consistency, index) => {
        const points = table({ law: 'herschel-bulkley', yieldValue, consistency, index });
        const fit = fitHerschelBulkley(points);
        for (const p of points) expect(stressOf(fit.law, p.rate) / p.stress).toBeCloseTo(1, 3);
      }),
      { numRuns: 40 },
    );
    fc.assert(
      fc.property(tau, fc.double({ min: 1, max: 30, noNaN: true }), fc.double({ min: 3, max: 12, noNaN: true }), eta, (y, more, g, e) => {
        const points = table({ law: 'windhab', yieldValue: y, structuredYield: y + more, breakdownRate: g, endViscosity: e });
        const fit = fitWindhab(points);
        for (const p of points) expect(stressOf(fit.law, p.rate) / p.stress).toBeCloseTo(1, 2);
      }),
      { numRuns: 40 },
    );
  });
  it('have limits that hold the truth for about 95 of 100 noisy Casson curves', () => {
    let seed = 12345;
    const uniform = () => ((seed = (seed * 1103515245 + 12345) % 2147483648) + 0.5) / 2147483648;
    const noise = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    let held = 0;
    for (let n = 0; n < 400; n++) {
      const points = rates.map((rate) => ({ rate, stress: (Math.sqrt(cassonStress(9.5, 2.3, rate)) + 0.1 * noise()) ** 2 }));
      const { low, high } = fitCasson(points).parameters['yield_value_pa']!;
      if (low <= 9.5 && 9.5 <= high) held++;
    }
    expect(held).toBeGreaterThan(368);
    expect(held).toBeLessThan(396);
  });
  it.each([
    ['unlike lists', [5, 10, 20], [30, 40]],
    ['too few points', [5, 10], [30, 40]],
    ['a stress of 0', [5, 10, 20], [30, 0, 50]],
  ])('refuse %s', (_, g, s) => expect(() => fitCasson(flowPoints(g, s, 3))).toThrow(BadInput));
  it('refuse one rate measured three times', () => expect(() => fitCasson(flowPoints([5, 5, 5], [30, 31, 29], 3))).toThrow(/same/));
  it('answer a yield value of 0 where the curve bends the other way', () => {
    expect(fitBingham(flowPoints([1, 2, 3], [1, 3, 5.5], 3)).parameters['yield_value_pa']).toMatchObject({ value: 0 });
  });
});

describe('Casson law', () => {
  it('and its inverse undo each other above the yield value', () => {
    fc.assert(
      fc.property(tau, eta, fc.double({ min: 0.01, max: 200, noNaN: true }), (t, e, g) => {
        expect(cassonRate(t, e, cassonStress(t, e, g)) / g).toBeCloseTo(1, 6);
      }),
    );
    expect(cassonRate(10, 2, 9.99)).toBe(0);
  });
});

describe('flowReport', () => {
  const points = table({ law: 'casson', yieldValue: 9.3, plasticViscosity: 1.42 });
  it('reads measured points back and nothing beyond them', () => {
    expect(stressAt(points, 20)).toBe(points[4]!.stress);
    expect(stressAt(points, 7)).toBeCloseTo(cassonStress(9.3, 1.42, 7), 9);
    expect(() => stressAt(points, 51)).toThrow(OutOfRange);
    expect(() => stressAt(points, NaN)).toThrow(OutOfRange);
  });
  it('has no thixotropy for equal ramps, and the difference for unequal ones', () => {
    expect(flowReport(points, points)).toMatchObject({ thixotropyAt5: 0, thixotropyAt40: 0 });
    const down = points.map((p) => ({ rate: p.rate, stress: p.stress - 4 }));
    expect(flowReport(points, down).thixotropyAt5).toBeCloseTo(4, 9);
    expect(flowReport(points, down).thixotropyAt40).toBeCloseTo(0.1, 9);
  });
});

const recipe: FlowRecipe = { fat: 0.31, lecithin: 0.003, pgpr: 0.001, moisture: 0.009, d90: 25 };
const small = fc.double({ min: 1e-5, max: 0.004, noNaN: true });

describe('flowShift', () => {
  it('is 1 for no change, and the reverse change undoes it', () => {
    expect(flowShift(recipe, recipe)).toEqual({ plastic: { value: 1, low: 1, high: 1 }, yieldValue: { value: 1, low: 1, high: 1 } });
    fc.assert(
      fc.property(small, small, (fat, pgpr) => {
        const to = { ...recipe, fat: recipe.fat + fat, pgpr: recipe.pgpr + pgpr };
        expect(flowShift(recipe, to).yieldValue.value * flowShift(to, recipe).yieldValue.value).toBeCloseTo(1, 9);
      }),
    );
  });
  it('fat and E476 never raise the yield value, nor does fat the viscosity, over the whole range left open', () => {
    fc.assert(
      fc.property(small, (more) => {
        for (const to of [
          { ...recipe, fat: recipe.fat + more },
          { ...recipe, pgpr: recipe.pgpr + more },
        ]) {
          const shift = flowShift(recipe, to);
          expect(shift.yieldValue.value).toBeLessThan(1);
          expect(shift.yieldValue.high).toBeLessThanOrEqual(1.0001);
        }
        expect(flowShift(recipe, { ...recipe, fat: recipe.fat + more }).plastic.value).toBeLessThan(1);
      }),
    );
  });
  it('water and finer grinding raise both', () => {
    for (const to of [
      { ...recipe, moisture: 0.014 },
      { ...recipe, d90: 18 },
    ]) {
      const shift = flowShift(recipe, to);
      expect(shift.yieldValue.value).toBeGreaterThan(1);
      expect(shift.plastic.value).toBeGreaterThan(1);
    }
  });
  it('ranks fat over fineness over lecithin in the viscosity, as measured (Afoakwa 2008, abstract)', () => {
    const from = { ...recipe, fat: 0.25, lecithin: 0.003, d90: 18, moisture: 0.005 };
    const effect = (to: Partial<FlowRecipe>) => -Math.log(flowShift(from, { ...from, ...to }).plastic.value);
    const [fat, size, lecithin] = [effect({ fat: 0.35 }), effect({ d90: 50 }), effect({ lecithin: 0.005 })];
    expect(fat).toBeGreaterThan(size);
    expect(fat).toBeGreaterThan(lecithin);
  });
  it("takes the plant's ladder in place of a trade value and closes the range it leaves", () => {
    const to = { ...recipe, pgpr: 0.002 };
    const open = flowShift(recipe, to).yieldValue;
    const closed = flowShift(recipe, to, { pgprFloor: 0, pgprScale: 0.001 / Math.LN2 }).yieldValue;
    expect(closed.value / flowShift(recipe, { ...recipe, pgpr: 0.001 }).yieldValue.value).toBeCloseTo(0.5, 2);
    expect(closed.high - closed.low).toBeLessThan(open.high - open.low);
  });
  it('refuses a chocolate whose particles would not fit', () => expect(() => packingFactor(0.2, 0.6)).toThrow(OutOfRange));
});

describe('cheapestCorrection', () => {
  const task = {
    recipe: { fat: 0.337, lecithin: 0.0045, pgpr: 0.001, moisture: 0.007, d90: 24 },
    yieldValue: 12,
    plasticViscosity: 2.3,
    targetYield: 9,
    targetPlastic: 2.3,
    yieldTolerance: 0.05,
    plasticTolerance: 0.1,
    price: { cocoaButter: 13, lecithin: 2.5, pgpr: 5, chocolate: 4.9 },
    most: { cocoaButter: 0.03, lecithin: 0.005, pgpr: 0.005 },
  };
  it('takes E476 for the yield value alone and meets the target', () => {
    const c = cheapestCorrection(task);
    expect(c.meets).toBe(true);
    expect(c.pgpr).toBeGreaterThan(0);
    expect(c.cocoaButter).toBe(0);
    expect(Math.abs(Math.log(c.yieldValue / 9))).toBeLessThan(Math.log(1.0501));
  });
  it('does nothing where nothing is needed', () => {
    expect(cheapestCorrection({ ...task, targetYield: 12 })).toMatchObject({ cocoaButter: 0, lecithin: 0, pgpr: 0, cost: 0, meets: true });
  });
  it('takes butter where E476 is at its legal limit', () => {
    const c = cheapestCorrection({
      ...task,
      recipe: { ...task.recipe, pgpr: pgprLimit, lecithin: 0.005 },
      targetYield: 11,
      targetPlastic: 1.9,
    });
    expect(c.pgpr).toBe(0);
    expect(c.cocoaButter).toBeGreaterThan(0);
  });
  it('says when a target cannot be met: a thin chocolate gets nothing', () => {
    const c = cheapestCorrection({ ...task, targetYield: 30 });
    expect(c.meets).toBe(false);
    expect(c.cocoaButter + c.pgpr).toBe(0);
  });
  it('never passes the limits', () => {
    const c = cheapestCorrection({ ...task, targetYield: 2 });
    const after = withAdditions(task.recipe, c.cocoaButter, c.lecithin, c.pgpr);
    expect(after.pgpr).toBeLessThanOrEqual(pgprLimit + 1e-9);
    expect(after.lecithin).toBeLessThanOrEqual(0.005 + 1e-9);
  });
});

describe('Casson pipe flow', () => {
  it('is Poiseuille without a yield value, and nothing below the starting drop', () => {
    expect(cassonPipeFlow(0, 2, 0.05, 10, 1e5)).toBeCloseTo((Math.PI * 0.025 ** 4 * 1e5) / (8 * 2 * 10), 12);
    expect(cassonPipeFlow(10, 2, 0.05, 10, (4 * 10 * 10) / 0.05 - 1)).toBe(0);
  });
  it('drop and flow undo each other', () => {
    const drop = cassonPipeDrop(10, 2, 0.05, 10, 0.3);
    expect(cassonPipeFlow(10, 2, 0.05, 10, drop) / ((0.3 * Math.PI * 0.05 ** 2) / 4)).toBeCloseTo(1, 8);
  });
  it('equals the flow law integrated over the pipe', () => {
    const [t0, e, d, l, p] = [10, 2, 0.05, 10, 6e4];
    const n = 4000;
    let sum = 0; // Q = π/τw³ · R³ ∫ τ² γ(τ) dτ
    const wall = (p * d) / (4 * l);
    for (let i = 0; i < n; i++) {
      const s = ((i + 0.5) / n) * wall;
      sum += (s * s * cassonRate(t0, e, s) * wall) / n;
    }
    expect(cassonPipeFlow(t0, e, d, l, p) / ((Math.PI * (d / 2) ** 3 * sum) / wall ** 3)).toBeCloseTo(1, 4);
  });
});
