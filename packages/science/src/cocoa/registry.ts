import type { Check } from '../check.js';
import { lawChecks, lawModels } from '../law/registry.js';
import type { Model } from '../model.js';
import { airChecks } from './checks/air.js';
import { coatingChecks } from './checks/coating.js';
import { concheChecks } from './checks/conche.js';
import { examinedChecks } from './checks/examined.js';
import { fatChecks } from './checks/fat.js';
import { rheologyChecks } from './checks/rheology.js';
import { storageChecks } from './checks/storage.js';
import { temperChecks } from './checks/temper.js';
import { tunnelChecks } from './checks/tunnel.js';
import * as air from './models/air.js';
import * as coating from './models/coating.js';
import * as conche from './models/conche.js';
import * as fat from './models/fat.js';
import * as film from './models/film.js';
import * as rheology from './models/rheology.js';
import * as pipe from './models/rheology-pipe.js';
import * as recipe from './models/rheology-recipe.js';
import * as storage from './models/storage.js';
import * as temper from './models/temper.js';
import * as temperer from './models/temperer.js';
import * as tunnel from './models/tunnel.js';
import * as heat from './models/tunnel-heat.js';

export const cocoaModels: readonly Model[] = [
  conche.concheModel,
  conche.concheTimeModel,
  conche.conchePowerModel,
  conche.concheEndModel,
  rheology.cassonFitModel,
  rheology.binghamFitModel,
  rheology.herschelBulkleyFitModel,
  rheology.windhabFitModel,
  rheology.interpolatedModel,
  rheology.shearStressModel,
  recipe.shiftModel,
  recipe.correctionModel,
  pipe.pipeCassonModel,
  pipe.pipePowerLawModel,
  fat.solidFatModel,
  fat.sfcNmrModel,
  fat.polymorphModel,
  fat.thermalModel,
  fat.foubertModel,
  fat.avramiModel,
  temper.temperCurveModel,
  temper.coolingCurveModel,
  temper.growthFitModel,
  temperer.heatBalanceModel,
  temperer.causeModel,
  temperer.trendModel,
  film.filmModel,
  film.wipingModel,
  film.settingModel,
  coating.barCoatModel,
  film.curtainModel,
  coating.laneModel,
  coating.defectModel,
  heat.heatTransferModel,
  heat.heatLoadModel,
  tunnel.tunnelModel,
  heat.slabModel,
  air.dewPointModel,
  air.wetBulbModel,
  air.humidityModel,
  air.mixingModel,
  air.dewMarginModel,
  storage.oilMigrationModel,
  storage.storageModel,
  storage.storageRuleModel,
  ...lawModels,
];
export const cocoaChecks: readonly Check[] = [
  ...concheChecks,
  ...rheologyChecks,
  ...fatChecks,
  ...temperChecks,
  ...coatingChecks,
  ...tunnelChecks,
  ...airChecks,
  ...storageChecks,
  ...lawChecks,
  ...examinedChecks,
];
