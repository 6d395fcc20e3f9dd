import type { Check } from '../check.js';
import type { Model } from '../model.js';

export const safetyModels: readonly Model[] = [];
export const safetyChecks: readonly Check[] = [];
