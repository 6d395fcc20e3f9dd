import type { Check } from '../check.js';
import type { Model } from '../model.js';
import { checks } from './checks.js';
import {
  altitudeModel,
  atmosphereModel,
  iceActivityModel,
  latentHeatModel,
  saturationPressureModel,
  saturationTemperatureModel,
} from './models.js';

export const coreModels: readonly Model[] = [
  saturationPressureModel,
  saturationTemperatureModel,
  latentHeatModel,
  iceActivityModel,
  atmosphereModel,
  altitudeModel,
];
export const coreChecks: readonly Check[] = [...checks];
