import { describe, expect, it } from 'vitest';
import { runCheck } from '../../src/check.js';
import { coreModels } from '../../src/core/registry.js';
import { waterChecks, waterModels } from '../../src/water/registry.js';

const models = new Map([...coreModels, ...waterModels].map((model) => [model.id, model]));

/** Red on the evidence page too. */
const knownRed: Readonly<Record<string, string>> = {
  'syrup.water_activity.honey_20': 'this honey series lies 0.04 below the regression of the other honey works, which is met',
  'syrup.boiling_point.concentrated_milk_39': 'the protein of milk binds water too and is left out of the dissolved phase here',
  'syrup.boiling_point.concentrated_milk_62': 'the same',
  'syrup.boiling_point.concentrated_milk_73': 'the same',
};

describe('water models against values from outside', () => {
  it.each(waterChecks.map((check) => [check.id, check] as const))('%s', (id, check) => {
    const result = runCheck(check, models);
    expect(result.error).toBeUndefined();
    expect(result.inside).toBe(!(id in knownRed));
  });
  it('ids are unique', () => {
    const ids = waterChecks.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});
