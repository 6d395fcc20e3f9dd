import { BadInput, requireRange } from '../errors.js';
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
  /** Growth rate k, 1/s; left out: placeholder. */
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
  const grow = growthOf(sample.blend, 'kinetics', sample.crystals, sample.growthRate);
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

/**
 * Growth rate k that makes the simulated curve meet a logged one, and the root mean square that is left, K.
 * The crystal content of the sample must be known or assumed: rate and seed trade against one another (rate × cube root of the seed).
 *
 * @throws BadInput for unlike or short lists
 */
export function fitGrowthRate(
  time: readonly Second[],
  temperature: readonly Celsius[],
  sample: Omit<TemperSample, 'start' | 'growthRate'>,
): { readonly rate: number; readonly residual: number } {
  if (time.length !== temperature.length || time.length < 6) {
    throw new BadInput(`growth fit has ${time.length} times and ${temperature.length} temperatures; six or more, one each, are due`);
  }
  const residual = (log: number) => {
    const grow = growthOf(sample.blend, 'kinetics', sample.crystals, Math.exp(log));
    const heat = (sample.fat * butterLatentHeat) / sample.specificHeat;
    let t = temperature[0]!;
    let s: number = sample.crystals;
    let sum = 0;
    for (let i = 1; i < time.length; i++) {
      const steps = Math.max(1, Math.ceil(time[i]! - time[i - 1]!));
      const dt = (time[i]! - time[i - 1]!) / steps;
      for (let n = 0; n < steps; n++) {
        const grown = grow(t, s, dt);
        s += grown;
        t = sample.coolant + (t - sample.coolant) * Math.exp(-sample.coolingRate * dt) + heat * grown;
      }
      sum += (t - temperature[i]!) ** 2;
    }
    return Math.sqrt(sum / (time.length - 1));
  };
  const logs = Array.from({ length: 41 }, (_, i) => Math.log(0.002) + (i / 40) * Math.log(1000));
  const values = logs.map(residual);
  const best = values.indexOf(Math.min(...values));
  let [a, b] = [logs[Math.max(0, best - 1)]!, logs[Math.min(40, best + 1)]!];
  for (let i = 0; i < 50; i++) {
    const [c, d] = [a + (b - a) / 3, b - (b - a) / 3];
    if (residual(c) < residual(d)) b = d;
    else a = c;
  }
  return { rate: Math.exp((a + b) / 2), residual: residual((a + b) / 2) };
}
