import { describe, expect, it } from 'vitest';
import { runCheck } from '../../src/check.js';
import { coreModels } from '../../src/core/registry.js';
import { waterChecks, waterModels } from '../../src/water/registry.js';

const models = new Map([...coreModels, ...waterModels].map((model) => [model.id, model]));

/** Red on the evidence page too. */
const knownRed: Readonly<Record<string, string>> = {
  'syrup.water_activity.honey_20': 'this honey series lies 0.04 below the regression of the other honey works, which is met',
  'food.water_activity.honey':
    'a chart of foods puts honey above 0.60; the regression of honey works, which is met, says 0.55 at 17 % water',
  'syrup.viscosity.glucose_50_at_45': 'glucose at 45 °C is printed thinner than its own value at 20 °C allows for; one excerpt',
  'sorption.water_activity.wheat_15': 'the coded constants put wheat of 15 % at 0.71, the handbook at 0.75',
  'sorption.moisture.peanut_store_3': 'store humidity was about 65 %, not measured at the kernel; 3 °C lies below the fit',
  'sorption.moisture.whole_milk_powder_0.6':
    'at 0.60 part of the lactose has crystallised and holds less; the isotherm is that of amorphous lactose',
  'food.boiling_point.concentrated_milk_39': 'whole milk gives 0.7, skimmed 1.1, the table 1.5 ± 0.4; it does not say which milk',
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
