import { describe, expect, it } from 'vitest';
import { BadInput, OutOfRange } from '../src/errors.js';
import { runModel } from '../src/model.js';
import { checks, modelById } from '../src/registry.js';

const model = (id: string) => modelById.get(id)!;

describe('the one door to a model', () => {
  it('says how a percentage is to be written where a fraction is due', () => {
    expect(() => runModel(model('sucrose.boiling_point'), { solids: 80 })).toThrow('80 % is 0.8');
    expect(() => runModel(model('sucrose.boiling_point'), { solids: 101 })).toThrow(
      /^solids is 101, but sucrose\.boiling_point covers 0 to 0\.995$/,
    );
    expect(() => runModel(model('sucrose.boiling_point'), { solids: 80 })).toThrow(OutOfRange);
  });
  it('asks for a number without a unit where there is none', () => {
    expect(() => runModel(model('sucrose.boiling_point'), { solids: '0.8' })).toThrow('but a number is expected');
    expect(() => runModel(model('sucrose.boiling_point'), {})).toThrow(/mass fraction of the solution$/);
  });
  it('refuses a mass of nothing', () => {
    for (const id of ['confectionery.density', 'glass_transition.mixture', 'food.specific_heat', 'syrup.density']) {
      expect(() => runModel(model(id), { water: 0 }), id).toThrow(BadInput);
    }
    expect(() => runModel(model('glass_transition.mixture'), { sucrose: 1, crystalline_sucrose_share: 5 })).toThrow(OutOfRange);
  });
  it('is not fitted where a remark says so, and the interval is wider there', () => {
    const inside = runModel(model('sucrose.water_activity'), { solids: 0.9, temperature_c: 150 });
    const outside = runModel(model('sucrose.water_activity'), { solids: 0.9, temperature_c: 151 });
    const width = (of: typeof inside) => of.outputs.water_activity!.high! - of.outputs.water_activity!.low!;
    expect(inside.fitted).toBe(true);
    expect(outside.fitted).toBe(false);
    expect(width(outside) / width(inside)).toBeCloseTo(1.5, 1);
    const dry = runModel(model('syrup.boiling_point'), { water: 2, sucrose: 98 });
    expect(dry.fitted).toBe(false);
    expect(dry.findings.map(({ code }) => code)).toContain('OUTSIDE_FITTED_RANGE');
  });
  it('keeps a share within 0 and 1 and a factor a factor when it widens', () => {
    const nearOne = runModel(model('sucrose.water_activity'), { solids: 0.01, temperature_c: -20 }).outputs.water_activity!;
    expect(nearOne.high).toBeLessThanOrEqual(1);
    const { value, low, high } = runModel(model('sucrose.viscosity'), { solids: 0.85 }).outputs.viscosity_pa_s!;
    expect((value as number) / low!).toBeCloseTo(high! / (value as number), 8);
  });
  it('has the value inside its interval wherever a check looks', () => {
    for (const check of checks) {
      const answer = runModel(model(check.model), check.inputs);
      for (const [key, { value, low, high }] of Object.entries(answer.outputs)) {
        if (typeof value !== 'number' || low === undefined || high === undefined) continue;
        const digit = 1e-12 * Math.abs(value);
        expect(low, `${check.id}, ${key}`).toBeLessThanOrEqual(value + digit);
        expect(high, `${check.id}, ${key}`).toBeGreaterThanOrEqual(value - digit);
      }
    }
  });
});
