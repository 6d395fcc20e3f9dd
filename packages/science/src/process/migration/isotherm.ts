import { OutOfRange, requireRange } from '../../errors.js';
import { gabActivity, gabMoisture, gabSlope, type Gab } from '../../water/isotherm.js';
import type { WaterActivity } from '../../units.js';

/** Water held (kg per kg of dry matter) against water activity, rising; with its slope and its inverse. */
export interface Isotherm {
  readonly moisture: (aw: WaterActivity) => number;
  readonly slope: (aw: WaterActivity) => number;
  readonly activity: (moisture: number) => WaterActivity;
  /** The slope is the same everywhere: one solve per step is exact. */
  readonly linear?: boolean;
}

/** Straight isotherm m = offset + slope aw. */
export function linearIsotherm(slope: number, offset = 0): Isotherm {
  requireRange('slope of the isotherm', slope, [1e-300, Infinity], 'mass balance');
  return { moisture: (aw) => offset + slope * aw, slope: () => slope, activity: (m) => (m - offset) / slope, linear: true };
}

/** GAB isotherm. @throws OutOfRange for constants that are not positive */
export function gabIsotherm(gab: Gab): Isotherm {
  gab.forEach((value, i) => requireRange(`GAB constant ${['m0', 'C', 'K'][i]}`, value, [1e-300, Infinity], 'gab'));
  return { moisture: (aw) => gabMoisture(gab, aw), slope: (aw) => gabSlope(gab, aw), activity: (m) => gabActivity(gab, m) };
}

/** Measured points joined by straight lines, and carried on straight beyond the ends. @throws OutOfRange unless both columns rise */
export function tableIsotherm(activities: readonly number[], moistures: readonly number[]): Isotherm {
  requireRange('points of an isotherm', Math.min(activities.length, moistures.length), [2, 1e6], 'mass balance');
  for (let i = 1; i < activities.length; i++) {
    if (!(activities[i]! > activities[i - 1]!))
      throw new OutOfRange('water activity of a point', activities[i]!, [activities[i - 1]!, 1], 'table');
    if (!(moistures[i]! > moistures[i - 1]!))
      throw new OutOfRange('moisture of a point', moistures[i]!, [moistures[i - 1]!, Infinity], 'table');
  }
  const slopeAt = (i: number) => (moistures[i + 1]! - moistures[i]!) / (activities[i + 1]! - activities[i]!);
  const find = (column: readonly number[], value: number) => {
    let i = 0;
    while (i < column.length - 2 && value > column[i + 1]!) i++;
    return i;
  };
  return {
    moisture: (aw) => {
      const i = find(activities, aw);
      return moistures[i]! + slopeAt(i) * (aw - activities[i]!);
    },
    slope: (aw) => slopeAt(find(activities, aw)),
    activity: (m) => {
      const i = find(moistures, m);
      return activities[i]! + (m - moistures[i]!) / slopeAt(i);
    },
  };
}

/** One part of a closed package: its dry mass, how it holds water, and where it starts. */
export interface SealedPart {
  readonly dryMass: number;
  readonly isotherm: Isotherm;
  readonly start: WaterActivity;
}

/**
 * Water activity at which parts sealed together come to rest: the water they brought is all there.
 *
 * @returns between the lowest and the highest start
 * @throws OutOfRange without parts
 */
export function commonActivity(parts: readonly SealedPart[]): WaterActivity {
  requireRange('number of parts', parts.length, [1, 1000], 'mass balance');
  let low = Infinity;
  let high = -Infinity;
  let water = 0;
  for (const { dryMass, isotherm, start } of parts) {
    low = Math.min(low, start);
    high = Math.max(high, start);
    water += dryMass * isotherm.moisture(start);
  }
  for (let i = 0; i < 100 && high - low > 1e-12; i++) {
    const middle = (low + high) / 2;
    let held = 0;
    for (const { dryMass, isotherm } of parts) held += dryMass * isotherm.moisture(middle);
    if (held > water) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/**
 * Water activity of the contact of two thick layers from the first moment: each weighs by ρ (dm/daw) √D.
 *
 * @param capacity - ρ dm/daw, kg of water per m³ and unit of activity
 */
export function contactActivity(
  a: { readonly capacity: number; readonly diffusivity: number; readonly start: WaterActivity },
  b: { readonly capacity: number; readonly diffusivity: number; readonly start: WaterActivity },
): WaterActivity {
  const wa = a.capacity * Math.sqrt(a.diffusivity);
  const wb = b.capacity * Math.sqrt(b.diffusivity);
  requireRange('weight of the layers', wa + wb, [1e-300, Infinity], 'crank-1975');
  return (wa * a.start + wb * b.start) / (wa + wb);
}
