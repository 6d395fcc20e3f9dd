import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildChain, calibrate, evaluate, type Calibrated, type CalibrateParameter, type Datum } from '../src/index.js';
import { randomBits } from '../src/sampling/random.js';
import { root, step } from './small-chains.js';

/** y = f(x, parameters). */
function model(names: readonly string[], f: (...x: number[]) => number) {
  const inputs = ['x', ...names];
  const chain = buildChain(
    inputs.map((id) => root(id, 0.5)),
    [step('y', inputs, f as never)],
  );
  return (parameters: readonly CalibrateParameter[], points: readonly (readonly [number, number])[]) =>
    calibrate(chain, evaluate(chain), { parameters, data: points.map(([x, y]) => ({ inputs: { x }, observed: { y } })) });
}

// NIST Statistical Reference Datasets, nonlinear regression, Misra1a (lower level of difficulty): D. Misra, NIST (1978), dental
// research; certified values, second hand from copies of the file.
const misra: readonly (readonly [number, number])[] = [
  [77.6, 10.07],
  [114.9, 14.73],
  [141.1, 17.94],
  [190.8, 23.93],
  [239.9, 29.61],
  [289, 35.18],
  [332.8, 40.02],
  [378.4, 44.82],
  [434.8, 50.76],
  [477.3, 55.05],
  [536.8, 61.01],
  [593.1, 66.4],
  [689.1, 75.47],
  [760, 81.78],
];

describe('calibrate', () => {
  const fitMisra = model(['b1', 'b2'], (x, b1, b2) => b1! * (1 - Math.exp(-b2! * x!)));
  it.each([
    [500, 1e-4],
    [250, 5e-4],
  ])('gives the certified estimates, errors and scatter of Misra1a from %d and %d', (b1, b2) => {
    const result = fitMisra([{ id: 'b1', start: b1, low: 10, high: 1000 }, { id: 'b2', start: b2, low: 1e-5, high: 1e-2 }], misra) as Calibrated; // prettier-ignore
    const [one, two] = result.parameters;
    expect(one!.estimate / 2.3894212918e2).toBeCloseTo(1, 7);
    expect(two!.estimate / 5.5015643181e-4).toBeCloseTo(1, 7);
    expect(one!.standardError / 2.7070075241).toBeCloseTo(1, 5);
    expect(two!.standardError / 7.2668688436e-6).toBeCloseTo(1, 5);
    expect(result.residualSd['y']! / 1.018787633e-1).toBeCloseTo(1, 7);
    expect(result.freedom).toBe(12);
    expect((one!.high - one!.estimate) / one!.standardError).toBeCloseTo(2.1788, 3); // Student's t, 12 degrees of freedom
  });

  it('is ordinary regression for a straight line', () => {
    const points = [1, 2, 3, 4, 5, 6].map((x, i) => [x, 2 + 3 * x + [0.1, -0.2, 0.05, 0.15, -0.1, 0.02][i]!] as const);
    const line = model(['a', 'b'], (x, a, b) => a! + b! * x!);
    const result = line([{ id: 'a', low: -10, high: 10 }, { id: 'b', low: -10, high: 10 }], points) as Calibrated; // prettier-ignore
    const n = points.length;
    const [mx, my] = [0, 1].map((k) => points.reduce((sum, point) => sum + point[k]!, 0) / n) as [number, number];
    const sxx = points.reduce((sum, [x]) => sum + (x - mx) ** 2, 0);
    const slope = points.reduce((sum, [x, y]) => sum + (x - mx) * (y - my), 0) / sxx;
    const s2 = points.reduce((sum, [x, y]) => sum + (y - my - slope * (x - mx)) ** 2, 0) / (n - 2);
    const [a, b] = result.parameters;
    expect(b!.estimate).toBeCloseTo(slope, 8);
    expect(a!.estimate).toBeCloseTo(my - slope * mx, 8);
    expect(b!.standardError).toBeCloseTo(Math.sqrt(s2 / sxx), 7);
    expect(a!.standardError).toBeCloseTo(Math.sqrt(s2 * (1 / n + mx ** 2 / sxx)), 7);
    expect(result.correlation[0]![1]).toBeCloseTo(-mx / Math.sqrt(sxx / n + mx ** 2), 6);
    expect(result.residuals[1]).toMatchObject({
      datum: 1,
      id: 'y',
      observed: 7.8,
      residual: expect.closeTo(7.8 - (my + slope * (2 - mx)), 8),
    });
  });

  it('finds again what made the readings', () => {
    const curve = (x: number, a: number, b: number) => a * Math.exp(b * x);
    const fitCurve = model(['a', 'b'], curve as never);
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 5, noNaN: true }), fc.double({ min: -1, max: 1, noNaN: true }), (a, b) => {
        const points = [0, 0.5, 1, 1.5, 2].map((x) => [x, curve(x, a, b)] as const);
        const result = fitCurve([{ id: 'a', start: 1, low: 0.1, high: 10 }, { id: 'b', start: 0.1, low: -2, high: 2 }], points); // prettier-ignore
        expect(result).toMatchObject({ found: true, parameters: [{ estimate: expect.closeTo(a, 6) }, { estimate: expect.closeTo(b, 6) }] });
      }),
      { numRuns: 50 },
    );
  });

  it('has confidence limits that hold the truth about 95 times in 100', () => {
    const line = model(['a', 'b'], (x, a, b) => a! + b! * x!);
    const bits = randomBits(3);
    const normal = () => Array.from({ length: 12 }, () => bits() / 2 ** 32).reduce((sum, u) => sum + u, -6);
    let inside = 0;
    for (let trial = 0; trial < 300; trial++) {
      const points = [1, 2, 3, 4, 5].map((x) => [x, 1 + 2 * x + 0.1 * normal()] as const);
      const { parameters } = line([{ id: 'a', low: -10, high: 10 }, { id: 'b', low: -10, high: 10 }], points) as Calibrated; // prettier-ignore
      if (parameters[1]!.low <= 2 && 2 <= parameters[1]!.high) inside++;
    }
    expect(inside).toBeGreaterThan(270);
    expect(inside).toBeLessThan(298);
  });

  it('weighs quantities of different size by their own scatter', () => {
    const chain = buildChain(
      [root('x', 0), root('k', 1, { window: { low: 0, high: 10 } })],
      [step('small big', ['x', 'k'], ((x: number, k: number) => [1e-3 * k * x, 1e3 * k * x]) as never)],
    );
    const noise = [1, -1, 0.5, -0.5, 0.2];
    const data = [1, 2, 3, 4, 5].map((x, i): Datum => ({
      inputs: { x },
      observed: { small: 2e-3 * x, big: 2e3 * x * (1 + 0.2 * noise[i]!) },
    }));
    const result = calibrate(chain, evaluate(chain), { parameters: [{ id: 'k' }], data }) as Calibrated;
    expect(result.parameters[0]!.estimate).toBeCloseTo(2, 3); // the exact readings outweigh the scattered ones
    expect(result.residualSd['small']!).toBeLessThan(1e-5);
    const stated = data.map((datum) => ({ ...datum, sd: { small: 1, big: 1 } }));
    const heavy = calibrate(chain, evaluate(chain), { parameters: [{ id: 'k' }], data: stated }) as Calibrated;
    expect(Math.abs(heavy.parameters[0]!.estimate - 2)).toBeGreaterThan(0.01);
  });

  it('says when the readings ask for more than the limits allow', () => {
    const line = model(['b'], (x, b) => b! * x!);
    const points = [1, 2, 3].map((x) => [x, 3 * x] as const);
    expect(line([{ id: 'b', low: 0, high: 2 }], points)).toMatchObject({ found: true, parameters: [{ estimate: 2, atLimit: 'high' }] });
  });
  it('turns back from where the model refuses', () => {
    const root3 = model(['b'], (x, b) => Math.sqrt(b! - 1) * x!);
    const points = [1, 2, 3].map((x) => [x, 0.1 * x] as const);
    expect(root3([{ id: 'b', start: 5, low: 0, high: 10 }], points)).toMatchObject({ parameters: [{ estimate: expect.closeTo(1.01, 4) }] });
  });

  it.each([
    [
      'fewer readings than needed',
      [
        ['a', 0.5],
        ['b', 0.5],
      ],
      2,
      '2 readings cannot tell 2 parameters and how sure they are; at least 3 are needed',
    ],
    ['a flat response', [['unused', 0.5]], 4, 'The readings do not change with unused'],
    [
      'two that make up for each other',
      [
        ['a', 0.5],
        ['c', 0.5],
      ],
      4,
      'Only a combination of a and c can be told',
    ],
    ['a model without a value at the start', [['a', -5]], 4, 'At the start values datum 1 has no y: Making y gave NaN'],
  ])('refuses %s, with a sentence', (_, names, count, reason) => {
    const five = model(['a', 'b', 'c', 'unused'], (x, a, b, c) => Math.sqrt(a! + c! + 1) + b! * x!);
    const parameters = (names as unknown as readonly (readonly [string, number])[]).map(([id, start]) => ({
      id,
      start,
      low: -10,
      high: 10,
    }));
    const points = Array.from({ length: count as number }, (_x, i) => [i, i * i] as const);
    expect(five(parameters, points)).toEqual({ found: false, code: 'CANNOT_TELL', reason: expect.stringContaining(reason as string) });
  });
  it.each([
    [{ parameters: [] }, 'BAD_REQUEST'],
    [{ parameters: [{ id: 'b' }] }, 'NO_RANGE'],
    [{ parameters: [{ id: 'b', low: 1, high: 2 }] }, 'BAD_REQUEST'],
    [
      {
        data: [
          { inputs: { b: 1 }, observed: { y: 1 } },
          { inputs: {}, observed: { y: 2 } },
        ],
      },
      'BAD_REQUEST',
    ],
    [
      {
        data: [
          { inputs: { x: NaN }, observed: { y: 1 } },
          { inputs: {}, observed: { y: 2 } },
        ],
      },
      'BAD_REQUEST',
    ],
    [{ data: [{ inputs: {}, observed: { yy: 1 } }] }, 'UNKNOWN_QUANTITY'],
    [{ data: [{ inputs: {}, observed: { y: 1 }, sd: { y: 0 } }] }, 'BAD_REQUEST'],
    [
      {
        data: [
          { inputs: {}, observed: { y: 1 }, sd: { y: 1 } },
          { inputs: {}, observed: { y: 1 } },
        ],
      },
      'BAD_REQUEST',
    ],
  ])('refuses %j', (request, code) => {
    const chain = buildChain([root('x', 1), root('b', 0.5)], [step('y', ['x', 'b'], ((x: number, b: number) => x * b) as never)]);
    const whole = { parameters: [{ id: 'b', low: 0, high: 1 }], data: [], ...request };
    expect(() => calibrate(chain, evaluate(chain), whole)).toThrow(expect.objectContaining({ code }));
  });
});
