import type { Check } from '../check.js';
import type { Model } from '../model.js';
import { conductionChecks } from './checks/conduction.js';
import { flowChecks } from './checks/flow.js';
import { glassChecks } from './checks/glass.js';
import { heatChecks } from './checks/heat.js';
import { kineticsChecks } from './checks/kinetics.js';
import { migrationChecks, slabChecks } from './checks/migration.js';
import { thermalChecks } from './checks/thermal.js';
import { conductionModels } from './models/conduction.js';
import { confectioneryModels } from './models/confectionery.js';
import { flowModels } from './models/flow.js';
import { foamModels } from './models/foam.js';
import { foodModels } from './models/food.js';
import { glassModels } from './models/glass.js';
import { cookingModels } from './models/cooking.js';
import { heatModels } from './models/heat.js';
import { kineticsModels } from './models/kinetics.js';
import { migrationModels } from './models/migration.js';
import { packageModels } from './models/package.js';
import { slabModels } from './models/slab.js';

export const processModels: readonly Model[] = [
  ...foodModels,
  ...confectioneryModels,
  ...foamModels,
  ...conductionModels,
  ...glassModels,
  ...flowModels,
  ...kineticsModels,
  ...cookingModels,
  ...heatModels,
  ...slabModels,
  ...migrationModels,
  ...packageModels,
];
export const processChecks: readonly Check[] = [
  ...thermalChecks,
  ...conductionChecks,
  ...glassChecks,
  ...flowChecks,
  ...kineticsChecks,
  ...heatChecks,
  ...slabChecks,
  ...migrationChecks,
];
