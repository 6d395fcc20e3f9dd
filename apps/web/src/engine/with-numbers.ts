import type { Explanation } from '@barwright/chain';
import { inWords } from '@barwright/line';
import type { Units } from './protocol.js';

type Form = readonly [value: (x: readonly number[]) => number, write: (x: readonly string[]) => string];

const forms: Readonly<Record<number, readonly Form[]>> = {
  1: [
    [([a]) => a!, ([a]) => a!],
    [([a]) => 1 - a!, ([a]) => `1 − ${a}`],
  ],
  2: [
    [([a, b]) => a! + b!, ([a, b]) => `${a} + ${b}`],
    [([a, b]) => a! - b!, ([a, b]) => `${a} − ${b}`],
    [([a, b]) => b! - a!, ([a, b]) => `${b} − ${a}`],
    [([a, b]) => a! * b!, ([a, b]) => `${a} · ${b}`],
    [([a, b]) => a! / b!, ([a, b]) => `${a} / ${b}`],
    [([a, b]) => b! / a!, ([a, b]) => `${b} / ${a}`],
    [([a, b]) => a! / (1 - b!), ([a, b]) => `${a} / (1 − ${b})`],
    [([a, b]) => a! * (1 + b!), ([a, b]) => `${a} · (1 + ${b})`],
    [([a, b]) => 60 * a! * b!, ([a, b]) => `${a} · ${b}`],
    [([a, b]) => (60 * a!) / b!, ([a, b]) => `${a} / ${b}`],
  ],
  3: [
    [([a, b, c]) => a! * b! * c!, ([a, b, c]) => `${a} · ${b} · ${c}`],
    [([a, b, c]) => (a! * b!) / c!, ([a, b, c]) => `${a} · ${b} / ${c}`],
    [([a, b, c]) => (60 * a! * b!) / c!, ([a, b, c]) => `${a} · ${b} / ${c}`],
    [([a, b, c]) => a! / (b! * c!), ([a, b, c]) => `${a} / (${b} · ${c})`],
    [([a, b]) => a! + 2 * b!, ([a, b]) => `${a} + 2 · ${b}`],
    [([a, b]) => a! + b!, ([a, b]) => `${a} + ${b}`],
  ],
};

/**
 * The equation with its numbers, '0.047 = 0.465 − 0.418', where a plain form gives exactly the value; nothing where the model
 * is more than that.
 */
export function withNumbers(node: Explanation, units: Units): string | undefined {
  const { quantity, value, inputs } = node;
  if (typeof value !== 'number' || !node.status.ok || inputs.length === 0 || inputs.length > 8) return undefined;
  if (inputs.some((input) => typeof input.value !== 'number' || !input.status.ok)) return undefined;
  const numbers = inputs.map((input) => input.value as number);
  const words = inputs.map((input) => inWords(input.quantity, input.value, units));
  const near = (x: number) => Math.abs(x - value) <= 1e-9 * Math.max(Math.abs(value), 1e-12);
  const all: Form = [(x) => x.reduce((sum, each) => sum + each, 0), (x) => x.join(' + ')];
  const form = [...(inputs.length > 2 ? [all] : []), ...(forms[inputs.length] ?? [])].find(([compute]) => near(compute(numbers)));
  return form && `${inWords(quantity, value, units)} = ${form[1](words)}`;
}
