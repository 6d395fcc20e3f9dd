import { describe, expect, it } from 'vitest';
import type { ChainError } from '../src/index.js';
import { buildChain, requireUnit, type Root, type Step } from '../src/index.js';
import { adding, root, step } from './small-chains.js';

function codeOf(roots: readonly Root[], steps: readonly Step[]): ChainError {
  try {
    buildChain(roots, steps);
  } catch (error) {
    return error as ChainError;
  }
  throw new Error('the chain was built');
}

describe('buildChain', () => {
  it('puts steps in an order in which each finds its inputs', () => {
    const chain = buildChain([root('a', 1)], [adding('d', ['c', 'b']), adding('c', ['b']), adding('b', ['a'])]);
    expect(chain.steps.map(({ id }) => id)).toEqual(['make b', 'make c', 'make d']);
  });
  it('keeps an order that works', () => {
    const steps = [adding('z', ['a']), adding('b', ['a']), adding('y', ['z', 'b'])];
    expect(buildChain([root('a', 1)], steps).steps).toEqual(steps);
  });
  it('orders a chain of 20,000 steps given backwards without exhausting the stack', () => {
    const steps = Array.from({ length: 20_000 }, (_, i) => adding(`q${i + 1}`, [`q${i}`])).reverse();
    expect(buildChain([root('q0', 0)], steps).steps[0]!.id).toBe('make q1');
  });
  it('takes steps without outputs and chains without steps', () => {
    expect(buildChain([], []).quantities).toEqual([]);
    const check: Step = { ...adding('b', ['a']), id: 'check', outputs: [] };
    expect(buildChain([root('a', 1)], [check, adding('b', ['a'])]).quantities).toHaveLength(2);
  });

  it('names the way round of a cycle', () => {
    const error = codeOf([root('a', 1)], [adding('b', ['a', 'd']), adding('c', ['b']), adding('d', ['c']), adding('e', ['d'])]);
    expect(error.code).toBe('CYCLE');
    expect([...error.ids].sort()).toEqual(['b', 'c', 'd']);
    // Each follows the one from which it is computed: d is made from c, c from b, b from d.
    expect(error.message).toMatch(/b → c → d → b|c → d → b → c|d → b → c → d/);
  });
  it('names a step that takes its own output', () => {
    expect(codeOf([], [adding('b', ['b'])])).toMatchObject({ code: 'CYCLE', ids: ['b'] });
  });
  it('names step, input and the nearest known name of a missing input', () => {
    const error = codeOf([root('caramel.moisture', 0.1)], [adding('b', ['caramel.moistrue'])]);
    expect(error).toMatchObject({ code: 'MISSING_INPUT', ids: ['make b', 'caramel.moistrue', 'caramel.moisture'] });
    expect(error.message).toContain("Step 'make b' needs 'caramel.moistrue'; did you mean 'caramel.moisture'?");
  });
  it('offers no name that is nowhere near', () => {
    expect(codeOf([root('a', 1)], [adding('b', ['something.else'])]).message).toContain('no root and no step gives it');
  });
  it.each([
    ['two roots', [root('a', 1), root('a', 2)], []],
    ['a root and a step', [root('a', 1)], [adding('a', [])]],
    ['two steps', [], [adding('a', []), { ...adding('a', []), id: 'other' }]],
    ['one step twice', [], [step('a a', [], () => [1, 2])]],
  ])('refuses a quantity given twice: %s', (_, roots, steps) => {
    expect(codeOf(roots, steps)).toMatchObject({ code: 'DUPLICATE_QUANTITY', ids: ['a'] });
  });
  it('refuses two steps of one name', () => {
    expect(codeOf([], [adding('a', []), { ...adding('b', []), id: 'make a' }])).toMatchObject({ code: 'DUPLICATE_STEP', ids: ['make a'] });
  });
  it('refuses a quantity without a unit', () => {
    expect(codeOf([root('a', 1, { unit: '' })], [])).toMatchObject({ code: 'UNIT_MISSING', ids: ['a'] });
  });
});

describe('requireUnit', () => {
  const chain = buildChain([root('t', 20, { unit: '°C' })], []);
  it('lets the right unit pass', () => expect(() => requireUnit(chain, 't', '°C')).not.toThrow());
  it('says which unit came and which was expected', () => {
    expect(() => requireUnit(chain, 't', 'kg')).toThrow('t is held in °C, but a value in kg came');
  });
});
