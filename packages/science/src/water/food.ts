import { at, type Composition } from '../composition.js';
import { saturationPressure, saturationTemperature } from '../core/saturation.js';
import { NoSolution, OutOfRange, requireRange } from '../errors.js';
import type { Celsius, MassFraction, Pascal, WaterActivity } from '../units.js';
import { activityOver, activityTemperatures, solidsAt, waterHeld } from './activity.js';
import { boilingPressures } from './boiling.js';
import { rootOfIncreasing } from './interpolate.js';
import { gabMoisture, gabSlope, type Gab } from './isotherm.js';
import { biopolymerGab, biopolymers } from './materials.js';
import { solutionOf } from './solution.js';

/** Masses and isotherms of what holds water by sorption. */
function sorbents(of: Composition, t: Celsius): (readonly [mass: number, gab: Gab])[] {
  const list: (readonly [number, Gab])[] = [];
  for (const key of biopolymers) if (of[at[key]]! > 0) list.push([of[at[key]]!, biopolymerGab(key, t)]);
  return list;
}

/** Takes a share of the sucrose, and of nothing else, out of the dissolved phase. */
function dissolved(of: Composition, crystallineSucrose: MassFraction) {
  requireRange('crystalline_sucrose', crystallineSucrose, [0, 1], 'a share');
  const solution = solutionOf(of);
  return { ...solution, sucrose: solution.sucrose! * (1 - crystallineSucrose) };
}

/**
 * Water activity of a food: sugars and salts hold water as a solution, proteins, starch and fibre by sorption, all at one activity; fat holds
 * none.
 *
 * @param of - composition, sums to 1
 * @param crystallineSucrose - share of the sucrose that is crystal
 * @returns 0 to 1
 * @throws OutOfRange
 * @example waterActivityOf(composition({ water: 0.1, sucrose: 0.35, glucose: 0.1, … }), 25)
 */
export function waterActivityOf(of: Composition, t: Celsius, crystallineSucrose = 0): WaterActivity {
  const water = of[at.water]!;
  if (!(water >= 0)) throw new OutOfRange('water', water, [0, 1], 'a composition');
  const solids = solidsAt(dissolved(of, crystallineSucrose), t);
  const holding = sorbents(of, t);
  if (water === 0) return 0;
  if (holding.length === 0) return solids.moles === 0 ? 1 : activityOver(solids, water);
  const hold = (aw: number, out: { water: number; gain: number }): void => {
    out.water = 0;
    out.gain = 0;
    for (const [mass, gab] of holding) {
      out.water += mass * gabMoisture(gab, aw);
      out.gain += mass * gabSlope(gab, aw);
    }
  };
  if (solids.moles > 0) return activityOver(solids, water, hold);
  const out = { water: 0, gain: 0 };
  return rootOfIncreasing(
    (aw) => {
      hold(aw, out);
      return out.water - water;
    },
    0,
    1,
  );
}

/** Water held at an activity, and its gain per unit of activity. */
export interface Held {
  water: number;
  gain: number;
}

/** Water that a composition holds at an activity, per 1 of the whole it was written for; what does not change with the activity is made once. */
export function waterHolder(of: Composition, t: Celsius, crystallineSucrose: MassFraction = 0): (aw: WaterActivity, out: Held) => void {
  const solids = solidsAt(dissolved(of, crystallineSucrose), t);
  const holding = sorbents(of, t);
  return (aw, out) => {
    out.water = 0;
    out.gain = 0;
    if (solids.moles > 0) waterHeld(solids, aw, out);
    for (const [mass, gab] of holding) {
      out.water += mass * gabMoisture(gab, aw);
      out.gain += mass * gabSlope(gab, aw);
    }
  };
}

function held(of: Composition, aw: WaterActivity, t: Celsius, crystallineSucrose: MassFraction): number {
  const out = { water: 0, gain: 0 };
  waterHolder(of, t, crystallineSucrose)(aw, out);
  return out.water;
}

/**
 * Equilibrium moisture of a food in air of a relative humidity: the moisture (wet basis, fat included) at which its dry matter has that
 * water activity.
 *
 * @param aw - above 0, below 1
 * @throws OutOfRange; NoSolution for a food of fat alone
 */
export function equilibriumMoisture(of: Composition, aw: WaterActivity, t: Celsius, crystallineSucrose = 0): MassFraction {
  if (!(aw > 0 && aw < 1)) throw new OutOfRange('water_activity', aw, [0, 1], 'zsr');
  const dry = 1 - of[at.water]!;
  const water = held(of, aw, t, crystallineSucrose);
  if (!(dry > 0)) throw new NoSolution('a food without dry matter has no equilibrium moisture');
  return water / (water + dry);
}

/**
 * Boiling point of a food with the water that its proteins, starch and fibre hold counted in: the temperature at which its water activity
 * times the vapour pressure of water equals the pressure.
 *
 * @throws OutOfRange; NoSolution above 200 °C
 */
export function boilingPointOf(of: Composition, pressure: Pascal): Celsius {
  requireRange('pressure_pa', pressure, boilingPressures, 'iapws-if97');
  const water = of[at.water]!;
  const pure = saturationTemperature(pressure);
  const excess = (t: Celsius): number => water - held(of, pressure / saturationPressure(t), t, 0);
  const highest = activityTemperatures[1];
  if (!(water > 0) || excess(highest) < 0) {
    throw new NoSolution(`this food does not boil below ${highest} °C at ${Math.round(pressure)} Pa: it holds too little water`);
  }
  return rootOfIncreasing(excess, pure + 1e-9, highest);
}
