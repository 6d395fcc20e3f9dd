import { BadInput, requireRange } from '../errors.js';
import type { Celsius, MassFraction } from '../units.js';
import { invertYield, vukovInversion } from './data/inversion.js';
import { solutionDensity } from './density.js';
import type { Solution } from './solution.js';

const { log, slope } = vukovInversion.values;

/**
 * Rate constant of the inversion of sucrose, 1/min (Vukov). First order in sucrose and in hydrogen ions, and in proportion to water.
 *
 * @param t - °C, 20 to 180; fitted 60 to 130
 * @param pH - of the syrup at that temperature, 1 to 10
 * @param water - g per mL of syrup (0 to 1)
 * @throws OutOfRange
 * @example inversionRate(110, 5, 0.4) // 5.17e-4
 */
export function inversionRate(t: Celsius, pH: number, water: number): number {
  requireRange('temperature_c', t, [20, 180], 'vukov-1965');
  requireRange('ph', pH, [1, 10], 'vukov-1965');
  requireRange('water_g_ml', water, [0, 1.001], 'vukov-1965');
  return water * 10 ** (log - slope / (t + 273.15) - pH);
}

/** Water in a syrup, g per mL; its density is taken at most at 130 °C. */
export function waterConcentration(solution: Solution, solids: MassFraction, t: Celsius): number {
  return ((1 - solids) * solutionDensity(solution, Math.min(t, 130))) / 1000;
}

/**
 * Share of the sucrose that has inverted along a logged history: 1 - exp(-∫ k dt), straight lines between the points in temperature and
 * solids, each stretch in small steps.
 *
 * @param time - min, rising
 * @param temperature - °C at those times
 * @param waterAt - water in g per mL, as a function of the place in the history
 * @throws BadInput for lists of different length, fewer than two points or a time that falls; OutOfRange
 */
export function invertedShare(
  time: readonly number[],
  temperature: readonly number[],
  pH: number,
  waterAt: (minute: number, t: Celsius) => number,
): MassFraction {
  if (time.length !== temperature.length || time.length < 2) {
    throw new BadInput(
      `time_min has ${time.length} points and temperature_c ${temperature.length}; two or more of each, as many, are expected`,
    );
  }
  let exposure = 0;
  for (let i = 1; i < time.length; i++) {
    const span = time[i]! - time[i - 1]!;
    if (!(span >= 0)) throw new BadInput(`time_min falls from ${time[i - 1]} to ${time[i]} at point ${i + 1}; it must rise`);
    const rise = temperature[i]! - temperature[i - 1]!;
    const steps = Math.max(1, Math.ceil(Math.abs(rise) / 2));
    for (let j = 0; j < steps; j++) {
      // Gauss at the two points of each step.
      for (const place of [(j + 0.5 - 0.2886751345948129) / steps, (j + 0.5 + 0.2886751345948129) / steps]) {
        const t = temperature[i - 1]! + place * rise;
        exposure += (span / steps / 2) * inversionRate(t, pH, waterAt(time[i - 1]! + place * span, t));
      }
    }
  }
  return 1 - Math.exp(-exposure);
}

/** The syrup after a share of its sucrose has inverted: glucose and fructose in equal mass, water used up. */
export function inverted(of: Solution, share: MassFraction): Solution {
  requireRange('inverted_share', share, [0, 1], 'vukov-1965');
  const sucrose = of.sucrose ?? 0;
  const gain = sucrose * share * invertYield.values.perSucrose;
  return {
    ...of,
    water: of.water - gain + sucrose * share,
    sucrose: sucrose * (1 - share),
    glucose: (of.glucose ?? 0) + gain / 2,
    fructose: (of.fructose ?? 0) + gain / 2,
  };
}
