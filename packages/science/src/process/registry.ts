import type { Check } from '../check.js';
import type { Model } from '../model.js';
import { conductionChecks } from './checks/conduction.js';
import { thermalChecks } from './checks/thermal.js';
import { conductionModels } from './models/conduction.js';
import { confectioneryModels } from './models/confectionery.js';
import { foamModels } from './models/foam.js';
import { foodModels } from './models/food.js';

export const processModels: readonly Model[] = [...foodModels, ...confectioneryModels, ...foamModels, ...conductionModels];
export const processChecks: readonly Check[] = [...thermalChecks, ...conductionChecks];
