import { requireRange } from '../errors.js';
import { solidFat, type FatBlend } from './fat.js';
import type { Table } from '../sources.js';
import type { Celsius, Metre, Second, SquareMetrePerSecond } from '../units.js';

/** Diffusivity of peanut oil in chocolate. */
export const peanutOil = {
  source: 'mccarthy-2008',
  standing: 'found',
  note: '1.82e-11 m²/s was the lowest of five chocolates at 30 °C over 17 days (the highest about 3.2e-11); at 20 °C no significant transfer in 17 days, read as at most 1e-13. Between them, and beyond, D = liquid (1 - solid fat)^power with the power that joins both.',
  valid: { temperature_c: [20, 30] },
  values: { at30: 1.82e-11, at30High: 3.2e-11, at20Most: 1e-13 },
} as const satisfies Table;

const reference: FatBlend = { milkFat: 0.2, oil: 0 };
const { at30, at20Most } = peanutOil.values;
const power = Math.log(at30 / at20Most) / Math.log((1 - solidFat(30, reference)) / (1 - solidFat(20, reference)));
const liquid = at30 / (1 - solidFat(30, reference)) ** power;

/**
 * Diffusivity of nut oil in tempered chocolate, m²/s: oil moves through the liquid fat between the crystals.
 * The value at 30 °C is measured; that at 20 °C is an upper bound, so colder than 30 °C this answers with a bound too.
 *
 * @param t - °C, 0 to 35; above, chocolate is liquid and the word means nothing
 * @throws OutOfRange
 * @example oilDiffusivity(30, { milkFat: 0.2, oil: 0 }) // 1.82e-11
 */
export function oilDiffusivity(t: Celsius, blend: FatBlend = reference): SquareMetrePerSecond {
  requireRange('temperature_c', t, [0, 35], 'mccarthy-2008');
  return liquid * (1 - solidFat(t, blend)) ** power;
}

/**
 * Share of the final uptake after a time, of a layer of thickness L that takes up through one face, the other closed: Crank's series;
 * early M/M∞ = (2/L)√(Dt/π).
 */
export function uptakeShare(diffusivity: SquareMetrePerSecond, time: Second, thickness: Metre): number {
  requireRange('diffusivity_m2_s', diffusivity, [0, 1], 'crank-1975');
  requireRange('time_s', time, [0, Infinity], 'crank-1975');
  requireRange('thickness_m', thickness, [1e-9, 10], 'crank-1975');
  const fourier = (diffusivity * time) / (thickness * thickness);
  if (fourier < 0.2) return 2 * Math.sqrt(fourier / Math.PI);
  let rest = 0;
  for (let n = 0; n < 20; n++) {
    const odd = 2 * n + 1;
    rest += (8 / (odd * odd * Math.PI * Math.PI)) * Math.exp((-odd * odd * Math.PI * Math.PI * fourier) / 4);
  }
  return 1 - rest;
}

/** Depth that oil has reached, m: √(4 D t). */
export function penetrationDepth(diffusivity: SquareMetrePerSecond, time: Second): Metre {
  return Math.sqrt(4 * diffusivity * time);
}

/** A logged store, warehouse or truck. */
export interface StorageLog {
  /** Hours, rising. */
  readonly time: readonly number[];
  readonly temperature: readonly Celsius[];
}

export interface StorageResult {
  /** Hours above a temperature, straight between readings. */
  readonly hoursAbove: number;
  readonly highest: Celsius;
  /** Depth that nut oil may reach over the log, m: √(4 ∫D dt), an upper bound below 30 °C. */
  readonly oilDepth: Metre;
  /** Hours at the highest temperature class that would do the same as the log: ∫D dt / D(30 °C). */
  readonly hoursAt30: number;
  /** Largest warm-cold-warm swing, K. */
  readonly swing: number;
}

/** What a temperature history does to a chocolate coat on nuts. Temperatures above 35 °C count as 35 °C for the oil (the coat is liquid). */
export function storageResult(log: StorageLog, limit: Celsius, blend: FatBlend = reference): StorageResult {
  const { time, temperature } = log;
  let above = 0;
  let integral = 0;
  for (let i = 1; i < time.length; i++) {
    const hours = time[i]! - time[i - 1]!;
    const [a, b] = [temperature[i - 1]!, temperature[i]!];
    above += hours * shareAbove(a, b, limit);
    integral +=
      (hours * 3600 * (boundedDiffusivity(a, blend) + 4 * boundedDiffusivity((a + b) / 2, blend) + boundedDiffusivity(b, blend))) / 6;
  }
  let swing = 0;
  let lowest = temperature[0]!;
  for (const t of temperature) {
    lowest = Math.min(lowest, t);
    swing = Math.max(swing, t - lowest);
  }
  return {
    hoursAbove: above,
    highest: Math.max(...temperature),
    oilDepth: Math.sqrt(4 * integral),
    hoursAt30: integral / oilDiffusivity(30, blend) / 3600,
    swing,
  };
}

function boundedDiffusivity(t: number, blend: FatBlend): number {
  return oilDiffusivity(Math.min(35, Math.max(0, t)), blend);
}

function shareAbove(a: number, b: number, limit: number): number {
  if (a >= limit && b >= limit) return 1;
  if (a < limit && b < limit) return 0;
  return (Math.max(a, b) - limit) / Math.abs(a - b);
}
