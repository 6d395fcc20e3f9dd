import { describe, expect, it } from 'vitest';
import { buildChain, compare, evaluate, explain, uses } from '../src/index.js';
import { adding, root, step } from './small-chains.js';

const chain = buildChain(
  [
    root('a', 1, { source: 'supplier specification', place: 'plant.yaml:3', standing: 'plant', note: 'lot 12' }),
    root('u', 2, { origin: 'default' }),
  ],
  [
    adding('b', ['a']),
    step('c', ['a', 'b'], ((a: number, b: number) => a * b) as never, {
      sources: ['author-1966'],
      standing: 'memory',
      uncertainty: () => [0.1],
    }),
    adding('d', ['c', 'u', 'b']),
  ],
);

describe('explain', () => {
  it('leads back to the roots with equation, sources, standing and place', () => {
    const tree = explain(chain, evaluate(chain), 'c');
    expect(tree).toMatchObject({
      value: 1.5,
      origin: 'computed',
      equation: 'c = f(a, b)',
      sources: ['author-1966'],
      standing: 'memory',
      uncertainty: 0.1,
    });
    expect(tree.step).toEqual({ id: 'make c', title: 'Making c' });
    expect(tree.inputs[0]).toMatchObject({
      id: 'a',
      origin: 'entered',
      sources: ['supplier specification'],
      place: 'plant.yaml:3',
      note: 'lot 12',
      inputs: [],
    });
    expect(tree.inputs[1]!.inputs.map(({ id }) => id)).toEqual(['a']);
  });
  it('unfolds each quantity once, where it is nearest', () => {
    const tree = explain(chain, evaluate(chain), 'd');
    const [c, u, b] = tree.inputs;
    expect([b!.repeated, b!.inputs.length, c!.inputs[1]!.repeated, c!.inputs[1]!.inputs]).toEqual([undefined, 1, true, []]);
    expect([u!.origin, u!.repeated]).toEqual(['default', undefined]);
  });
  it('stays small where every step takes the one before twice', () => {
    const steps = Array.from({ length: 60 }, (_, i) => adding(`q${i + 1}`, [`q${i}`, `q${i}`]));
    const deep = buildChain([root('q0', 0)], steps);
    expect(JSON.stringify(explain(deep, evaluate(deep), 'q60')).length).toBeLessThan(100_000);
  });
  it('stops at the depth asked for and says so', () => {
    expect(explain(chain, evaluate(chain), 'd', 0)).toMatchObject({ inputs: [], cut: true });
    expect(explain(chain, evaluate(chain), 'd', 1).inputs.map(({ cut }) => cut)).toEqual([true, undefined, true]);
  });
  it('shows a measurement with what the chain would give', () => {
    const tree = explain(chain, evaluate(chain, { b: { value: 9, note: 'titration' } }), 'b');
    expect(tree).toMatchObject({ value: 9, origin: 'measured', computed: 1.5, note: 'titration', inputs: [], equation: 'b = f(a)' });
  });
  it('explains a missing value', () => {
    const state = evaluate(chain, { u: { value: 3 } });
    expect(explain(chain, state, 'd').status).toEqual({ ok: true });
    const gap = buildChain([root('a', NaN)], [adding('b', ['a'])]);
    expect(explain(gap, evaluate(gap), 'b')).toMatchObject({ value: NaN, status: { reason: 'cannot tell: needs a' } });
  });
});

describe('uses', () => {
  it('lists what lies downstream, all of it or directly', () => {
    expect(uses(chain, 'a')).toEqual(['b', 'c', 'd']);
    expect(uses(chain, 'a', 'direct')).toEqual(['b', 'c']);
    expect(uses(chain, 'd')).toEqual([]);
  });
  it('is the way back of explain', () => {
    const ids = chain.quantities.map(({ id }) => id);
    const below = (id: string): string[] => [id, ...explain(chain, evaluate(chain), id).inputs.flatMap((input) => below(input.id))];
    for (const id of ids) for (const from of ids) expect(from !== id && below(id).includes(from)).toBe(uses(chain, from).includes(id));
  });
});

describe('compare', () => {
  it('sorts what differs by relative change', () => {
    const { differences } = compare(evaluate(chain), evaluate(chain, { a: 1.1, u: 4 }));
    expect(differences.map(({ id }) => id)).toEqual(['u', 'd', 'c', 'a', 'b']);
    expect(differences[0]).toMatchObject({ before: 2, after: 4, relative: 1, kind: 'changed' });
  });
  it('finds nothing between a state and itself', () => {
    expect(compare(evaluate(chain), evaluate(chain))).toEqual({ differences: [], onlyBefore: [], onlyAfter: [], unitChanged: [] });
  });
  it('tells what only one version has, what changed its unit, what was lost and gained', () => {
    const one = buildChain([root('a', 1), root('gone', 1), root('k', 1), root('lost', 1), root('won', NaN)], []);
    const two = buildChain([root('a', 1), root('k', 1, { unit: 'kg' }), root('new', 1), root('lost', NaN), root('won', 1)], []);
    const result = compare(evaluate(one), evaluate(two));
    expect(result).toMatchObject({ onlyBefore: ['gone'], onlyAfter: ['new'], unitChanged: ['k'] });
    expect(result.differences.map(({ id, kind }) => [id, kind])).toEqual([
      ['lost', 'lost'],
      ['won', 'gained'],
    ]);
  });
  it('judges a vector by its most changed element', () => {
    const pair = buildChain([root('v', Float64Array.of(1, 4), { labels: ['x', 'y'] })], []);
    const [difference] = compare(evaluate(pair), evaluate(pair, { 'v[x]': 2 })).differences;
    expect(difference).toMatchObject({ element: 'x', relative: 0.25 });
  });
  it('passes over rounding and over a change from nothing to nothing', () => {
    const pair = buildChain([root('a', 1), root('z', 0), root('n', NaN)], []);
    expect(compare(evaluate(pair), evaluate(pair, { a: 1 + 1e-15, z: -0 })).differences).toEqual([]);
  });
});
