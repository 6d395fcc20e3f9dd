import type { Estimate } from '../model.js';

/**
 * How well an activity is known. Sucrose: sources differ by 0.002 near 1, 0.02 near 0.4 and more below, where the points are isotherms of
 * amorphous sugar. Other single solutes half as much again (isopiestic work, humidity tables and saturated solutions of one solute differ by
 * 0.008 near 0.85). Mixtures twice the first, and more below 0.45.
 */
export function activityEstimate(value: number, kind: 'sucrose' | 'one solute' | 'mixture'): Estimate {
  const dry = 1 - value;
  const glassy = Math.max(0, 0.45 - value);
  const spread =
    kind === 'mixture'
      ? 0.003 + 0.06 * dry + 0.1 * glassy
      : kind === 'sucrose'
        ? 0.0015 + 0.03 * dry + 0.15 * glassy
        : 0.0015 + 0.05 * dry + 0.05 * glassy;
  return { value, low: Math.max(0, value - spread), high: Math.min(1, value + spread) };
}

/** Solids from which boiling points are known from cooks of boiled sweets alone, which differ by 1 % of water at one temperature. */
export const driestBoiled = 0.965;

/**
 * Boiling points of pure sucrose at 90 % differ by ±3 K between sources, at 60 % by ±0.3 K; mixtures in real recipes somewhat more.
 *
 * @param solids - mass fraction, where it is high enough to matter: above 96.5 % 5 K for every per cent are added
 */
export function boilingEstimate(value: number, elevation: number, kind: 'one solute' | 'mixture', solids = 0): Estimate {
  const dry = 500 * Math.max(0, solids - driestBoiled);
  const spread = (kind === 'mixture' ? 0.4 + 0.13 * elevation : 0.3 + 0.13 * elevation) + dry;
  return { value, low: value - spread, high: value + spread };
}
