import { describe, expect, it, vi } from 'vitest';
import { buildChain, evaluate, Scratch, vary, varyAsync, varyWithDraws, type Chain, type Step, type VaryInput } from '../src/index.js';
import { randomBits } from '../src/sampling/random.js';
import { adding, root, step } from './small-chains.js';

const varied = (chain: Chain, inputs: readonly VaryInput[] | undefined, outputs: readonly string[], more = {}) =>
  vary(chain, evaluate(chain), { ...(inputs ? { inputs } : {}), outputs, ...more });

/** Ishigami and Homma's function, a = 7, b = 0.1. */
const ishigami = (a: number, b: number, c: number) => Math.sin(a) + 7 * Math.sin(b) ** 2 + 0.1 * c ** 4 * Math.sin(a);
const circle = ['x1', 'x2', 'x3'].map((id): VaryInput => ({ id, low: -Math.PI, high: Math.PI }));
const ishigamiChain = buildChain(
  ['x1', 'x2', 'x3'].map((id) => root(id, 0)),
  [step('y', ['x1', 'x2', 'x3'], ishigami as never)],
);

describe('shares of the variance', () => {
  // T. Ishigami and T. Homma (1990); indices as in A. Saltelli et al., Global Sensitivity Analysis: The Primer (2008), from
  // memory, and by the closed form: V = a²/8 + bπ⁴/5 + b²π⁸/18 + 1/2, V1 = (1 + bπ⁴/5)²/2, V2 = a²/8, V13 = b²π⁸ 8/225.
  it('are those published for the Ishigami function', () => {
    const { outputs } = varied(ishigamiChain, circle, ['y'], { samples: 65_536, shareSamples: 65_536 });
    const shares = new Map(outputs[0]!.shares!.ranked.map((share) => [share.id, share]));
    const published = [
      ['x1', 0.3139, 0.5576],
      ['x2', 0.4424, 0.4424],
      ['x3', 0, 0.2437],
    ] as const;
    for (const [id, first, total] of published) {
      expect(Math.abs(shares.get(id)!.first - first)).toBeLessThan(0.004);
      expect(Math.abs(shares.get(id)!.total - total)).toBeLessThan(0.004);
    }
    expect(outputs[0]!.shares!.interaction).toBeCloseTo(0.2437, 2);
    expect(outputs[0]!.shares!.ranked.map(({ id }) => id)).toEqual(['x1', 'x2', 'x3']);
    expect(outputs[0]!.mean).toBeCloseTo(3.5, 2);
    expect(outputs[0]!.sd).toBeCloseTo(Math.sqrt(13.8446), 2);
  });

  // I. M. Sobol's g-function, a = 0, 1, 4.5, 9, 99, 99, 99, 99: V_i = 1 / (3 (1 + a_i)²), V = Π(1 + V_i) − 1,
  // total V_i Π_{j≠i}(1 + V_j); Saltelli and Sobol' (1995) print 0.716, 0.179, 0.0237, 0.0072, 0.0001 (from memory).
  it('are those published for the g-function', () => {
    const a = [0, 1, 4.5, 9, 99, 99, 99, 99];
    const names = a.map((_, i) => `x${i}`);
    const g = (...x: number[]) => x.reduce((product, u, i) => (product * (Math.abs(4 * u - 2) + a[i]!)) / (1 + a[i]!), 1);
    const chain = buildChain(names.map((id) => root(id, 0.5)), [step('y', names, g as never)]); // prettier-ignore
    const { outputs } = varied(chain, names.map((id) => ({ id, low: 0, high: 1 })), ['y'], { shareSamples: 32_768, samples: 32_768 }); // prettier-ignore
    const own = a.map((x) => 1 / (3 * (1 + x) ** 2));
    const product = own.reduce((p, v) => p * (1 + v), 1);
    const printed = [0.716, 0.179, 0.0237, 0.0072, 0.0001];
    names.forEach((id, i) => {
      const share = outputs[0]!.shares!.ranked.find((one) => one.id === id)!;
      const first = own[i]! / (product - 1);
      expect(Math.abs(first - printed[Math.min(i, 4)]!)).toBeLessThan(0.0006);
      expect(Math.abs(share.first - first)).toBeLessThan(0.006);
      expect(Math.abs(share.total - (own[i]! * product) / (1 + own[i]!) / (product - 1))).toBeLessThan(0.006);
    });
  });

  it('are the squares of slope times deviation for a sum of normal inputs', () => {
    const chain = buildChain(
      [root('a', 1), root('b', 5), root('c', 2)],
      [step('y', ['a', 'b', 'c'], ((a: number, b: number, c: number) => 3 * a + b - 2 * c) as never)],
    );
    const { outputs } = varied(chain, [{ id: 'a', sd: 1 }, { id: 'b', sd: 4 }, { id: 'c', sd: 0.5 }], ['y']); // prettier-ignore
    const [y] = outputs;
    expect(y!.mean).toBeCloseTo(4, 3);
    expect(y!.sd / Math.sqrt(9 + 16 + 1)).toBeCloseTo(1, 2);
    expect((y!.p975 - y!.p025) / y!.sd).toBeCloseTo(2 * 1.96, 1);
    const shares = y!.shares!;
    expect(shares.ranked.map(({ id }) => id)).toEqual(['b', 'a', 'c']);
    [16 / 26, 9 / 26, 1 / 26].forEach((share, i) => {
      expect(Math.abs(shares.ranked[i]!.first - share)).toBeLessThan(0.01);
      expect(Math.abs(shares.ranked[i]!.interaction)).toBeLessThan(0.01);
    });
  });

  it('have intervals that hold the true value about as often as they say', () => {
    let inside = 0;
    for (let seed = 0; seed < 60; seed++) {
      const share = varied(ishigamiChain, circle, ['y'], { seed, shareSamples: 8192 }).outputs[0]!.shares!.ranked.find(
        ({ id }) => id === 'x2',
      )!;
      if (Math.abs(share.first - 0.4424) <= share.firstError) inside++;
    }
    expect(inside).toBeGreaterThanOrEqual(50);
  });
  it('are empty where nothing varies', () => {
    const chain = buildChain([root('a', 1), root('b', 1)], [adding('y', ['a']), adding('z', ['b'])]);
    const { outputs } = varied(chain, [{ id: 'a', sd: 1 }], ['y', 'z']);
    expect(outputs[1]).toMatchObject({ mean: 1.5, sd: 0, p025: 1.5, p975: 1.5, meanError: 0, shares: { ranked: [], interaction: 0 } });
  });
});

describe('vary', () => {
  const linear = buildChain(
    [root('a', 10, { sd: 2 }), root('b', 3, { sd: 0 }), root('far', 1, { sd: 5 })],
    [{ ...adding('y', ['a', 'b']), outputs: [{ id: 'y', unit: 'g', meaning: 'y', window: { low: 11.5 } }] }, adding('z', ['far'])],
  );
  it('takes the roots that state a deviation and bear upon the outputs', () => {
    const { inputs, outputs, samples } = varied(linear, undefined, ['y']);
    expect([inputs, samples]).toEqual([['a'], 8192]);
    expect(outputs[0]).toMatchObject({
      id: 'y',
      missing: 0,
      mean: expect.closeTo(13.5, 3),
      sd: expect.closeTo(2, 2),
      p50: expect.closeTo(13.5, 2),
    });
  });
  it('says how much lies outside the window', () => {
    const { outside } = varied(linear, undefined, ['y'], { samples: 65_536 }).outputs[0]!;
    expect(outside!.low).toBeCloseTo(0.158655, 3); // one deviation below the mean
    expect(outside!.high).toBe(0);
  });
  it('has errors of the mean that hold about as often as they say', () => {
    let inside = 0;
    for (let seed = 0; seed < 100; seed++) {
      const [y] = varied(ishigamiChain, circle, ['y'], { seed, samples: 2048, shares: false }).outputs;
      if (Math.abs(y!.mean - 3.5) <= y!.meanError) inside++;
    }
    expect(inside).toBeGreaterThanOrEqual(87);
    expect(inside).toBeLessThanOrEqual(100);
  });
  it('has tail intervals that hold the true percentile', () => {
    const { p975, tails } = varied(linear, undefined, ['y']).outputs[0]!;
    const exact = 13.5 + 2 * 1.959964;
    expect(tails.p975[0] <= exact && exact <= tails.p975[1]).toBe(true);
    expect(tails.p975[0] <= p975 && p975 <= tails.p975[1]).toBe(true);
  });
  it.each([
    ['uniform', { low: 2, high: 6 }, 4, 4 / Math.sqrt(12)],
    ['triangular', { low: 0, high: 6, centre: 3, distribution: 'triangular' }, 3, Math.sqrt(36 / 24)],
    ['lopsided triangular', { low: 0, high: 1, centre: 1, distribution: 'triangular' }, 2 / 3, Math.sqrt(1 / 18)],
    ['normal within limits', { low: 0, high: 8, distribution: 'normal' }, 4, 8 / (2 * 1.959964)],
    ['normal about a centre', { sd: 2, centre: 20 }, 20, 2],
  ])('draws a %s spread', (_, spread, mean, sd) => {
    const [a] = varied(linear, [{ id: 'a', ...spread } as VaryInput], ['a'], { samples: 32_768 }).outputs;
    expect(a!.mean).toBeCloseTo(mean, 3);
    expect(a!.sd).toBeCloseTo(sd, 2);
  });
  it('varies a computed quantity in place of computing it', () => {
    const chain = buildChain([root('a', 1)], [adding('b', ['a']), adding('c', ['b', 'a'])]);
    const { outputs } = varied(chain, [{ id: 'b', sd: 1 }], ['c', 'b']);
    expect(outputs.map(({ mean, sd }) => [mean, sd])).toEqual([
      [expect.closeTo(3, 3), expect.closeTo(1, 2)],
      [expect.closeTo(1.5, 3), expect.closeTo(1, 2)],
    ]);
  });
  it('keeps what is observed', () => {
    const chain = buildChain([root('a', 1, { sd: 1 })], [adding('b', ['a']), adding('c', ['b', 'a'])]);
    const state = evaluate(chain, { b: { value: 7 } });
    expect(vary(chain, state, { outputs: ['c'] }).outputs[0]!.mean).toBeCloseTo(8.5, 3);
    expect(() => vary(chain, evaluate(chain, { a: { value: 1 } }), { outputs: ['c'] })).toThrow('Nothing varies');
  });
  it('varies elements of a vector and sums up each element of another', () => {
    const labels = ['x', 'y', 'z'];
    const run = (v: Float64Array) => v.map((value) => 2 * value);
    const chain = buildChain(
      [root('v', Float64Array.of(1, 2, 3), { labels })],
      [{ ...step('w', ['v'], run as never), outputs: [{ id: 'w', unit: '1', meaning: 'w', labels }] }],
    );
    const { outputs } = varied(chain, [{ id: 'v[x]', sd: 1 }, { id: 'v[z]', sd: 0.5 }], ['w']); // prettier-ignore
    expect(outputs.map(({ id, mean, sd }) => [id, mean, sd])).toEqual([
      ['w[x]', expect.closeTo(2, 3), expect.closeTo(2, 2)],
      ['w[y]', 4, 0],
      ['w[z]', expect.closeTo(6, 3), expect.closeTo(1, 2)],
    ]);
    expect(outputs[0]!.shares!.ranked[0]).toMatchObject({ id: 'v[x]', first: expect.closeTo(1, 1) });
  });
  it('is the same for the same seed', () => {
    const run = (seed: number) => varied(linear, undefined, ['y'], { seed });
    expect(run(4)).toEqual(run(4));
    expect(run(4).outputs[0]!.mean).not.toBe(run(5).outputs[0]!.mean);
  });

  const blockwise = (block: Step['block']): Chain =>
    buildChain(
      [root('a', 0), root('k', 2)],
      [
        { ...step('r', ['a', 'k'], ((a: number, k: number) => k * Math.sqrt(a + 1)) as never), block: block! },
        step('y', ['r'], ((r: number) => (r > 0 ? r : 0)) as never),
      ],
    );
  const root2: Step['block'] = ([a, k], [r], count) => {
    for (let i = 0; i < count; i++) r![i] = k![i]! * Math.sqrt(a![i]! + 1);
  };
  it('runs blocks where a step has them, with the same result', () => {
    const block = vi.fn(root2!);
    const [fast] = varied(blockwise(block), [{ id: 'a', low: 0, high: 3 }], ['y']).outputs;
    const [slow] = varied(blockwise(undefined as never), [{ id: 'a', low: 0, high: 3 }], ['y']).outputs;
    expect(block).toHaveBeenCalled();
    expect(fast).toEqual(slow);
  });
  it('counts samples that a step cannot compute as missing, also where a later step would hide it', () => {
    for (const block of [root2, undefined as never]) {
      const { outputs } = varied(blockwise(block), [{ id: 'a', low: -2, high: 2 }], ['y', 'r'], { shares: false });
      expect(outputs.map(({ missing }) => missing)).toEqual([2048, 2048]);
      expect(outputs[0]!.p05).toBeGreaterThan(0);
    }
  });
  it('says how often a step refused, and why, and goes on', () => {
    const refuse = (a: number) => {
      if (a > 1) throw new RangeError(`a above 1`);
      return a;
    };
    const refuseAll: Step['block'] = ([a], [y], count) => {
      for (let i = 0; i < count; i++) y![i] = refuse(a![i]!);
    };
    for (const block of [undefined, refuseAll]) {
      const chain = buildChain([root('a', 0)], [{ ...step('y', ['a'], refuse as never), ...(block ? { block } : {}) }]);
      const { failures, outputs } = varied(chain, [{ id: 'a', low: 0, high: 2 }], ['y'], { shares: false });
      expect(failures).toEqual({ count: 4096, message: 'a above 1' });
      expect(outputs[0]).toMatchObject({ missing: 4096, mean: expect.closeTo(0.5, 3) });
    }
  });

  it.each([
    [{ inputs: [{ id: 'z' }] }, 'BAD_REQUEST', 'z needs low and high for a uniform spread'],
    [{ inputs: [{ id: 'a', low: 2, high: 1 }] }, 'BAD_REQUEST', 'a low below a high is expected'],
    [{ inputs: [{ id: 'a', low: 0, high: 1, centre: 2, distribution: 'triangular' }] }, 'BAD_REQUEST', 'peak at 2, outside 0 to 1'],
    [
      {
        inputs: [
          { id: 'a', sd: 1 },
          { id: 'a', sd: 2 },
        ],
      },
      'BAD_REQUEST',
      'a is to be varied twice',
    ],
    [{ inputs: [{ id: 'aa', sd: 1 }] }, 'UNKNOWN_QUANTITY', "No quantity 'aa'"],
    [{ outputs: [] }, 'BAD_REQUEST', 'No output was named'],
    [{ samples: 0 }, 'BAD_REQUEST', 'samples is 0'],
    [{ scrambles: 1 }, 'BAD_REQUEST', 'at least 2 scrambles'],
  ])('refuses %j', (request, code, message) => {
    const ask = () => vary(linear, evaluate(linear), { outputs: ['y'], ...(request as object) });
    expect(ask).toThrow(expect.objectContaining({ code, message: expect.stringContaining(message) }));
  });
  it('refuses an output that has no value even in the middle, and says why', () => {
    const chain = buildChain([root('a', 1, { sd: 1 }), root('gap', NaN, { meaning: 'ash' })], [adding('y', ['a', 'gap'])]);
    expect(() => varied(chain, undefined, ['y'])).toThrow(
      'y cannot be varied, since it has no value with every input in the middle: cannot tell: needs gap: ash is not given',
    );
  });
  it('gives a missing root a value where its spread is stated', () => {
    const chain = buildChain([root('gap', NaN)], [adding('y', ['gap'])]);
    expect(varied(chain, [{ id: 'gap', low: 1, high: 2 }], ['y']).outputs[0]!.mean).toBeCloseTo(2, 3);
  });
});

describe('progress and cancelling', () => {
  it('reports rising progress up to 1', () => {
    const seen: number[] = [];
    varied(ishigamiChain, circle, ['y'], { onProgress: (done: number) => seen.push(done) });
    expect(seen.at(-1)).toBeCloseTo(1, 12);
    expect(seen).toEqual([...seen].sort((a, b) => a - b));
    expect(seen.length).toBeGreaterThan(8);
  });
  it('stops when told to, between blocks', async () => {
    const control = new AbortController();
    const request = { inputs: circle, outputs: ['y'], samples: 2 ** 22, signal: control.signal, shares: false };
    const work = varyAsync(ishigamiChain, evaluate(ishigamiChain), request);
    setTimeout(() => control.abort(), 20);
    await expect(work).rejects.toMatchObject({ code: 'CANCELLED' });
  });
  it('uses memory again without a trace of what was in it, and gives it back when cancelled', async () => {
    const scratch = new Scratch();
    const state = evaluate(ishigamiChain);
    const request = { inputs: circle, outputs: ['y'], shares: false };
    const fresh = vary(ishigamiChain, state, request);
    expect(() => vary(ishigamiChain, state, { ...request, scratch, samples: 65_536, signal: AbortSignal.abort() })).toThrow('cancelled');
    const both = await Promise.all([
      varyAsync(ishigamiChain, state, { ...request, scratch }),
      varyAsync(ishigamiChain, state, { ...request, scratch }),
    ]);
    expect(both).toEqual([fresh, fresh]);
    expect(vary(ishigamiChain, state, { ...request, scratch })).toEqual(fresh);
  });
  it('gives the same result when it gives way to other work', async () => {
    const request = { inputs: circle, outputs: ['y'] };
    expect(await varyAsync(ishigamiChain, evaluate(ishigamiChain), request)).toEqual(vary(ishigamiChain, evaluate(ishigamiChain), request));
  });
});

describe('varyWithDraws', () => {
  const bits = randomBits(9);
  const draws = (count: number) => Float64Array.from({ length: count }, () => (bits() + 0.5) / 2 ** 32);
  const chain = buildChain([root('a', 0), root('b', 0)], [adding('y', ['a', 'b'])]);
  it('sums up exactly what was given, dependence included', () => {
    const a = draws(5000);
    const { outputs, samples } = varyWithDraws(chain, evaluate(chain), { columns: { a, b: a.map((x) => -x) }, outputs: ['y', 'a'] });
    const mean = a.reduce((sum, x) => sum + x, 0) / 5000;
    const sd = Math.sqrt(a.reduce((sum, x) => sum + (x - mean) ** 2, 0) / 4999);
    expect([samples, outputs[0]!.mean, outputs[0]!.sd]).toEqual([5000, 0.5, 0]);
    expect(outputs[1]!.mean).toBeCloseTo(mean, 12);
    expect(outputs[1]!.sd).toBeCloseTo(sd, 12);
    const sorted = a.slice().sort();
    expect(outputs[1]!.p95).toBeCloseTo(sorted[4749]! + 0.05 * (sorted[4750]! - sorted[4749]!), 12);
    expect(outputs[1]!.meanError).toBeCloseTo((1.959964 * sd) / Math.sqrt(5000), 9);
  });
  it('finds the percentiles of draws that drift, and counts what a step refused once', () => {
    const count = 60_000;
    const a = Float64Array.from({ length: count }, (_, i) => i);
    const refuse = (x: number) => {
      if (x % 100 === 7) throw new RangeError('7 again');
      return x;
    };
    const refusing = buildChain([root('a', 0)], [step('y', ['a'], refuse as never)]);
    const seen: number[] = [];
    const { failures, outputs } = varyWithDraws(refusing, evaluate(refusing), {
      columns: { a },
      outputs: ['y'],
      onProgress: (done) => seen.push(done),
    });
    const sorted = a.filter((x) => x % 100 !== 7);
    expect(failures).toEqual({ count: 600, message: '7 again' });
    expect(outputs[0]).toMatchObject({ missing: 600, p50: (sorted[29_699]! + sorted[29_700]!) / 2 });
    expect(outputs[0]!.p05).toBeCloseTo(sorted[2969]! + 0.95 * (sorted[2970]! - sorted[2969]!), 9);
    expect(seen).toEqual([...seen].sort((x, y) => x - y));
    expect(seen.at(-1)).toBe(1);
  });
  it('refuses a draw that is not finite also where a step would hide it', () => {
    const positive = buildChain([root('a', 1)], [step('y', ['a'], ((a: number) => (a > 0 ? Math.min(a, 9) : 0)) as never)]);
    for (const bad of [NaN, Infinity, -Infinity]) {
      const a = draws(3000);
      a[2000] = bad; // beyond those that its middle is taken from
      const ask = () => varyWithDraws(positive, evaluate(positive), { columns: { a }, outputs: ['y'] });
      expect(ask).toThrow('Draws of a hold a number that is not finite');
    }
  });
  it('counts an infinite result as missing, and neither inside nor outside the window', () => {
    const inverse: Step['block'] = ([a], [y], count) => {
      for (let i = 0; i < count; i++) y![i] = 1 / a![i]!;
    };
    for (const block of [undefined, inverse]) {
      const made = { ...step('y', ['a'], ((a: number) => 1 / a) as never), ...(block ? { block } : {}) };
      const windowed = { ...made, outputs: [{ id: 'y', unit: '1', meaning: 'y', window: { low: 0, high: 1 } }] };
      const inverted = buildChain([root('a', 1)], [windowed]);
      const a = Float64Array.from({ length: 20_000 }, (_, i) => (i % 4 === 0 ? 0 : i % 4 === 1 ? 0.5 : 2 + i));
      const { outputs } = varyWithDraws(inverted, evaluate(inverted), { columns: { a }, outputs: ['y'] });
      expect(outputs[0]).toMatchObject({ missing: 5000, outside: { low: 0, high: expect.closeTo(1 / 3, 12) }, p95: 2 });
    }
  });
  it('takes a single draw', () => {
    const { outputs } = varyWithDraws(chain, evaluate(chain), { columns: { a: Float64Array.of(2) }, outputs: ['y'] });
    expect(outputs[0]).toMatchObject({ mean: 2.5, sd: 0, p025: 2.5, p975: 2.5 });
  });
  it.each([
    [{}, 'No draws came'],
    [{ a: draws(3), b: draws(4) }, 'Draws of b are 4, but a has 3'],
    [{ a: Float64Array.of(1, NaN) }, 'Draws of a hold a number that is not finite'],
  ])('refuses columns that do not fit', (columns, message) => {
    expect(() => varyWithDraws(chain, evaluate(chain), { columns: columns as Record<string, Float64Array>, outputs: ['y'] })).toThrow(
      message,
    );
  });
});
