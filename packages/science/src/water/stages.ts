import { boilingPoint, boilingPressures, waterForBoiling } from './boiling.js';
import { boilingStageTable } from './data/stages.js';
import { requireRange } from '../errors.js';
import type { Celsius, Pascal } from '../units.js';

const bands = boilingStageTable.values;
export type BoilingStage = keyof typeof bands;
export const boilingStages = Object.keys(bands) as BoilingStage[];
const seaLevel = 101_325;

/** The same solids of sucrose boil at `from`; where do they boil at `to`? */
function carried(t: Celsius, from: Pascal, to: Pascal): Celsius {
  return from === to ? t : boilingPoint({ water: waterForBoiling({ water: 0, sucrose: 1 }, t, from), sucrose: 1 }, to);
}

/** End temperatures of a stage at a pressure, °C: the band at sea level carried to the same solids. */
export function stageTemperatures(stage: BoilingStage, pressure: Pascal): readonly [low: Celsius, high: Celsius] {
  requireRange('pressure_pa', pressure, boilingPressures, 'sugar-boiling-stages');
  const [low, high] = bands[stage];
  return [carried(low, seaLevel, pressure), carried(high, seaLevel, pressure)];
}

/**
 * Stage of sugar boiling that an end temperature reaches, or undefined between bands and outside them.
 *
 * @param t - end temperature at that pressure, °C
 */
export function boilingStage(t: Celsius, pressure: Pascal): BoilingStage | undefined {
  requireRange('temperature_c', t, [0, 200], 'sugar-boiling-stages');
  return boilingStages.find((stage) => {
    const [low, high] = stageTemperatures(stage, pressure);
    return t >= low - 0.5 && t <= high + 0.5;
  });
}
