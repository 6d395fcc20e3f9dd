import { describe, expect, it } from 'vitest';
import { runCheck } from '../../src/check.js';
import { processChecks, processModels } from '../../src/process/registry.js';

const models = new Map(processModels.map((model) => [model.id, model]));

/** Known red, with the reason; exactly these may fail. */
const red: Readonly<Record<string, string>> = {
  'cocoa-mass-cp-liquid':
    'The print has solid and liquid exchanged in size, or an apparent value: no mixture rule gives 1420 J/(kg K) with 54 % fat.',
  'nut-kernel-cp': 'The measured band lies 15 % below any mixture rule: 44 % fat and 7 % water alone need 1180 J/(kg K).',
  'chocolate-k': 'Computed 0.291, 12 % above the print, whose recipe is not given.',
  'invert-syrup-k-15':
    'Printed 0.336 at 44.5 % solids, where sugar-works practice and water itself (0.59) ask for 0.45; honey points the other way.',
  'invert-syrup-diffusivity-15': 'Follows from the conductivity of the same table.',
  'honey-k-17': 'Old value 0.544 for 83 % solids; sugar-works practice gives 0.33. The sources contradict each other.',
  'tg-honey-18.9': 'Computed 9 K too low: fructose and glucose are softened too much by water in the tabled constants.',
  'corn-syrup-viscosity-25': 'Syrup of unknown conversion; 42 DE assumed gives twice the published fit, in line with the refiners’ table.',
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
