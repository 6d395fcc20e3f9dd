import { requireRange } from '../../errors.js';
import { blanchAndSort, electronicSort } from '../data/aflatoxin.js';
import { linearAt } from '../interpolate.js';

/**
 * Share of a lot's aflatoxin taken out by electronic sorting that rejects a share of the kernels.
 *
 * @param removed - share of mass rejected, 0 to 1; tested to 0.10, beyond that the last piece is continued up to 1
 * @returns 0 to 1
 */
export function aflatoxinSortedOut(removed: number): number {
  requireRange('removed', removed, [0, 1], electronicSort.source);
  return Math.min(1, linearAt(electronicSort.values.removed, electronicSort.values.aflatoxin, removed));
}

/** Concentration that remains when a share of the toxin leaves with a share of the mass. */
export function concentrationAfter(before: number, toxinRemoved: number, massRemoved: number): number {
  requireRange('mass_removed', massRemoved, [0, 0.999], 'a share of mass');
  requireRange('toxin_removed', toxinRemoved, [0, 1], 'a share of toxin');
  return (before * (1 - toxinRemoved)) / (1 - massRemoved);
}

/** Mean effect of blanching and colour sorting; the published reduction is of the concentration of the accepted kernels. */
export function afterBlanchAndSort(before: number): { readonly concentration: number; readonly yield: number } {
  return { concentration: before * (1 - blanchAndSort.values.aflatoxin), yield: 1 - blanchAndSort.values.weightLoss };
}
