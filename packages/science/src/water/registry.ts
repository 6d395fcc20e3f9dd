import type { Check } from '../check.js';
import type { Model } from '../model.js';
import { activityChecks } from './checks/activity.js';
import { boilingChecks } from './checks/boiling.js';
import { glucoseSyrupChecks } from './checks/glucoseSyrup.js';
import { firstEstimatesModel, soluteActivityModel, sucroseActivityModel, syrupActivityModel, syrupWaterModel } from './models/activity.js';
import {
  freezingModel,
  soluteBoilingModel,
  sucroseBoilingModel,
  syrupBoilingModel,
  syrupFreezingModel,
  syrupSolidsModel,
} from './models/boiling.js';
import { glucoseSyrupModel } from './models/glucoseSyrup.js';

export const waterModels: readonly Model[] = [
  sucroseActivityModel,
  sucroseBoilingModel,
  soluteActivityModel,
  soluteBoilingModel,
  freezingModel,
  syrupActivityModel,
  syrupWaterModel,
  syrupBoilingModel,
  syrupSolidsModel,
  syrupFreezingModel,
  firstEstimatesModel,
  glucoseSyrupModel,
];
export const waterChecks: readonly Check[] = [...activityChecks, ...boilingChecks, ...glucoseSyrupChecks];
