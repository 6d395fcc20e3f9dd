import type { Estimate } from '../model.js';

/** How well an activity is known: sources of one sugar differ by 0.002 near 1 and 0.02 near 0.4; mixtures twice that. */
export function activityEstimate(value: number, kind: 'one solute' | 'mixture'): Estimate {
  const factor = kind === 'mixture' ? 2 : 1;
  const spread = factor * (0.0015 + 0.03 * (1 - value));
  return { value, low: Math.max(0, value - spread), high: Math.min(1, value + spread) };
}

/** Boiling points of pure sucrose at 90 % differ by ±3 K between sources, at 60 % by ±0.3 K; mixtures in real recipes somewhat more. */
export function boilingEstimate(value: number, elevation: number, kind: 'one solute' | 'mixture'): Estimate {
  const spread = kind === 'mixture' ? 0.4 + 0.13 * elevation : 0.2 + 0.1 * elevation;
  return { value, low: value - spread, high: value + spread };
}
