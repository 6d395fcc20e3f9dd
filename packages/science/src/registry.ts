import { cocoaChecks, cocoaModels } from './cocoa/registry.js';
import { coreChecks, coreModels } from './core/registry.js';
import { processChecks, processModels } from './process/registry.js';
import { safetyChecks, safetyModels } from './safety/registry.js';
import { waterChecks, waterModels } from './water/registry.js';
import type { Check } from './check.js';
import type { Model } from './model.js';

/** Every published model, in the order of the evidence page. */
export const models: readonly Model[] = [...coreModels, ...waterModels, ...processModels, ...cocoaModels, ...safetyModels];
export const modelById: ReadonlyMap<string, Model> = new Map(models.map((model) => [model.id, model]));
/** Every comparison with a value from outside. */
export const checks: readonly Check[] = [...coreChecks, ...waterChecks, ...processChecks, ...cocoaChecks, ...safetyChecks];
