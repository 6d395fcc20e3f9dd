import { describe, expect, it } from 'vitest';
import { buildChain, evaluate, map, solve } from '../src/index.js';
import { adding, root, step } from './small-chains.js';

const product = (a: number, b: number) => {
  if (a > 8) throw new RangeError('a above 8');
  return a * b;
};
const chain = buildChain(
  [root('a', 4, { window: { low: 0, high: 10 } }), root('b', 2, { window: { low: 1, high: 5 } }), root('u', 9, { window: { high: 1 } })],
  [
    { ...step('y', ['a', 'b'], product as never), outputs: [{ id: 'y', unit: 'g', meaning: 'y', window: { low: 4, high: 20 } }] },
    { ...step('hot', ['a'], ((a: number) => 10 * a) as never), outputs: [{ id: 'hot', unit: '°C', meaning: 'hot', window: { high: 60 } }] },
    adding('z', ['u']),
  ],
);
const state = evaluate(chain);
const result = map(chain, state, { x: { id: 'a', steps: 11 }, y: { id: 'b', low: 1, high: 5, steps: 5 }, outputs: ['y', 'z'] });
const cell = (a: number, b: number) => (b - 1) * 11 + a;

describe('map', () => {
  it('holds what a cold evaluation gives, cell by cell', () => {
    result.y.values.forEach((b, j) =>
      result.x.values.forEach((a, i) => {
        const cold = evaluate(chain, { a, b });
        expect([result.outputs['y']![j * 11 + i], result.outputs['z']![j * 11 + i]]).toEqual([cold.value('y'), cold.value('z')]);
      }),
    );
  });
  it('watches the windows that the knobs can break, and no other', () => {
    expect(result.windows.map(({ id }) => id)).toEqual(['a', 'b', 'y', 'hot']);
  });
  it('tells where they hold, where one is broken, where one cannot be told', () => {
    expect(result.holds[cell(4, 2)]).toBe(1);
    expect(result.holds[cell(1, 1)]).toBe(0); // y = 1
    expect(result.holds[cell(9, 1)]).toBe(0); // y has no value, but hot is broken for certain
    const unsure = map(chain, evaluate(chain), { x: { id: 'a', low: 8.5, high: 9, steps: 2 }, y: { id: 'b', steps: 2 }, outputs: ['y'] });
    expect(unsure.outputs['y']).toEqual(new Float64Array(4).fill(NaN));
  });
  it('says 2 only where nothing is broken for certain', () => {
    const mild = buildChain(chain.roots, [chain.steps[0]!]);
    const { holds } = map(mild, evaluate(mild), {
      x: { id: 'a', low: 8, high: 9, steps: 2 },
      y: { id: 'b', low: 2, high: 2.5, steps: 2 },
      outputs: ['y'],
    });
    expect([...holds]).toEqual([1, 2, 1, 2]);
  });
  it('names the limit that binds', () => {
    const binding = (a: number, b: number) => {
      const w = result.binding[cell(a, b)]!;
      const { id, margin, side } = result.windows[w]!;
      return [id, side[cell(a, b)] === 1 ? 'high' : 'low', margin[cell(a, b)]];
    };
    expect(binding(6, 2)).toEqual(['hot', 'high', 0]);
    expect(binding(1, 1)).toEqual(['y', 'low', -3 / 16]);
    expect(binding(6, 5)).toEqual(['y', 'high', -10 / 16]);
  });
  it('marks where the plant stands', () => expect(result.today).toEqual({ x: 4, y: 2, outputs: { y: 8, z: 9.5 } }));
  it('crosses a contour where solve finds the knob', () => {
    const found = solve(chain, state, { target: 'y', value: 12, knob: 'a' });
    expect(found.found && found.knobValue).toBeCloseTo(6, 9);
    expect(result.outputs['y']![cell(6, 2)]).toBe(12);
  });
  it('leaves the state as it was', () => expect([state.value('a'), state.value('y')]).toEqual([4, 8]));
  it.each([
    [{ x: { id: 'a' }, y: { id: 'a' } }, 'BAD_REQUEST'],
    [{ x: { id: 'a', steps: 1 }, y: { id: 'b' } }, 'BAD_REQUEST'],
    [{ x: { id: 'u' }, y: { id: 'b' } }, 'NO_RANGE'],
    [{ x: { id: 'a' }, y: { id: 'bb' } }, 'UNKNOWN_QUANTITY'],
  ])('refuses %j', (request, code) => {
    expect(() => map(chain, state, { ...request, outputs: ['y'] })).toThrow(expect.objectContaining({ code }));
  });
});
