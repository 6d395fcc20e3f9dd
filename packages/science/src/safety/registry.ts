import type { Check } from '../check.js';
import type { Model } from '../model.js';
import { cautionChecks } from './caution/checks.js';
import { cautionModels } from './caution/models.js';
import { examinedSafetyChecks } from './examined-checks.js';
import { grindingChecks } from './grinding/checks.js';
import { grindingModels } from './grinding/models.js';
import { intakeChecks } from './intake/checks.js';
import { contaminantModels } from './intake/contaminants.js';
import { intakeModels } from './intake/models.js';
import { lethalityChecks } from './lethality/checks.js';
import { lethalityModels } from './lethality/models.js';
import { peanutChecks } from './peanut/checks.js';
import { peanutModels } from './peanut/models.js';
import { roastingChecks } from './roasting/checks.js';
import { roastingModels } from './roasting/models.js';
import { samplingChecks } from './sampling/checks.js';
import { samplingModels } from './sampling/models.js';

/** Intake, roasting, kill steps, cleaning, winnowing, grinding, sampling and cautions. */
export const safetyModels: readonly Model[] = [
  ...intakeModels,
  ...contaminantModels,
  ...peanutModels,
  ...roastingModels,
  ...lethalityModels,
  ...grindingModels,
  ...samplingModels,
  ...cautionModels,
];
export const safetyChecks: readonly Check[] = [
  ...intakeChecks,
  ...peanutChecks,
  ...roastingChecks,
  ...lethalityChecks,
  ...grindingChecks,
  ...samplingChecks,
  ...cautionChecks,
  ...examinedSafetyChecks,
];
