import { lookOfWritten, type Builder } from '@barwright/bar';
import type { PlannedCheck, Plant } from '@barwright/plant';

/** The quantity that explains the limit of a check: the one it names, or the limit itself as the plant wrote it. */
export function checkQuantity(check: PlannedCheck, has: (id: string) => boolean): string | undefined {
  if (check.quantity && has(check.quantity)) return check.quantity;
  return check.limit ? `check.${check.slug}` : undefined;
}

/** Limits of the control plan that no other quantity carries. */
export function checkSteps(b: Builder, plant: Plant): void {
  for (const check of plant.checks) {
    if (!check.limit || (check.quantity && b.has(check.quantity))) continue;
    b.entered(`check.${check.slug}`, `limit of the check "${check.what}" at ${check.at}`, check.limit, lookOfWritten(check.limit));
  }
}
