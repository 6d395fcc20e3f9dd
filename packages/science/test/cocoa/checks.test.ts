import { describe, expect, it } from 'vitest';
import { runCheck } from '../../src/check.js';
import { cocoaChecks, cocoaModels } from '../../src/cocoa/registry.js';

const models = new Map(cocoaModels.map((model) => [model.id, model]));
/** Checks that are known not to hold, with the reason. */
const red: Readonly<Record<string, string>> = {
  'chocolate.thermal_properties/conductivity-15':
    'Its source says that the sample crystallised during the measurement; solid fat conducts more, not less.',
  'fat.polymorph/examined-II-davis': 'This laboratory puts form II 5.6 K lower than the works that the table quotes.',
  'chocolate.thermal_properties/conductivity-43-1-0-true': 'Printed a third below every other vegetable oil.',
};

describe('outside values of the cocoa models', () => {
  it.each(cocoaChecks.map((check) => [check.id, check] as const))('%s', (id, check) => {
    const result = runCheck(check, models);
    const message = `computed ${result.computed}, expected ${JSON.stringify(check.expected)} within ${check.tolerance}${result.error ? `: ${result.error}` : ''}`;
    expect(result.inside, message).toBe(!(id in red));
  });
  it('names each check once', () => expect(new Set(cocoaChecks.map((c) => c.id)).size).toBe(cocoaChecks.length));
  it('has a check for every model', () => {
    const checked = new Set(cocoaChecks.map((c) => c.model));
    expect(cocoaModels.map((m) => m.id).filter((id) => !checked.has(id))).toEqual([]);
  });
  it('lists only existing checks as red', () => {
    const ids = new Set(cocoaChecks.map((c) => c.id));
    expect(Object.keys(red).filter((id) => !ids.has(id))).toEqual([]);
  });
});
