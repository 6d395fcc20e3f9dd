import { cocoaChecks, cocoaModels } from './cocoa/registry.js';
import { coreChecks, coreModels } from './core/registry.js';
import { processChecks, processModels } from './process/registry.js';
import { safetyChecks, safetyModels } from './safety/registry.js';
import { waterChecks, waterModels } from './water/registry.js';
import type { Check } from './check.js';
import type { Model } from './model.js';

/** What belongs together on the evidence pages. */
export const topics: readonly {
  readonly id: string;
  readonly title: string;
  readonly models: readonly Model[];
  readonly checks: readonly Check[];
}[] = [
  { id: 'core', title: 'Water, steam and air pressure', models: coreModels, checks: coreChecks },
  { id: 'water', title: 'Syrups: activity, boiling, solubility, refraction, sorption', models: waterModels, checks: waterChecks },
  { id: 'process', title: 'Sugar work: flow, foam, cookers, heat, migration', models: processModels, checks: processChecks },
  { id: 'cocoa', title: 'Chocolate: rheology, temper, coating, tunnel, names and nutrition', models: cocoaModels, checks: cocoaChecks },
  { id: 'safety', title: 'Intake, roasting, kill steps, grinding, sampling, hazards', models: safetyModels, checks: safetyChecks },
];

/** Every published model, in the order of the evidence page. */
export const models: readonly Model[] = [...coreModels, ...waterModels, ...processModels, ...cocoaModels, ...safetyModels];
export const modelById: ReadonlyMap<string, Model> = new Map(models.map((model) => [model.id, model]));
/** Every comparison with a value from outside. */
export const checks: readonly Check[] = [...coreChecks, ...waterChecks, ...processChecks, ...cocoaChecks, ...safetyChecks];
