import { describe, expect, it } from 'vitest';
import { brokenWindows, buildChain, evaluate } from '../src/index.js';
import { adding, root, step } from './small-chains.js';

class Refusal extends RangeError {
  readonly code = 'OUT_OF_RANGE';
}

describe('evaluate', () => {
  it.each([0, 1, 2, 3, 4, 5, 6, 7, 12])('passes %d inputs in order', (count) => {
    const roots = Array.from({ length: count }, (_, i) => root(`r${i}`, i + 1));
    const digits = (...x: number[]) => x.reduce((sum, digit) => sum * 13 + digit, 0);
    const chain = buildChain(roots, [
      step(
        'b',
        roots.map(({ id }) => id),
        digits as never,
      ),
    ]);
    expect(evaluate(chain).value('b')).toBe(digits(...roots.map(({ value }) => value as number)));
  });
  it('passes vectors whole and reads their elements by label and by place', () => {
    const mix = root('mix', Float64Array.of(0.7, 0.2, 0.1), { labels: ['sugar', 'water', 'fat'] });
    const chain = buildChain([mix], [step('double', ['mix'], ((v: Float64Array) => v.map((x) => 2 * x)) as never)]);
    const state = evaluate(chain);
    expect(state.value('double')).toEqual(Float64Array.of(1.4, 0.4, 0.2));
    expect(state.number('mix[water]')).toBe(0.2);
    expect(state.number('double[2]')).toBe(0.2);
    expect(() => state.number('mix')).toThrow('mix has 3 elements; name one, as in mix[sugar]');
    expect(() => state.value('mix[watre]')).toThrow("mix has no element 'watre'; did you mean 'water'?");
  });
  it('gives several outputs in their order', () => {
    const state = evaluate(buildChain([root('a', 7)], [step('tens ones', ['a'], ((a: number) => [Math.floor(a / 10), a % 10]) as never)]));
    expect([state.value('tens'), state.value('ones')]).toEqual([0, 7]);
  });

  it('puts a measured value in place of a computed one and keeps the computed beside it', () => {
    const chain = buildChain([root('a', 1)], [adding('b', ['a']), adding('c', ['b'])]);
    const state = evaluate(chain, { b: { value: 10, note: 'balance, 12:08', unit: '1' } });
    expect([state.value('b'), state.value('c'), state.computed('b')]).toEqual([10, 10.5, 1.5]);
    expect([state.origin('a'), state.origin('b'), state.origin('c')]).toEqual(['entered', 'measured', 'computed']);
    expect(state.observation('b')?.note).toBe('balance, 12:08');
  });
  it('counts a bare value as entered', () => {
    const chain = buildChain([root('a', 1, { origin: 'default' })], []);
    expect([evaluate(chain).origin('a'), evaluate(chain, { a: 2 }).origin('a')]).toEqual(['default', 'entered']);
  });
  it('puts one element of a vector in place', () => {
    const chain = buildChain([root('v', Float64Array.of(1, 2, 3), { labels: ['x', 'y', 'z'] })], []);
    expect(evaluate(chain, { 'v[y]': 9, 'v[z]': 8 }).value('v')).toEqual(Float64Array.of(1, 9, 8));
  });

  it.each([
    ['an unknown id', { temprature: 1 }, 'UNKNOWN_QUANTITY', "did you mean 'temperature'?"],
    ['NaN', { temperature: NaN }, 'BAD_VALUE', 'temperature is given NaN, but a finite value in °C is expected'],
    ['another unit', { temperature: { value: 1, unit: 'K' } }, 'UNIT_CLASH', 'held in °C'],
    ['a vector for a number', { temperature: Float64Array.of(1, 2) }, 'BAD_VALUE', 'one number is expected'],
    ['a number for a vector', { v: 1 }, 'BAD_VALUE', '2 numbers is expected'],
    ['an element beyond the end', { 'w[5]': 1 }, 'UNKNOWN_ELEMENT', 'w has 2 elements'],
    ['a number for a vector without labels', { w: 1 }, 'BAD_VALUE', 'a vector is expected'],
  ])('refuses %s', (_, overrides, code, message) => {
    const chain = buildChain(
      [root('temperature', 20, { unit: '°C' }), root('v', Float64Array.of(1, 2), { labels: ['x', 'y'] }), root('w', Float64Array.of(1, 2))],
      [],
    );
    expect(() => evaluate(chain, overrides)).toThrow(expect.objectContaining({ code, message: expect.stringContaining(message) }));
  });
});

describe('a step that fails', () => {
  const refuse = (a: number) => {
    if (a > 3) throw new Refusal(`a is ${a}, but the source covers 0 to 3`);
    return a;
  };
  const chain = buildChain(
    [root('a', 5), root('u', 1)],
    [step('b', ['a'], refuse as never, { place: 'bars.yaml:12' }), adding('c', ['b', 'u']), adding('d', ['c']), adding('e', ['u'])],
  );
  it('gives one finding with the code, place and sentence of the error', () => {
    expect(evaluate(chain).findings()).toEqual([
      {
        code: 'OUT_OF_RANGE',
        level: 'query',
        message: 'a is 5, but the source covers 0 to 3',
        quantity: 'b',
        step: 'make b',
        place: 'bars.yaml:12',
      },
    ]);
  });
  it('leaves the rest alone and says downstream what is needed', () => {
    const state = evaluate(chain);
    expect([state.value('c'), state.value('d'), state.value('e')]).toEqual([NaN, NaN, 1.5]);
    expect(state.status('d')).toMatchObject({ ok: false, reason: 'cannot tell: needs b', needs: ['b'], cause: { code: 'OUT_OF_RANGE' } });
    expect(state.status('b')).toMatchObject({ ok: false, reason: 'a is 5, but the source covers 0 to 3' });
    expect(state.status('e')).toEqual({ ok: true });
  });
  it('is silent when what it would give was measured', () => {
    const state = evaluate(chain, { b: { value: 4 } });
    expect([state.value('d'), state.findings()]).toEqual([6, []]);
  });
  it.each([
    ['NaN', () => NaN, 'gave NaN for b'],
    ['Infinity', () => 1 / 0, 'gave Infinity for b'],
    ['nothing', () => undefined as never, 'gave nothing for b'],
    ['a plain list', () => [1, 2] as never, 'gave a list of 2 for b'],
    ['a vector with a gap', () => Float64Array.of(1, NaN), 'gave a vector with NaN at position 1 for b'],
  ])('counts %s as no value', (_, run, message) => {
    const state = evaluate(buildChain([], [step('b', [], run), adding('c', ['b'])]));
    expect(state.findings()).toMatchObject([{ code: 'NOT_FINITE', message: expect.stringContaining(message) }]);
    expect(state.value('c')).toBe(NaN);
  });
  it('tells which of several outputs has no value, and keeps the others', () => {
    const state = evaluate(buildChain([], [step('b c', [], () => [1, NaN])]));
    expect([state.value('b'), state.status('c').ok]).toEqual([1, false]);
    expect(state.findings()).toMatchObject([{ quantity: 'c' }]);
  });
  it('refuses a wrong number of outputs', () => {
    const state = evaluate(buildChain([], [step('b c', [], () => [1])]));
    expect(state.findings()).toMatchObject([{ code: 'WRONG_OUTPUTS', message: expect.stringContaining('gave a list of 1, but 2 values') }]);
  });
  it('treats a root without a value the same way, as a note', () => {
    const state = evaluate(buildChain([root('a', NaN, { meaning: 'ash of the milk powder' })], [adding('b', ['a'])]));
    expect(state.findings()).toMatchObject([
      { code: 'NOT_GIVEN', level: 'note', message: 'ash of the milk powder is not given', quantity: 'a' },
    ]);
    expect(state.status('b')).toMatchObject({ reason: 'cannot tell: needs a' });
  });
  it('names every root cause once', () => {
    const status = evaluate(buildChain([root('a', NaN), root('b', NaN)], [adding('c', ['a', 'b']), adding('d', ['c', 'a'])])).status('d');
    expect(status).toMatchObject({ needs: ['a', 'b'], causes: [{ quantity: 'a' }, { quantity: 'b' }] });
  });
});

describe('what steps say', () => {
  const warn = (inputs: readonly unknown[], outputs: readonly unknown[]) =>
    (outputs[0] as number) > 3 ? [{ code: 'HIGH', level: 'query' as const, message: `${inputs[0]} gives ${outputs[0]}` }] : [];
  const chain = buildChain([root('a', 1)], [step('b', ['a'], ((a: number) => 2 * a) as never, { findings: warn })]);
  it('is asked with the values that count', () => {
    expect(evaluate(chain).findings()).toEqual([]);
    expect(evaluate(chain, { a: 2 }).findings()).toEqual([{ code: 'HIGH', level: 'query', message: '2 gives 4', step: 'make b' }]);
    expect(evaluate(chain, { b: { value: 9 } }).findings()).toMatchObject([{ message: '1 gives 9' }]);
  });
  it('does not bring the chain down when it fails itself', () => {
    const broken = () => {
      throw new Error('no such table');
    };
    const state = evaluate(buildChain([], [step('b', [], () => 1, { findings: broken })]));
    expect(state.findings()).toMatchObject([{ code: 'FINDINGS_FAILED', message: expect.stringContaining('no such table') }]);
  });
  it('gives the uncertainty that a model states', () => {
    const state = evaluate(
      buildChain([root('a', 2)], [step('b', ['a'], ((a: number) => a) as never, { uncertainty: ([a]) => [0.1 * (a as number)] })]),
    );
    expect([state.uncertainty('b'), state.uncertainty('a')]).toEqual([0.2, undefined]);
  });
});

describe('brokenWindows', () => {
  it('says which end and by how much, for numbers and for the worst element of a vector', () => {
    const state = evaluate(
      buildChain(
        [
          root('a', 5, { window: { low: 0, high: 4 } }),
          root('b', 5, { window: { low: 5 } }),
          root('v', Float64Array.of(1, -3, 2), { window: { low: 0, high: 10 } }),
          root('n', NaN, { window: { low: 0 } }),
        ],
        [],
      ),
    );
    expect(brokenWindows(state).map(({ id, side, by }) => ({ id, side, by }))).toEqual([
      { id: 'a', side: 'high', by: 1 },
      { id: 'v', side: 'low', by: 3 },
    ]);
  });
});
