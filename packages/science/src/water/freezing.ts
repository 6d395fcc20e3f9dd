import { activityOfIce } from '../core/ice.js';
import { NoSolution } from '../errors.js';
import type { Celsius } from '../units.js';
import { activityTemperatures, waterActivity } from './activity.js';
import { rootOfIncreasing } from './interpolate.js';
import type { Solution } from './solution.js';

/**
 * Freezing point: the temperature at which the solution has the water activity of ice.
 *
 * @returns °C, 0 to -40; falls with solids
 * @throws NoSolution where the solution would freeze below -40 °C; OutOfRange for a mass below 0
 * @example freezingPoint({ water: 80, sucrose: 20 }) // -1.48
 */
export function freezingPoint(solution: Solution): Celsius {
  const missing = (t: number): number => activityOfIce(t) - waterActivity(solution, t);
  const lowest: number = activityTemperatures[0];
  if (missing(0) <= 0) return 0;
  if (missing(lowest) > 0) throw new NoSolution(`this solution does not freeze above ${lowest} °C`);
  return rootOfIncreasing(missing, lowest, 0);
}
