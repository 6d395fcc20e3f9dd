import type { Check } from '../check.js';
import type { Model } from '../model.js';

export const cocoaModels: readonly Model[] = [];
export const cocoaChecks: readonly Check[] = [];
