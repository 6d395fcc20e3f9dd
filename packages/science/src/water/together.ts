import { at, type Composition } from '../composition.js';
import { OutOfRange, requireRange } from '../errors.js';
import type { Celsius, Kilogram, MassFraction, WaterActivity } from '../units.js';
import { waterActivityOf, waterHolder, type Held } from './food.js';
import { newtonRoot } from './secant.js';

/** One layer of what is sealed together. */
export interface LayerTogether {
  readonly mass: Kilogram;
  readonly composition: Composition;
  /** Share of its sucrose that is crystal, 0 to 1. */
  readonly crystallineSucrose?: number;
  /** Its water activity now, where measured or corrected; left out: by its composition. Its isotherm is shifted to meet it. */
  readonly activity?: WaterActivity;
  /** What `waterActivityOf` gives for it, where that is known already; it saves the solve. */
  readonly computed?: WaterActivity;
}

export interface Together {
  /** The one water activity at which they come to rest. */
  readonly activity: WaterActivity;
  /** Moisture of each there, wet basis, in the order given. */
  readonly moisture: readonly MassFraction[];
  /** Water each takes up (negative: gives), kg. */
  readonly gain: readonly Kilogram[];
}

/**
 * Where layers come to rest that exchange water with each other and with nothing else: one water activity, all the water they brought.
 * Says nothing of how long it takes.
 *
 * @param layers - at least one; compositions sum to 1
 * @param t - °C
 * @throws OutOfRange without layers, for a mass that is not positive or an activity outside 0 to 1
 * @example sharedActivity([{ mass: 0.0118, composition: caramel }, { mass: 0.0142, composition: nougat }], 25).activity
 */
export function sharedActivity(layers: readonly LayerTogether[], t: Celsius): Together {
  requireRange('number of layers', layers.length, [1, 1000], 'mass balance');
  let low = 1;
  let high = 0;
  let water = 0;
  let weight = 0;
  let weighted = 0;
  const holders = layers.map(({ mass, composition, crystallineSucrose = 0, activity, computed }) => {
    requireRange('mass', mass, [Number.MIN_VALUE, Number.MAX_VALUE], 'mass balance');
    const own = computed ?? waterActivityOf(composition, t, crystallineSucrose);
    const now = activity ?? own;
    if (!(now >= 0 && now <= 1)) throw new OutOfRange('water_activity', now, [0, 1], 'a share');
    low = Math.min(low, now);
    high = Math.max(high, now);
    water += mass * composition[at.water]!;
    weight += mass;
    weighted += mass * now;
    const hold = waterHolder(composition, t, crystallineSucrose);
    // At or below a corrected activity of 0 there is no water to hold; just below 1 a solution holds without end.
    return (aw: WaterActivity, out: Held): void => {
      const shifted = aw - (now - own);
      out.water = 0;
      out.gain = 0;
      if (shifted <= 0) return;
      hold(Math.min(shifted, 1 - 1e-9), out);
      out.water *= mass;
      out.gain *= mass;
    };
  });
  const here = holders.map(() => ({ water: 0, gain: 0 }));
  let looked = low;
  let rise = 0;
  const missing = (aw: WaterActivity): number => {
    looked = aw;
    rise = 0;
    let sum = 0;
    for (let i = 0; i < holders.length; i++) {
      holders[i]!(aw, here[i]!);
      sum += here[i]!.water;
      rise += here[i]!.gain;
    }
    return sum - water;
  };
  const mean = weighted / weight;
  if (high - low < 1e-12) missing(low);
  const activity = high - low < 1e-12 ? low : newtonRoot(missing, () => rise, mean, low, high, 1e-6);
  // Over so short a last step the curve is straight.
  const kept = here.map(({ water: held, gain }) => held + gain * (activity - looked));
  return {
    activity,
    moisture: layers.map(({ mass, composition }, i) => kept[i]! / (kept[i]! + mass * (1 - composition[at.water]!))),
    gain: layers.map(({ mass, composition }, i) => kept[i]! - mass * composition[at.water]!),
  };
}
