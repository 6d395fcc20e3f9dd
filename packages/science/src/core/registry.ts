import type { Check } from '../check.js';
import type { Model } from '../model.js';

export const coreModels: readonly Model[] = [];
export const coreChecks: readonly Check[] = [];
