import type { Value } from '@barwright/chain';
import type { Component, Plant } from '@barwright/plant';
import {
  activityEstimate,
  at,
  groverActivity,
  proteins,
  share,
  solutionOf,
  waterActivity,
  waterActivityOf,
  type Composition,
  type Solution,
} from '@barwright/science';
import { fraction, percent, type Builder } from './builder.js';
import type { Part } from './parts.js';

/** Temperature at which the activity of a finished component is stated, °C. */
export const activityAt = 25;

/** Id of the share of a component's sucrose that stays crystal; written only where seed is added after the cook. */
export function crystalId(component: Component): string {
  return `${component.slug}.crystalline_sucrose`;
}

/** Where a component holds its water in syrup, or by sorption after a roast, its activity follows from its composition; otherwise it is what the plant enters. */
export function activitySteps(b: Builder, plant: Plant, component: Component, parts: readonly Part[]): void {
  const c = component.slug;
  const id = `${c}.water_activity`;
  const meaning = `water activity of ${component.name}`;
  const cooked = component.stages.some((stage) => stage.cook);
  if (cooked) crystalStep(b, plant, component, parts);
  if (component.waterActivity) {
    b.entered(id, meaning, component.waterActivity, fraction);
    return;
  }
  const roasted = component.stages.some((stage) => stage.does === 'roast') && !isGround(component);
  if (!cooked && !roasted) return;
  const written = component.activityOffset;
  const note = 'the plant’s own correction of the computed water activity';
  const offset = written
    ? b.entered(`${id}_offset`, `${note} of ${component.name}`, written, fraction)
    : b.byDefault(`${id}_offset`, `${note} of ${component.name}`, 0, fraction, 'not calibrated yet');
  const crystals = b.has(crystalId(component)) ? [crystalId(component)] : [];
  const known = written?.low === undefined || written.high === undefined ? undefined : (written.high - written.low) / 2;
  const output = { id, meaning, ...fraction };
  const inputs = [`${c}.composition`, offset, ...crystals];
  if (!cooked) {
    b.step({
      title: 'Water activity by sorption',
      inputs,
      outputs: [output],
      equation: 'aw at which sugars in solution and proteins, starch and fibre by sorption hold its water, plus the plant’s own correction',
      sources: ['zsr', 'gab'],
      note: 'Isotherms from memory: good for a direction.',
      run: (x: Composition, correction: number) => waterActivityOf(x, activityAt) + correction,
      uncertainty: () => [known ?? 0.1],
    });
    return;
  }
  b.step({
    title: 'Water activity of the dissolved phase',
    inputs,
    outputs: [output],
    equation: 'aw of water and what is dissolved in it: no fat, no protein, no crystals; plus the plant’s own correction',
    sources: ['starzak-peacock-1997', 'norrish-1966', 'zsr'],
    run: (x: Composition, correction: number, crystal = 0) => waterActivity(dissolved(x, crystal), activityAt) + correction,
    uncertainty: (_, [aw]) => {
      if (known !== undefined) return [known];
      const { low, high } = activityEstimate(aw as number, 'mixture');
      return [(high! - low!) / 2];
    },
  });
  b.step({
    title: 'The same with what proteins, starch and fibre hold, for comparison',
    inputs: [`${c}.composition`, ...crystals],
    outputs: [{ id: `${id}_with_sorption`, meaning: `${meaning} if proteins, starch and fibre take their water by sorption`, ...fraction }],
    equation: 'one aw at which the solution and the biopolymers together hold the water',
    sources: ['zsr', 'gab'],
    note: 'Isotherms of biopolymers are from memory and measured without sugar beside them.',
    run: (x: Composition, crystal = 0) => waterActivityOf(x, activityAt, crystal),
    uncertainty: () => [0.05],
  });
  b.step({
    title: 'The classic first estimate, for comparison',
    inputs: [`${c}.composition`],
    outputs: [{ id: `${id}_first_estimate`, meaning: `${meaning} by the first-estimate equation`, ...fraction }],
    equation: 'aw = 1.04 − 0.10 Es + 0.0045 Es²',
    sources: ['grover-1947'],
    run: (x: Composition) => groverActivity(solutionOf(x), share(x, proteins)),
    uncertainty: () => [0.03],
  });
}

function dissolved(of: Composition, crystal: number): Solution {
  const solution = solutionOf(of);
  return crystal > 0 ? { ...solution, sucrose: solution.sucrose! * (1 - crystal) } : solution;
}

/** A ground paste or a coating: fat lies around everything, and its few tenths of water say nothing by composition. */
function isGround(component: Component): boolean {
  return component.composition !== undefined || component.stages.some((stage) => stage.does === 'refine' || stage.does === 'temper');
}

/** Crystalline additions that enter after the last cook, seed, stay crystals. */
function crystalStep(b: Builder, plant: Plant, component: Component, parts: readonly Part[]): void {
  const c = component.slug;
  const lastCook = component.stages.findLastIndex((stage) => stage.cook);
  const seed = parts.filter(
    (part) => component.stages.indexOf(part.stage) > lastCook && plant.materials.get(part.addition.name)?.crystalline,
  );
  if (seed.length === 0) return;
  b.step({
    title: 'Sugar that stays crystal',
    inputs: [`${c}.composition`, `${c}.yield`, `${c}.charge_sum`, ...seed.flatMap((part) => [part.share, part.composition])],
    outputs: [{ id: crystalId(component), meaning: `share of the sucrose of ${component.name} that is added as crystals`, ...percent }],
    equation: 'sucrose of the seed / sucrose of the whole',
    run: (...values: Value[]) => {
      const whole = values[0] as Composition;
      const made = (values[1] as number) * (values[2] as number);
      let crystal = 0;
      for (let i = 3; i < values.length; i += 2) crystal += ((values[i] as number) * (values[i + 1] as Composition)[at.sucrose]!) / made;
      const all = whole[at.sucrose]!;
      return all > 0 ? crystal / all : 0;
    },
  });
}
