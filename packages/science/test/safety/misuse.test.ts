import { describe, expect, it } from 'vitest';
import { runModel } from '../../src/model.js';
import { cocoaModels } from '../../src/cocoa/registry.js';
import { safetyModels } from '../../src/safety/registry.js';

const models = new Map([...cocoaModels, ...safetyModels].map((model) => [model.id, model]));
const run = (id: string, inputs: Record<string, unknown>) => runModel(models.get(id)!, inputs);
const codes = (id: string, inputs: Record<string, unknown>) => run(id, inputs).findings.map((f) => f.code);
const minutes = Array.from({ length: 60 }, (_, i) => i);

describe('what a stranger does wrong is refused in a sentence that helps', () => {
  it.each([
    ['intake.mass_limits', { moisture: 7.5 }, '7.5 % is 0.075'],
    ['fat.solid_fat_content', { temperature_c: 293.15 }, '293.15 K is 20 °C'],
    ['contaminant.limit', { contaminant: 'cadmium', product: 'chocolate from 50 % cocoa solids', day: '2026-13-45' }, 'a date like'],
    ['grinding.bond', { work_index_kwh_t: 10, feed_80_um: 100, product_80_um: 1000 }, 'cannot turn a size of 100 into 1000'],
    ['grinding.size_fit', { size_series_um: [10, 20, 30], share_below_series: [0.9, 0.6, 0.3] }, 'falls from size 10 to 20'],
    ['sampling.operating_characteristic', { sample_size: 10, acceptance_number: 12, fraction_defective: 0.1 }, 'accepts every lot'],
    ['trend.minutes_to_limit', { time_min: [0, 1, 2, 3, 2.5, 5], value: [1, 2, 3, 4, 5, 6], limit: 10 }, 'must not run back'],
    ['peanut.aflatoxin_plan', { aflatoxin_ug_kg: 20, analyses: 1.5 }, 'a whole number'],
    ['conche.end_point', { time_h: [0, 1, 2, 3], value: [5, 5, 5, 5], end_value: 5 }, '0 readings lie above the end value'],
    ['temper.curve', { time_s: minutes.map((i) => 5 * i), temperature_c: minutes.map(() => 30) }, 'a stuck probe or no cooling'],
  ])('%s %j', (id, inputs, words) => expect(() => run(id, inputs)).toThrow(words));
});

describe('what a log or a table does not support is told', () => {
  it('a stress that falls with the rate is no flow curve', () =>
    expect(codes('rheology.casson_fit', { shear_rate_s: [5, 10, 20, 40], shear_stress_pa: [100, 60, 40, 20] })).toContain(
      'NOT_A_FLOW_CURVE',
    ));
  it('one reading far off is named', () =>
    expect(codes('rheology.casson_fit', { shear_rate_s: [5, 10, 20, 40, 60], shear_stress_pa: [20, 30, 1e6, 70, 90] })).toContain(
      'STRESS_FALLS',
    ));
  it('a hole and a probe that stands still in a roast log', () => {
    const time = minutes.map((i) => (i < 30 ? i : i + 40));
    expect(codes('roasting.lethality', { time_min: time, temperature_c: minutes.map(() => 120) })).toEqual(
      expect.arrayContaining(['GAP_IN_LOG', 'STUCK_SENSOR', 'PLAUSIBILITY_ONLY']),
    );
    expect(codes('roasting.lethality', { time_min: minutes, temperature_c: minutes.map((i) => 100 + i / 3) })).toEqual([
      'PLAUSIBILITY_ONLY',
    ]);
  });
  it('kelvins in a roast log', () =>
    expect(codes('roasting.lethality', { time_min: minutes, temperature_c: minutes.map((i) => 373 + i / 3) })).toContain(
      'NOT_A_PRODUCT_TEMPERATURE',
    ));
  it('a straight temper curve has no inflection and no state', () => {
    const answer = run('temper.curve', { time_s: minutes, temperature_c: minutes.map((i) => 30 - i / 10) });
    expect(answer.outputs['state']!.value).toBe('cannot tell');
    expect(answer.findings.map((f) => f.code)).toContain('NO_INFLECTION');
  });
  it('D beyond the tests is not fitted and its interval widens', () => {
    const far = run('lethality.d_value', { temperature_c: 180 });
    expect(far.fitted).toBe(false);
    const { value, low, high } = far.outputs['d_min']!;
    expect(high! / low!).toBeGreaterThan(4);
    expect(value).toBeGreaterThan(low!);
    const near = run('lethality.d_value', { temperature_c: 141 }).outputs['d_min']!;
    expect(near.high! / near.low!).toBeLessThan(high! / low!);
    expect(run('lethality.d_value', { temperature_c: 117 }).fitted).toBe(true);
  });
  it('a limit that is not recorded says what is', () => {
    const answer = run('contaminant.limit', { contaminant: 'cadmium', product: 'cocoa beans' });
    expect(answer.outputs['limit']!.value).toBeNull();
    expect(answer.findings[0]!.message).toContain('chocolate below 50 % cocoa solids');
    const early = run('contaminant.limit', { contaminant: 'nickel', product: 'chocolate from 50 % cocoa solids', day: '2025-06-30' });
    expect(early.findings[0]!.message).toContain('2025-07-01');
  });
  it('shares in place of grams', () =>
    expect(codes('nutrition.energy', { fat_g: 0.3, carbohydrate_g: 0.57, protein_g: 0.07 })).toContain('LOOKS_LIKE_SHARES'));
});

describe('surface thresholds', () => {
  it('fall with contact and are lowest on bare metal', () => {
    let before = Infinity;
    for (const contact_s of [1, 5, 20, 60, 300, 600, 10_000, 28_800]) {
      const at = (material: string) => run('burn.surface_threshold', { material, contact_s }).outputs['threshold_c']!.value as number;
      expect(at('bare metal')).toBeLessThanOrEqual(before);
      expect(at('wood')).toBeGreaterThanOrEqual(at('bare metal'));
      before = at('bare metal');
    }
  });
  it('judges a temperature', () => {
    expect(run('burn.surface_threshold', { contact_s: 600, temperature_c: 50 }).outputs['burns']!.value).toBe(true);
    expect(run('burn.surface_threshold', { contact_s: 600 }).outputs['burns']!.value).toBeNull();
  });
});
