import fc from 'fast-check';
import type { Quantity, Root, Step, Value } from '../src/index.js';

export function root(id: string, value: Value, more: Partial<Root> = {}): Root {
  return { id, unit: '1', meaning: `value ${id}`, value, origin: 'entered', ...more };
}

export function step(
  output: string,
  inputs: readonly string[],
  run: (...x: never[]) => Value | readonly Value[],
  more: Partial<Step> = {},
): Step {
  const outputs: readonly Quantity[] = output.split(' ').map((id) => ({ id, unit: '1', meaning: `value ${id}` }));
  return {
    id: `make ${output}`,
    title: `Making ${output}`,
    inputs,
    outputs,
    run,
    equation: `${output} = f(${inputs.join(', ')})`,
    ...more,
  };
}

/** A step that adds its inputs, refuses a sum beyond `limit`, and gives no value for one below -limit. */
export function adding(output: string, inputs: readonly string[], limit = 1e9): Step {
  const run = (...x: number[]) => {
    const sum = x.reduce((a, b) => a + b, 0.5);
    if (sum > limit) throw new RangeError(`the sum ${sum} is above ${limit}`);
    return sum < -limit ? NaN : sum;
  };
  return step(output, inputs, run as (...x: never[]) => Value);
}

export interface RandomChain {
  readonly roots: readonly Root[];
  readonly steps: readonly Step[];
  readonly ids: readonly string[];
}

/** Random directed graphs without cycles: some sums refuse or give no value, some outputs round, so that changes stop there. */
export const randomChain: fc.Arbitrary<RandomChain> = fc
  .record({
    values: fc.array(fc.integer({ min: -5, max: 5 }), { minLength: 1, maxLength: 5 }),
    steps: fc.array(fc.record({ picks: fc.array(fc.nat(), { maxLength: 8 }), kind: fc.nat(3) }), { maxLength: 25 }),
  })
  .map(({ values, steps }) => {
    const roots = values.map((value, i) => root(`r${i}`, value));
    const ids = roots.map(({ id }) => id);
    const made = steps.map(({ picks, kind }, i) => {
      const inputs = picks.map((pick) => ids[pick % ids.length]!);
      const one = adding(`s${i}`, inputs, kind === 0 ? 12 : 1e9);
      const rounded = step(`s${i}`, inputs, ((...x: number[]) => Math.sign(x.reduce((a, b) => a + b, 0))) as never);
      const two = step(`s${i} t${i}`, inputs, ((...x: number[]) => [Math.max(0, ...x), x.length]) as never);
      const made = kind === 1 ? rounded : kind === 2 ? two : one;
      ids.push(...made.outputs.map(({ id }) => id));
      return made;
    });
    return { roots, steps: made, ids };
  });
