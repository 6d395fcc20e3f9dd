import { describe, expect, it } from 'vitest';
import { runCheck } from '../../src/check.js';
import { cocoaChecks, cocoaModels } from '../../src/cocoa/registry.js';

const models = new Map(cocoaModels.map((model) => [model.id, model]));
/** Checks that are known not to hold, with the reason. */
const red: Readonly<Record<string, string>> = {};

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
