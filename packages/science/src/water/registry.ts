import type { Check } from '../check.js';
import type { Model } from '../model.js';

export const waterModels: readonly Model[] = [];
export const waterChecks: readonly Check[] = [];
