import { activityOfIce } from '../core/ice.js';
import { NoSolution } from '../errors.js';
import type { Celsius } from '../units.js';
import { activityTemperatures, waterActivity } from './activity.js';
import type { Solution } from './solution.js';

/**
 * Freezing point: the temperature at which the solution has the water activity of ice.
 *
 * @returns °C, 0 to -40; falls with solids
 * @throws NoSolution where the solution would freeze below -40 °C; OutOfRange for a mass below 0
 * @example freezingPoint({ water: 80, sucrose: 20 }) // -1.48
 */
export function freezingPoint(solution: Solution): Celsius {
  const excess = (t: Celsius): number => waterActivity(solution, t) - activityOfIce(t);
  let low: number = activityTemperatures[0];
  let high = 0;
  if (excess(0) >= 0) return 0;
  if (excess(low) < 0) throw new NoSolution(`this solution does not freeze above ${low} °C`);
  for (let step = 0; step < 50; step++) {
    const t = (low + high) / 2;
    if (excess(t) > 0) low = t;
    else high = t;
  }
  return (low + high) / 2;
}
