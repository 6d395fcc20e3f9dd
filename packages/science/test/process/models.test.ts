import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BadInput, NoSolution, OutOfRange } from '../../src/errors.js';
import { runModel, type InputSpec, type Model } from '../../src/model.js';
import { processChecks, processModels } from '../../src/process/registry.js';
import { sources } from '../../src/sources.js';

/** A value somewhere in what a model was fitted for, or a decade about 1 where it was not told. */
function arbitrary(spec: InputSpec): fc.Arbitrary<unknown> {
  if (spec.kind === 'choice') return fc.constantFrom(...spec.choices!);
  if (spec.kind === 'flag') return fc.boolean();
  const [low, high] = spec.fitted ?? spec.possible ?? [0, 1];
  const number = fc.double({ min: Math.max(low, -200), max: Math.min(high, Math.max(200, low)), noNaN: true });
  return spec.kind === 'series' ? fc.array(number, { minLength: 2, maxLength: 3 }) : number;
}

function badNumber(value: unknown): boolean {
  if (typeof value === 'number') return Number.isNaN(value);
  return Array.isArray(value) && value.some(badNumber);
}

describe('every process model', () => {
  it.each(processModels.map((model) => [model.id, model] as const))('%s answers or refuses, and never says NaN', (_, model) => {
    fc.assert(
      fc.property(fc.record(Object.fromEntries(model.inputs.map((spec) => [spec.key, arbitrary(spec)]))), (inputs) => {
        try {
          const answer = runModel(model, inputs);
          for (const [key, output] of Object.entries(answer.outputs)) {
            expect(badNumber(output.value), `${model.id} ${key} for ${JSON.stringify(inputs)}`).toBe(false);
          }
        } catch (error) {
          const known = error instanceof OutOfRange || error instanceof NoSolution || error instanceof BadInput;
          if (!known) throw error;
        }
      }),
      { numRuns: 25 },
    );
  });
  it.each(processModels.map((model) => [model.id, model] as const))('%s refuses NaN and words', (_, model) => {
    for (const spec of model.inputs) {
      if (spec.kind && spec.kind !== 'number') continue;
      const others = validInputs(model);
      expect(() => runModel(model, { ...others, [spec.key]: NaN }), spec.key).toThrow(BadInput);
      expect(() => runModel(model, { ...others, [spec.key]: 'much' }), spec.key).toThrow(BadInput);
    }
  });
  it('names sources that exist and says what goes in and comes out', () => {
    for (const model of processModels) {
      for (const key of model.sources) expect(sources, model.id).toHaveProperty(key);
      expect(model.outputs.length).toBeGreaterThan(0);
      for (const spec of [...model.inputs, ...model.outputs]) expect(spec.meaning.length, `${model.id} ${spec.key}`).toBeGreaterThan(1);
    }
  });
  it('has checks that name its own outputs', () => {
    const byId = new Map(processModels.map((model) => [model.id, model]));
    for (const check of processChecks)
      expect(
        byId.get(check.model)!.outputs.map((o) => o.key),
        check.id,
      ).toContain(check.output);
  });
});

/** Inputs of one of the model's own checks; their values do not matter here. */
function validInputs(model: Model): Record<string, unknown> {
  return { ...(processChecks.find((check) => check.model === model.id)?.inputs ?? {}) };
}
