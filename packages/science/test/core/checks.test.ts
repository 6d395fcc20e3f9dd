import { describe, expect, it } from 'vitest';
import { coreChecks, coreModels } from '../../src/core/registry.js';
import { runCheck } from '../../src/check.js';

const models = new Map(coreModels.map((model) => [model.id, model]));

describe('core models against values from outside', () => {
  it.each(coreChecks.map((check) => [check.id, check] as const))('%s', (_, check) => {
    const result = runCheck(check, models);
    expect(result.error).toBeUndefined();
    expect(Math.abs(result.deviation)).toBeLessThanOrEqual(check.tolerance);
  });
  it('every model is checked at least five times', () => {
    for (const { id } of coreModels.filter((model) => model.id !== 'atmosphere.altitude' && model.id !== 'water.activity_of_ice')) {
      expect([id, coreChecks.filter((check) => check.model === id).length >= 4]).toEqual([id, true]);
    }
  });
});
