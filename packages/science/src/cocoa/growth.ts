import { growth } from './data/kinetics.js';
import { solidFatUnchecked, type FatBlend } from './fat.js';
import type { Celsius, MassFraction, Second } from '../units.js';

/** How crystals grow: 'kinetics' on the seed of the temper, 'equilibrium' nearly at once (relaxation of half a minute). */
export type GrowthMode = 'kinetics' | 'equilibrium';

/** Growth of solid fat over a short time, share of the fat; positive where it crystallises. */
export type Growth = (t: Celsius, solids: MassFraction, dt: Second) => MassFraction;

const coldest = -10;
const perKelvin = 20;
const warmest = 45;

/**
 * Growth law of a fat blend, made once and cheap to call: the equilibrium is tabled every 0.05 K from -10 to 45 °C.
 * Kinetics: crystals of a fixed number grow on their surface, k (Tm - T)/10 K · N^(1/3) S^(2/3) (1 - S/Seq); with too much solid it
 * melts towards equilibrium. No new crystals are born: without seed nothing grows.
 *
 * @param seed - crystals of the temper, N, share of the fat
 * @param rate - k, 1/s; left out: the placeholder of the table
 */
export function growthOf(blend: FatBlend, mode: GrowthMode, seed: MassFraction, rate: number = growth.values.rate): Growth {
  const table = Float64Array.from({ length: (warmest - coldest) * perKelvin + 2 }, (_, i) =>
    solidFatUnchecked(coldest + i / perKelvin, blend),
  );
  const equilibrium = (t: number) => {
    const place = (Math.min(Math.max(t, coldest), warmest) - coldest) * perKelvin;
    const i = Math.floor(place);
    return table[i]! + (place - i) * (table[i + 1]! - table[i]!);
  };
  const v = growth.values;
  const melting = v.melting - v.milkFatShift * blend.milkFat - v.oilShift * blend.oil;
  if (mode === 'equilibrium') return (t, solids, dt) => (equilibrium(t) - solids) * -Math.expm1(-dt / v.relaxTime);
  const number = Math.cbrt(seed);
  return (t, solids, dt) => {
    const end = equilibrium(t);
    if (solids > end) return (end - solids) * -Math.expm1(-dt / v.meltTime);
    if (end <= 0 || t >= melting) return 0;
    // With u = S^(1/3) the law is du/dt = (k N^(1/3)/3)(1 - u³/Seq): midpoint rule, never past the end.
    const speed = (rate * ((melting - t) / 10) * number) / 3;
    const u = Math.cbrt(solids);
    const half = u + 0.5 * dt * speed * (1 - solids / end);
    const next = u + dt * speed * Math.max(0, 1 - (half * half * half) / end);
    return Math.min(end, next * next * next) - solids;
  };
}
