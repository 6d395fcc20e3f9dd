import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { brent } from '../src/brent.js';
import { buildChain, evaluate, remedies, solve, type Root, type Solved, type Unsolved } from '../src/index.js';
import { adding, root, step } from './small-chains.js';

/** One knob k, one target y = f(k). */
function curve(f: (k: number) => number, knob: Partial<Root> = {}) {
  const chain = buildChain([root('k', 0.5, { window: { low: 0, high: 1 }, ...knob })], [step('y', ['k'], f as never)]);
  return { chain, state: evaluate(chain) };
}
const ask = (f: (k: number) => number, value: number, knob: Partial<Root> = {}) => {
  const { chain, state } = curve(f, knob);
  return solve(chain, state, { target: 'y', value, knob: 'k' });
};

describe('brent', () => {
  // Brent's own kind of hard cases: a root of high order and a steep exponential.
  it.each([
    ['x³', (x: number) => x ** 3, -1, 1.5, 0],
    ['cos x − x', (x: number) => Math.cos(x) - x, 0, 1, 0.7390851332151607],
    ['exp(40 x) − 2', (x: number) => Math.exp(40 * x) - 2, -1, 1, Math.log(2) / 40],
  ])('finds the zero of %s', (_, f, a, b, zero) => {
    const result = brent(f, { x: a, f: f(a) }, { x: b, f: f(b) }, 0);
    expect(result.x).toBeCloseTo(zero, _ === 'x³' ? 5 : 12);
    expect(result.iterations).toBeLessThan(150);
  });
});

describe('solve', () => {
  it('finds the knob, within a few askings of the chain', () => {
    const solution = ask((k) => k * k, 0.49) as Solved;
    expect(solution.found).toBe(true);
    expect(solution.knobValue).toBeCloseTo(0.7, 9);
    expect(solution.reached).toBeCloseTo(0.49, 9);
    expect(solution.iterations).toBeLessThan(40);
    expect(solution.state.origin('k')).toBe('entered');
  });
  it('takes the nearest of several answers', () => {
    const wave = (k: number) => Math.sin(20 * k);
    const solution = ask(wave, 0, { value: 0.6 }) as Solved;
    expect(solution.knobValue).toBeCloseTo((4 * Math.PI) / 20, 9);
  });
  it('leaves a knob that is right where it is', () => expect(ask((k) => 2 * k, 1)).toMatchObject({ knobValue: 0.5, iterations: 1 }));
  it('finds a summit that just reaches the value', () => {
    const solution = ask((k) => 1 - (k - 0.3137) ** 2, 1, { value: 0.9 }) as Solved;
    expect(solution.found).toBe(true);
    expect(solution.knobValue).toBeCloseTo(0.3137, 4);
  });
  it('finds an answer between the last value that the model takes and its refusal', () => {
    const refusing = (k: number) => {
      if (k > 0.51) throw new RangeError('k above 0.51');
      return k;
    };
    expect(ask(refusing, 0.509)).toMatchObject({ found: true, knobValue: expect.closeTo(0.509, 9) });
  });
  it('works for quantities of any size', () => {
    for (const scale of [1e-12, 1, 1e12]) {
      const solution = ask((k) => scale * k ** 3, scale * 0.343, { window: { low: 0, high: 1 } }) as Solved;
      expect(solution.knobValue).toBeCloseTo(0.7, 8);
    }
  });

  it('says how near it comes and where, when out of reach', () => {
    const solution = ask((k) => 1 - (k - 0.31) ** 2, 2) as Unsolved;
    expect(solution).toMatchObject({
      found: false,
      code: 'UNREACHABLE',
      nearest: { reached: expect.closeTo(1, 9), knobValue: expect.closeTo(0.31, 5) },
    });
    expect(solution.reason).toMatch(/^y comes no nearer to 2 than 1 for k from 0 to 1, at 0\.31/);
  });
  it('does not take a jump across the value for an answer', () => {
    const solution = ask((k) => (k > 0.77 ? 1 : 0), 0.4) as Unsolved;
    expect(solution).toMatchObject({ found: false, nearest: { reached: 0 } });
  });
  it('tells a flat response, a missing one and one that does not depend', () => {
    expect((ask(() => 3, 4) as Unsolved).reason).toBe('y does not change for k from 0 to 1; it stays at 3');
    const refusing = () => {
      throw new RangeError('the table is empty');
    };
    expect((ask(refusing, 4) as Unsolved).reason).toContain('y has no value for k from 0 to 1: the table is empty');
    const { chain } = curve((k) => k);
    const wider = buildChain([...chain.roots, root('u', 1, { window: { low: 0, high: 1 } })], chain.steps);
    expect(solve(wider, evaluate(wider), { target: 'y', value: 1, knob: 'u' })).toMatchObject({
      found: false,
      reason: 'y does not depend on u',
    });
  });
  it('does not move what an observation holds', () => {
    const { chain } = curve((k) => k);
    const solution = solve(chain, evaluate(chain, { y: { value: 0.2 } }), { target: 'y', value: 0.4, knob: 'k' }) as Unsolved;
    expect(solution.reason).toContain('held by an observation at 0.2; release it first');
  });
  it('turns one element of a vector to bring about one element of another', () => {
    const labels = ['x', 'y'];
    const scaled = {
      ...step('w', ['v'], ((v: Float64Array) => v.map((x) => x * 3)) as never),
      outputs: [{ id: 'w', unit: '1', meaning: 'w', labels }],
    };
    const chain = buildChain([root('v', Float64Array.of(1, 2), { labels })], [scaled]);
    const solution = solve(chain, evaluate(chain), { target: 'w[y]', value: 12, knob: 'v[y]', low: 0, high: 10 }) as Solved;
    expect([solution.knobValue, solution.state.value('v')]).toEqual([expect.closeTo(4, 9), Float64Array.of(1, solution.knobValue)]);
    expect(() => solve(chain, evaluate(chain), { target: 'w', value: 1, knob: 'v[x]', low: 0, high: 1 })).toThrow('name one, as in w[x]');
  });
  it.each([
    [{ window: {} }, {}, 'NO_RANGE'],
    [{}, { low: 2, high: 1 }, 'BAD_REQUEST'],
    [{}, { value: NaN }, 'BAD_REQUEST'],
    [{}, { knob: 'kk' }, 'UNKNOWN_QUANTITY'],
  ])('refuses %j with %j', (knob, request, code) => {
    const { chain, state } = curve((k) => k, knob);
    expect(() => solve(chain, state, { target: 'y', value: 1, knob: 'k', ...request })).toThrow(expect.objectContaining({ code }));
  });

  it('lists side effects and the windows they break or mend', () => {
    const chain = buildChain(
      [root('k', 1, { window: { low: 0, high: 10 } }), root('u', 1)],
      [
        step('y', ['k'], ((k: number) => 2 * k) as never),
        { ...adding('hot', ['k']), outputs: [{ id: 'hot', unit: '1', meaning: 'hot', window: { high: 3 } }] },
        { ...adding('slow', ['k']), outputs: [{ id: 'slow', unit: '1', meaning: 'slow', window: { low: 2 } }] },
        adding('same', ['u']),
      ],
    );
    const state = evaluate(chain);
    const solution = solve(chain, state, { target: 'y', value: 10, knob: 'k' }) as Solved;
    expect(solution.sideEffects).toMatchObject([
      { id: 'hot', before: 1.5, after: 5.5, breaks: { side: 'high', by: 2.5 } },
      { id: 'slow', mends: true },
    ]);
    expect(solution.broken.map(({ id }) => id)).toEqual(['hot']);
    expect([state.value('k'), state.value('y')]).toEqual([1, 2]);
  });

  it('brings any cubic to any value that it takes in the range', () => {
    const coefficient = fc.double({ min: -3, max: 3, noNaN: true });
    fc.assert(
      fc.property(coefficient, coefficient, coefficient, fc.double({ min: 0, max: 1, noNaN: true }), (a, b, c, at) => {
        const f = (k: number) => a + b * k + c * k ** 3;
        const solution = ask(f, f(at));
        expect(solution.found).toBe(true);
        if (solution.found) expect(Math.abs(f(solution.knobValue) - f(at))).toBeLessThan(1e-8);
      }),
    );
  });
});

describe('remedies', () => {
  const chain = buildChain(
    [
      root('gentle', 1, { window: { low: 0, high: 100 } }),
      root('harsh', 1, { window: { low: 0, high: 10 } }),
      root('weak', 1, { window: { low: 0, high: 2 } }),
      root('unknown', NaN, { window: { low: 0, high: 2 } }),
      root('free', 1),
    ],
    [
      { ...adding('y', ['gentle', 'harsh', 'weak', 'free']), outputs: [{ id: 'y', unit: 'g', meaning: 'y', window: { low: 6, high: 9 } }] },
      { ...adding('hot', ['harsh']), outputs: [{ id: 'hot', unit: '1', meaning: 'hot', window: { high: 2 } }] },
    ],
  );
  const ways = remedies(chain, evaluate(chain), 'y', 6.5, ['harsh', 'unknown', 'weak', 'free', 'gentle']);
  it('ranks by windows broken, then by how far the knob moves', () => {
    expect(ways.map(({ kind, knob }) => [kind, knob])).toEqual([
      ['set', 'gentle'],
      ['nothing', undefined],
      ['set', 'harsh'],
      ['unreachable', 'weak'],
      ['cannot-tell', 'unknown'],
      ['cannot-tell', 'free'],
    ]);
    expect(ways[0]).toMatchObject({ sentence: 'Set gentle to 3 (now 1): y comes to 6.5 g', move: expect.closeTo(0.02, 9) });
    expect(ways[1]).toMatchObject({ sentence: 'Do nothing: y stays at 4.5 g', broken: [{ id: 'y' }] });
    expect(ways[2]!.broken.map(({ id }) => id)).toEqual(['hot']);
  });
  it('aims at the end of the window that was crossed when no value is stated', () => {
    expect(remedies(chain, evaluate(chain), 'y', undefined, ['gentle'])[0]!.solution).toMatchObject({
      value: 6,
      reached: expect.closeTo(6, 9),
    });
  });
  it('cannot tell about a target without a value', () => {
    const gap = evaluate(chain, {});
    const blind = buildChain([root('n', NaN), root('k', 1, { window: { low: 0, high: 1 } })], [adding('y', ['n', 'k'])]);
    expect(gap.status('y').ok).toBe(true);
    expect(remedies(blind, evaluate(blind), 'y', undefined, ['k']).map(({ sentence }) => sentence)).toEqual([
      'Do nothing: y has no value',
      'Cannot tell: y has no value; cannot tell: needs n',
    ]);
    expect(remedies(blind, evaluate(blind), 'y', 3, ['k'])[1]).toMatchObject({ kind: 'cannot-tell' });
  });
});
