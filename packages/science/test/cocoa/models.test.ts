import { describe, expect, it } from 'vitest';
import { BadInput, OutOfRange } from '../../src/errors.js';
import { cocoaChecks, cocoaModels } from '../../src/cocoa/registry.js';
import { runModel, type InputSpec, type Model } from '../../src/model.js';
import { sources } from '../../src/sources.js';

const exampleOf = (model: Model) => cocoaChecks.find((c) => c.model === model.id)!.inputs;

function numbersOf(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  return Array.isArray(value) ? value.flatMap(numbersOf) : [];
}
function withInput(model: Model, spec: InputSpec, value: unknown) {
  return { ...exampleOf(model), [spec.key]: value };
}

describe.each(cocoaModels.map((model) => [model.id, model] as const))('%s', (_, model) => {
  it('answers its example with finite numbers under declared keys only', () => {
    const raw = model.run as (x: never) => Record<string, unknown>;
    const answer = runModel(model, exampleOf(model));
    expect(Object.keys(answer.outputs).length).toBeGreaterThan(0);
    for (const { value, low, high } of Object.values(answer.outputs)) {
      for (const n of [...numbersOf(value), ...numbersOf(low), ...numbersOf(high)]) expect(Number.isFinite(n)).toBe(true);
      if (typeof value === 'number') {
        if (low !== undefined) expect(low).toBeLessThanOrEqual(value + 1e-9 * Math.abs(value));
        if (high !== undefined) expect(high).toBeGreaterThanOrEqual(value - 1e-9 * Math.abs(value));
      }
    }
    expect(raw).toBeTypeOf('function');
  });
  it('gives no output that it does not declare', () => {
    const declared = new Set(model.outputs.map((o) => o.key));
    const inputs = Object.fromEntries(model.inputs.map((i) => [i.key, exampleOf(model)[i.key] ?? i.default]));
    const given = Object.keys((model.run as (x: unknown) => object)(inputs));
    expect(given.filter((key) => !declared.has(key))).toEqual([]);
  });
  it('answers at both ends of every fitted range without NaN, or refuses with a sentence', () => {
    for (const spec of model.inputs) {
      if (!spec.fitted || (spec.kind ?? 'number') !== 'number') continue;
      for (const end of spec.fitted) {
        try {
          const answer = runModel(model, withInput(model, spec, end));
          for (const { value } of Object.values(answer.outputs))
            for (const n of numbersOf(value)) expect(n, `${spec.key} = ${end}`).not.toBeNaN();
        } catch (error) {
          expect(error, `${spec.key} = ${end}`).toSatisfy(
            (e) => e instanceof OutOfRange || (e as { code?: string }).code === 'NO_SOLUTION',
          );
        }
      }
    }
  });
  it('refuses NaN and unknown keys', () => {
    for (const spec of model.inputs) {
      if ((spec.kind ?? 'number') === 'number') expect(() => runModel(model, withInput(model, spec, NaN)), spec.key).toThrow(BadInput);
      if (spec.kind === 'series') expect(() => runModel(model, withInput(model, spec, [NaN])), spec.key).toThrow(BadInput);
    }
    expect(() => runModel(model, { ...exampleOf(model), nonsense: 1 })).toThrow(BadInput);
  });
  it('cites works that exist', () => {
    for (const key of model.sources) expect(sources[key].title.length).toBeGreaterThan(10);
  });
});
