import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { buildChain, evaluate, Session, type State } from '../src/index.js';
import { adding, randomChain, root, step } from './small-chains.js';

const readable = (state: State) =>
  state.chain.quantities.map(({ id }) => ({
    id,
    value: state.value(id),
    computed: state.computed(id),
    origin: state.origin(id),
    status: state.status(id),
  }));

describe('Session', () => {
  it('recomputes only downstream, and stops where outputs stay the same', () => {
    const run = { b: vi.fn((a: number) => Math.sign(a)), c: vi.fn((b: number) => b + 1), d: vi.fn((u: number) => u) };
    const chain = buildChain(
      [root('a', 3), root('u', 1)],
      [step('b', ['a'], run.b as never), step('c', ['b'], run.c as never), step('d', ['u'], run.d as never)],
    );
    const session = new Session(chain);
    expect(session.set('a', 4)).toEqual(['a']);
    expect([run.b, run.c, run.d].map((f) => f.mock.calls.length)).toEqual([2, 1, 1]);
    expect(session.set('a', -4)).toEqual(['a', 'b', 'c']);
    expect([run.b, run.c, run.d].map((f) => f.mock.calls.length)).toEqual([3, 2, 1]);
  });
  it('does not run a step whose output was observed only because it was released', () => {
    const run = vi.fn((a: number) => a + 1);
    const session = new Session(buildChain([root('a', 1)], [step('b', ['a'], run as never), adding('c', ['b'])]));
    session.observe('b', 10);
    expect(session.release('b')).toEqual(['b', 'c']);
    expect([session.value('b'), session.value('c'), run.mock.calls.length]).toEqual([2, 2.5, 1]);
  });
  it('tells measured from entered', () => {
    const session = new Session(buildChain([root('a', 1, { origin: 'assumed' })], []));
    session.observe('a', 2);
    expect(session.origin('a')).toBe('measured');
    session.set('a', 3);
    expect(session.origin('a')).toBe('entered');
    session.release();
    expect([session.origin('a'), session.value('a')]).toEqual(['assumed', 1]);
  });
  it('gives states that stay as they were', () => {
    const session = new Session(buildChain([root('a', 1)], [adding('b', ['a'])]));
    const before = session.snapshot();
    session.set('a', 5);
    expect([before.value('b'), session.snapshot().value('b')]).toEqual([1.5, 5.5]);
  });
  it('takes a refused change as no change at all', () => {
    const session = new Session(buildChain([root('a', 1), root('b', 2)], [adding('c', ['a', 'b'])]));
    const before = readable(session);
    expect(() => session.set({ a: 5, b: NaN })).toThrow('b is given NaN');
    expect(readable(session)).toEqual(before);
    expect(session.canUndo).toBe(false);
  });
  it('puts several elements of one vector in place at once, after the other changes', () => {
    const chain = buildChain([root('a', 1)], [step('v', ['a'], ((a: number) => Float64Array.of(a, a, a)) as never)]);
    const session = new Session(chain);
    session.set({ 'v[0]': 10, a: 2, 'v[2]': 30 });
    expect(session.value('v')).toEqual(Float64Array.of(10, 2, 30));
    session.undo();
    expect(session.value('v')).toEqual(Float64Array.of(1, 1, 1));
  });
  it('has nothing to undo at first', () => {
    const session = new Session(buildChain([root('a', 1)], []), { a: 3 });
    expect([session.undo(), session.redo(), session.value('a')]).toEqual([undefined, undefined, 3]);
  });
  it('forgets what was undone when something else is changed', () => {
    const session = new Session(buildChain([root('a', 1)], []));
    session.set('a', 2);
    session.undo();
    session.set('a', 3);
    expect([session.canRedo, session.value('a')]).toEqual([false, 3]);
  });
});

const edits = fc.array(
  fc.oneof(
    fc.record({
      what: fc.constant('put' as const),
      picks: fc.array(fc.tuple(fc.nat(), fc.integer({ min: -20, max: 20 })), { minLength: 1, maxLength: 3 }),
    }),
    fc.record({
      what: fc.constant('release' as const),
      picks: fc.array(fc.tuple(fc.nat(), fc.constant(0)), { minLength: 1, maxLength: 2 }),
    }),
    fc.record({ what: fc.constantFrom('undo' as const, 'redo' as const), picks: fc.constant([]) }),
  ),
  { maxLength: 15 },
);

describe('any chain and any history', () => {
  it('has after each change the state that a cold evaluation has, findings included', () => {
    fc.assert(
      fc.property(randomChain, edits, ({ roots, steps, ids }, history) => {
        const chain = buildChain(roots, steps);
        const session = new Session(chain);
        for (const { what, picks } of history) {
          const named = picks.map(([pick, value]) => [ids[pick % ids.length]!, value] as const);
          if (what === 'put') session.observe(Object.fromEntries(named));
          else if (what === 'release') session.release(...named.map(([id]) => id));
          else session[what]();
          const cold = evaluate(chain, session.overrides());
          expect(readable(session)).toEqual(readable(cold));
          expect(session.findings()).toEqual(cold.findings());
        }
      }),
      { numRuns: 300 },
    );
  });
  it('comes back by undo, and forward by redo', () => {
    fc.assert(
      fc.property(randomChain, edits, ({ roots, steps, ids }, history) => {
        const session = new Session(buildChain(roots, steps));
        const states = [readable(session)];
        for (const { picks } of history) {
          for (const [pick, value] of picks) {
            const id = ids[pick % ids.length]!;
            if (session.value(id) === value) continue;
            session.set(id, value);
            states.push(readable(session));
          }
        }
        for (let i = states.length - 2; i >= 0; i--) {
          session.undo();
          expect(readable(session)).toEqual(states[i]);
        }
        for (let i = 1; i < states.length; i++) {
          session.redo();
          expect(readable(session)).toEqual(states[i]);
        }
      }),
      { numRuns: 200 },
    );
  });
  it('does not depend on the order in which the steps were given', () => {
    fc.assert(
      fc.property(randomChain, ({ roots, steps, ids }) => {
        const [one, other] = [evaluate(buildChain(roots, steps)), evaluate(buildChain(roots, [...steps].reverse()))];
        for (const id of ids) expect(other.value(id)).toEqual(one.value(id));
      }),
    );
  });
});
