import type { Check } from '../check.js';
import { lawChecks, lawModels } from '../law/registry.js';
import type { Model } from '../model.js';

export const cocoaModels: readonly Model[] = [...lawModels];
export const cocoaChecks: readonly Check[] = [...lawChecks];
