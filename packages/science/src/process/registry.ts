import type { Check } from '../check.js';
import type { Model } from '../model.js';

export const processModels: readonly Model[] = [];
export const processChecks: readonly Check[] = [];
