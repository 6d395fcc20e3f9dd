import { describe, expect, it } from 'vitest';
import { runCheck } from '../../src/check.js';
import { processChecks, processModels } from '../../src/process/registry.js';

const models = new Map(processModels.map((model) => [model.id, model]));

/** Known red, with the reason; exactly these may fail. */
const red: Readonly<Record<string, string>> = {
  'cocoa-mass-cp-liquid':
    'The print has solid and liquid exchanged in size, or an apparent value: no mixture rule gives 1420 J/(kg K) with 54 % fat.',
  'nut-kernel-cp': 'The measured band lies 15 % below any mixture rule: 44 % fat and 7 % water alone need 1180 J/(kg K).',
  'chocolate-k': 'Computed 0.291, 12 % above the print; the crystal conductivity is from memory and the recipe is not printed.',
  'glucose-viscosity-50-45': 'Half water, outside the fitted 13 to 45 %: computed 5.8 mPa s, 1.6 times the measured value.',
  'corn-syrup-viscosity-45':
    'The published fit falls with temperature half as fast as honey and sucrose of the same thickness do; syrup not described.',
  'film-ldpe-60': 'Inverse proportion to thickness gives 5.8; this laboratory’s LDPE passes 1.6 times as much.',
};

describe('process models against outside values', () => {
  it('have unique ids', () => {
    expect(new Set(processModels.map((m) => m.id)).size).toBe(processModels.length);
    expect(new Set(processChecks.map((c) => c.id)).size).toBe(processChecks.length);
  });
  it.each(processChecks.map((check) => [check.id, check] as const))('%s', (id, check) => {
    const result = runCheck(check, models);
    const told = `${check.output}: computed ${result.computed}, expected ${String(check.expected)} ± ${check.tolerance} ${result.error ?? ''}`;
    expect(result.inside, told).toBe(!(id in red));
  });
});
