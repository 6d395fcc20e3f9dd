import { saturationTemperature } from '../../core/saturation.js';
import { BadInput } from '../../errors.js';
import { defineModel } from '../../model.js';
import { waterActivity } from '../activity.js';
import { boilingPressures, waterForBoiling } from '../boiling.js';
import { cookingHeat, flash, sameSolidsTemperature } from '../cooking.js';
import { dissolvedInputs, mixtureOf, waterInput } from '../mixture.js';
import { dissolvedSolids } from '../solution.js';
import { boilingStage, boilingStages, stageTemperatures, type BoilingStage } from '../stages.js';

const pressure = { key: 'pressure_pa', unit: 'Pa', meaning: 'absolute pressure', possible: boilingPressures } as const;

export const flashModel = defineModel({
  id: 'cook.flash',
  title: 'Flashing of a hot syrup into a lower pressure',
  about: 'The syrup boils by its own heat until it has its boiling point there; fat and protein give heat and no water.',
  inputs: [
    waterInput,
    ...dissolvedInputs,
    { key: 'fat', unit: 'kg', meaning: 'fat and protein that ride along', possible: [0, 1e9], default: 0 },
    { key: 'temperature_c', unit: '°C', meaning: 'temperature before', possible: [10, 190], fitted: [60, 150] },
    { ...pressure, meaning: 'absolute pressure in the chamber', default: 101_325 },
  ],
  outputs: [
    { key: 'temperature_after_c', unit: '°C', meaning: 'temperature after' },
    { key: 'steam', unit: 'kg', meaning: 'water driven off, in the unit of the masses given' },
    { key: 'moisture_before', unit: '1', meaning: 'water by all that was given' },
    { key: 'moisture_after', unit: '1', meaning: 'water by what is left' },
    { key: 'water_activity_25c', unit: '1', meaning: 'water activity of the syrup afterwards, at 25 °C' },
  ],
  sources: ['zsr', 'starzak-peacock-1997', 'iapws-if97', 'iapws-sr1-86', 'sugar-liquor-thermal'],
  standing: 'memory',
  run: (x) => {
    const syrup = mixtureOf(x);
    const after = flash(syrup, x.temperature_c, x.pressure_pa, { mass: x.fat, specificHeat: 2000 });
    const total = dissolvedSolids(syrup) + syrup.water + x.fat;
    const spread = 0.3 + 0.13 * (after.temperature - saturationTemperature(x.pressure_pa));
    return {
      temperature_after_c: { value: after.temperature, low: after.temperature - spread, high: after.temperature + spread },
      steam: { value: after.steam, low: after.steam * 0.9, high: after.steam * 1.1 },
      moisture_before: syrup.water / total,
      moisture_after: after.syrup.water / (total - after.steam),
      water_activity_25c: waterActivity(after.syrup, 25),
    };
  },
});

export const pressureShiftModel = defineModel({
  id: 'cook.temperature_at_pressure',
  title: 'End temperature of a cook at another pressure',
  about: 'The temperature that gives the same solids on a day of other pressure, at another altitude or under vacuum.',
  inputs: [
    ...dissolvedInputs,
    { key: 'temperature_c', unit: '°C', meaning: 'end temperature at the reference pressure', possible: [2, 200], fitted: [60, 150] },
    { ...pressure, key: 'reference_pressure_pa', meaning: 'pressure at which that temperature was set', default: 101_325 },
    { ...pressure, meaning: 'pressure now' },
  ],
  outputs: [
    { key: 'temperature_now_c', unit: '°C', meaning: 'end temperature for the same solids' },
    { key: 'shift_k', unit: 'K', meaning: 'change of the set point' },
    { key: 'moisture_unchanged', unit: '1', meaning: 'moisture of the dissolved phase that both give' },
    { key: 'moisture_if_not_shifted', unit: '1', meaning: 'moisture when the set point stays as it is' },
  ],
  sources: ['zsr', 'starzak-peacock-1997', 'iapws-if97'],
  standing: 'memory',
  run: (x) => {
    const solids = mixtureOf(x);
    const dry = dissolvedSolids(solids);
    const now = sameSolidsTemperature(solids, x.temperature_c, x.reference_pressure_pa, x.pressure_pa);
    const moist = (pressure_pa: number): number => {
      const water = waterForBoiling(solids, x.temperature_c, pressure_pa);
      return water / (water + dry);
    };
    const boilsNow = x.temperature_c > saturationTemperature(x.pressure_pa);
    const shift = now - x.temperature_c;
    return {
      temperature_now_c: { value: now, low: now - 0.03 * Math.abs(shift) - 0.02, high: now + 0.03 * Math.abs(shift) + 0.02 },
      shift_k: shift,
      moisture_unchanged: moist(x.reference_pressure_pa),
      ...(boilsNow ? { moisture_if_not_shifted: moist(x.pressure_pa) } : {}),
    };
  },
});

export const cookHeatModel = defineModel({
  id: 'cook.heat',
  title: 'Heat to cook a syrup',
  about: 'Warming the feed to the end temperature and driving off water until the syrup boils there; heat losses and fat are not in it.',
  inputs: [
    waterInput,
    ...dissolvedInputs,
    { key: 'feed_temperature_c', unit: '°C', meaning: 'temperature of the feed', possible: [0, 190], default: 60 },
    { key: 'temperature_c', unit: '°C', meaning: 'end temperature', possible: [2, 200], fitted: [60, 150] },
    { ...pressure, default: 101_325 },
  ],
  outputs: [
    { key: 'heat_j_kg', unit: 'J/kg', meaning: 'heat per kg of feed' },
    { key: 'evaporated', unit: '1', meaning: 'water driven off per kg of feed' },
    { key: 'moisture', unit: '1', meaning: 'water of the cooked syrup, mass fraction' },
  ],
  sources: ['zsr', 'iapws-sr1-86', 'sugar-liquor-thermal'],
  standing: 'memory',
  run: (x) => {
    const feed = mixtureOf(x);
    const dry = dissolvedSolids(feed);
    const water = waterForBoiling(feed, x.temperature_c, x.pressure_pa);
    if (water > feed.water) {
      throw new BadInput(
        `cook.heat: this feed boils above ${x.temperature_c} °C already; it holds less water than a syrup cooked to that temperature`,
      );
    }
    const value = cookingHeat(feed, water, x.feed_temperature_c, x.temperature_c);
    return {
      heat_j_kg: { value, low: 0.96 * value, high: 1.04 * value },
      evaporated: (feed.water - water) / (feed.water + dry),
      moisture: water / (water + dry),
    };
  },
});

export const stageModel = defineModel({
  id: 'sugar_boiling.stage',
  title: 'Stage of sugar boiling of an end temperature',
  about:
    'Band of a stage table at sea level, carried to the pressure at the same solids. Words of the trade; the bands differ between books.',
  inputs: [
    { key: 'temperature_c', unit: '°C', meaning: 'end temperature', possible: [0, 200], fitted: [106, 170] },
    { ...pressure, default: 101_325 },
  ],
  outputs: [{ key: 'stage', unit: '1', meaning: 'name of the stage; between stages where no band holds it' }],
  sources: ['sugar-boiling-stages', 'starzak-peacock-1997'],
  standing: 'secondhand',
  run: ({ temperature_c, pressure_pa }) => ({ stage: { value: boilingStage(temperature_c, pressure_pa) ?? 'between stages' } }),
});

export const stageTemperaturesModel = defineModel({
  id: 'sugar_boiling.stage_temperatures',
  title: 'End temperatures of a stage of sugar boiling',
  about: 'Band of a stage table at sea level, carried to the pressure at the same solids.',
  inputs: [
    { key: 'stage', unit: '1', kind: 'choice', meaning: 'which stage', choices: boilingStages },
    { ...pressure, default: 101_325 },
  ],
  outputs: [
    { key: 'low_c', unit: '°C', meaning: 'lowest end temperature' },
    { key: 'high_c', unit: '°C', meaning: 'highest end temperature' },
  ],
  sources: ['sugar-boiling-stages', 'starzak-peacock-1997'],
  standing: 'secondhand',
  run: ({ stage, pressure_pa }) => {
    const [low, high] = stageTemperatures(stage as BoilingStage, pressure_pa);
    return { low_c: { value: low, low: low - 2, high: low + 2 }, high_c: { value: high, low: high - 2, high: high + 2 } };
  },
});
