import { requireRange } from '../errors.js';
import { butterLatentHeat, type FatBlend } from './fat.js';
import { growthOf } from './growth.js';
import type { Celsius, MassFraction, Second } from '../units.js';

/** A small sample of tempered chocolate in a cold jacket. */
export interface TemperSample {
  readonly start: Celsius;
  readonly coolant: Celsius;
  /** hA/(m cp) of sample and jacket, 1/s. */
  readonly coolingRate: number;
  /** Crystals at the start, share of the fat. */
  readonly crystals: MassFraction;
  readonly fat: MassFraction;
  readonly blend: FatBlend;
  readonly specificHeat: number;
  /** Growth rate, 1/s per 10 K; left out: placeholder. */
  readonly growthRate?: number;
}

/** Cooling curve of a lumped sample: loses heat to the jacket, gains heat of crystals. Readings every `every` seconds. */
export function coolingCurve(
  sample: TemperSample,
  duration: Second,
  every: Second,
): { readonly time: number[]; readonly temperature: number[]; readonly solids: number[] } {
  requireRange('crystals', sample.crystals, [0, 1], 'foubert-2002');
  requireRange('duration_s', duration, [1, 7200], 'foubert-2002');
  requireRange('every_s', every, [0.2, duration], 'foubert-2002');
  const grow = growthOf(sample.blend, 'kinetics', sample.growthRate);
  const heat = (sample.fat * butterLatentHeat) / sample.specificHeat;
  let t: number = sample.start;
  let s: number = sample.crystals;
  const time = [0];
  const temperature: number[] = [t];
  const solids: number[] = [s];
  const steps = Math.max(1, Math.ceil(every / 0.5));
  const dt = every / steps;
  for (let now = every; now <= duration + 1e-9; now += every) {
    for (let i = 0; i < steps; i++) {
      const grown = grow(t, s, dt);
      s += grown;
      t = sample.coolant + (t - sample.coolant) * Math.exp(-sample.coolingRate * dt) + heat * grown;
    }
    time.push(now);
    temperature.push(t);
    solids.push(s);
  }
  return { time, temperature, solids };
}
