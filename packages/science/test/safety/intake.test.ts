import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutOfRange } from '../../src/errors.js';
import { contaminantLimits } from '../../src/law/contaminants-index.js';
import { limitOn } from '../../src/law/contaminants-limit.js';
import { runModel } from '../../src/model.js';
import { beanProperties, blendMean, brokenMassLimits, ellipsoidSphericity, massLimits } from '../../src/safety/intake/bean-lot.js';
import { chanceAbove, gradeCutTest } from '../../src/safety/intake/cut-test.js';
import { contaminantLimit } from '../../src/safety/intake/contaminants.js';
import { liquorYield, lotValue, nibStream } from '../../src/safety/intake/nib-yield.js';
import { airCleaning, blend } from '../../src/safety/intake/models.js';
import { dragCoefficient, equalSettlingRatio, liftedShare, terminalVelocity } from '../../src/safety/intake/settling.js';
import { sources } from '../../src/sources.js';

const route = {
  cleaning: 0.988,
  rawMoisture: 0.069,
  roastedMoisture: 0.018,
  organicLoss: 0.005,
  shell: 0.128,
  nibRecovery: 0.994,
  grinding: 0.997,
};

describe('cut test', () => {
  it('a lot truly at 3 % shows more than 9 mouldy of 300 in two of five samples', () =>
    expect(chanceAbove(0.03, 0.03)).toBeCloseTo(0.41, 2));
  it('each class decides by its own limit, and the worst decides', () => {
    expect(gradeCutTest({ beans: 300, mouldy: 9, slaty: 9, defective: 9 }).grade).toBe('1');
    expect(gradeCutTest({ beans: 300, mouldy: 10, slaty: 0, defective: 0 }).grade).toBe('2');
    expect(gradeCutTest({ beans: 300, mouldy: 13, slaty: 0, defective: 0 }).grade).toBe('substandard');
  });
  it('says when another sample could grade differently', () => {
    expect(gradeCutTest({ beans: 300, mouldy: 9, slaty: 0, defective: 0 }).doubtful).toBe(true);
    expect(gradeCutTest({ beans: 3000, mouldy: 10, slaty: 10, defective: 10 }).doubtful).toBe(false);
  });
  it('refuses counts that cannot be', () => {
    expect(() => gradeCutTest({ beans: 300, mouldy: 200, slaty: 90, defective: 20 })).toThrow('310 faulty beans among 300');
    expect(() => gradeCutTest({ beans: 300, mouldy: 1.5, slaty: 0, defective: 0 })).toThrow('whole number');
    expect(() => gradeCutTest({ beans: 300, mouldy: NaN, slaty: 0, defective: 0 })).toThrow('whole number');
  });
});

describe('bean lot', () => {
  it('names the limits broken by edition and place', () => {
    const test = { moisture: 0.078, relatedMatter: 0.04, flatBeans: 0.01, sieving: NaN };
    expect(brokenMassLimits(test, massLimits('2016', 'discharge'))).toEqual(['moisture', 'relatedMatter']);
    expect(brokenMassLimits(test, massLimits('2016', 'loading'))).toEqual(['relatedMatter']);
    expect(brokenMassLimits(test, massLimits('2014', 'loading'))).toEqual(['moisture']);
  });
  it('a sphere has a sphericity of 1, anything else less', () => {
    expect(ellipsoidSphericity(3, 3, 3)).toBeCloseTo(1, 12);
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 9, noNaN: true }),
        fc.double({ min: 1, max: 9, noNaN: true }),
        (a, b) => ellipsoidSphericity(a, b, 2) <= 1 + 1e-9,
      ),
    );
    expect(beanProperties(0.07).surfaceSphericity).toBeGreaterThan(beanProperties(0.07).sphericity);
  });
  it('a blend lies between its parts and keeps the mass', () => {
    expect(blendMean([1, 3], [0.2, 0.6])).toBeCloseTo(0.5, 12);
    expect(() => blendMean([0, 0], [1, 2])).toThrow('above 0');
    expect(runModel(blend, { mass_kg: [1, 1], value: [0, 1] }).findings[0]!.code).toBe('NO_DILUTION');
  });
});

describe('usable nib', () => {
  it('follows the chain of shares (an invented plant’s figures, arithmetic only)', () => {
    expect(liquorYield(route)).toBeCloseTo(0.8054, 4);
    expect(liquorYield({ ...route, shell: 0.145 })).toBeCloseTo(0.7897, 4);
  });
  it('values a lot so that liquor costs the same', () => {
    const value = lotValue(0.7897, 0.8054, 6.5, 1567);
    expect(value.discount).toBeCloseTo(0.0195, 4);
    expect(value.extraBeans).toBeCloseTo(38.7, 1);
    expect(value.fairPrice / 0.7897).toBeCloseTo(6.5 / 0.8054, 10);
    expect(value.extraCost).toBeCloseTo(value.extraBeans * 6.5, 10);
  });
  it('is never above what came in and falls with moisture and shell', () => {
    const share = fc.double({ min: 0, max: 0.9, noNaN: true });
    fc.assert(
      fc.property(share, share, (moisture, shell) => {
        const y = liquorYield({ ...route, rawMoisture: moisture, roastedMoisture: 0, shell });
        expect(y).toBeGreaterThanOrEqual(0);
        expect(y).toBeLessThanOrEqual(1);
        expect(liquorYield({ ...route, rawMoisture: moisture + 0.01, roastedMoisture: 0, shell })).toBeLessThanOrEqual(y);
      }),
    );
    expect(() => liquorYield({ ...route, shell: 1.2 })).toThrow(OutOfRange);
    expect(() => liquorYield({ ...route, shell: NaN })).toThrow(OutOfRange);
  });
  it('the nib stream carries the dry nib, its water and its shell', () => {
    const stream = nibStream(1000, 0.07, 0.025, 0.125, 0.01, 0.015);
    expect(stream * (1 - 0.015) * (1 - 0.025)).toBeCloseTo(930 * 0.875 * 0.99, 9);
  });
});

describe('settling', () => {
  it('follows Stokes for small and Newton for large spheres', () => {
    expect(terminalVelocity(1e-5, 1500) / ((9.80665 * 1e-10 * 1498.8) / (18 * 1.82e-5))).toBeCloseTo(1, 1);
    expect(dragCoefficient(1e4)).toBeGreaterThan(0.38);
    expect(dragCoefficient(1e4)).toBeLessThan(0.48);
  });
  it('rises with size and density, and points up for what floats', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-5, max: 0.02, noNaN: true }), fc.double({ min: 50, max: 3000, noNaN: true }), (d, rho) => {
        expect(terminalVelocity(d * 1.1, rho)).toBeGreaterThan(terminalVelocity(d, rho));
        expect(terminalVelocity(d, rho * 1.1)).toBeGreaterThan(terminalVelocity(d, rho));
        expect(terminalVelocity(d, rho, undefined, 0.7)).toBeLessThan(terminalVelocity(d, rho));
      }),
      { numRuns: 50 },
    );
    expect(terminalVelocity(0.001, 900, { density: 1000, viscosity: 0.001 })).toBeLessThan(0);
    expect(() => terminalVelocity(NaN, 900)).toThrow(OutOfRange);
  });
  it('shell of cocoa is lifted where nib is not', () => {
    const shell = terminalVelocity(0.004, 400, undefined, 0.35);
    const nib = terminalVelocity(0.006, 1000, undefined, 0.85);
    expect(shell).toBeLessThan(4);
    expect(nib).toBeGreaterThan(2 * shell);
    expect(liftedShare(nib, nib, 0.2)).toBe(0.5);
    expect(equalSettlingRatio(2500, 950)).toBeCloseTo(2.63, 2);
    const r = runModel(airCleaning, { air_velocity_m_s: 6 }).outputs;
    expect(r.light_removed!.value).toBeGreaterThan(0.99);
    expect(r.heavy_lost!.value).toBeLessThan(0.01);
  });
});

describe('contaminant limits', () => {
  it('are dated: the PAH limit of 2014 is not that of today', () => {
    const pah = (day: string) => limitOn(contaminantLimits, 'EU', 'pah4', 'cocoa beans and derived products', day)?.limit;
    expect([pah('2012-01-01'), pah('2014-01-01'), pah('2015-03-31'), pah('2015-04-01')]).toEqual([undefined, 35, 35, 30]);
  });
  it('no two limits of one kind overlap, dates are dates, sources exist', () => {
    for (const a of contaminantLimits) {
      expect(a.from).toMatch(/^\d{4}-\d{2}-\d{2}$/);
      expect(sources).toHaveProperty([a.source]);
      const same = contaminantLimits.filter((b) => b.market === a.market && b.contaminant === a.contaminant && b.product === a.product);
      for (const b of same)
        if (b !== a) expect(a.until !== undefined && a.until < b.from ? true : b.until !== undefined && b.until < a.from).toBe(true);
    }
  });
  it('an unrecorded limit is empty, not zero, and is told', () => {
    const answer = runModel(contaminantLimit, { market: 'Japan', contaminant: 'cadmium', product: 'cocoa powder', measured: 0.1 });
    expect(answer.outputs.limit!.value).toBeNull();
    expect(answer.outputs.verdict!.value).toBe('no limit recorded');
    expect(() => runModel(contaminantLimit, { contaminant: 'cadmium', product: 'cocoa powder', day: 'soon' })).toThrow('a date like');
  });
});
