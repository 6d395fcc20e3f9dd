import { additionsOf } from '@barwright/bar';
import type { State } from '@barwright/chain';
import type { PlantChain } from '@barwright/line';

/** Slug of the component whose charge the id is a share of. */
export function shareOf(id: string): string | undefined {
  return /^([^.]+)\.charge\./.exec(id)?.[1];
}

/**
 * A charge is 100 %: where one share is pulled, the others of the same component give way in proportion.
 * @param changes - roots as pulled, in the unit inside
 * @returns the same with the shares that gave way
 */
export function withOthersGivingWay(from: PlantChain, truth: State, changes: ReadonlyMap<string, number>): Map<string, number> {
  const all = new Map(changes);
  const touched = new Set([...changes.keys()].map(shareOf).filter((slug) => slug !== undefined));
  for (const slug of touched) {
    const component = [...from.plant.components.values()].find((other) => other.slug === slug);
    if (!component) continue;
    const ids = additionsOf(component).map(({ id }) => id);
    const total = ids.reduce((sum, id) => sum + truth.number(id), 0);
    const pulled = ids.filter((id) => changes.has(id)).reduce((sum, id) => sum + changes.get(id)!, 0);
    const rest = ids.filter((id) => !changes.has(id));
    const left = rest.reduce((sum, id) => sum + truth.number(id), 0);
    if (left <= 0) continue;
    const factor = Math.max(0, total - pulled) / left;
    for (const id of rest) all.set(id, rounded(truth.number(id) * factor));
    // What rounding leaves goes to the largest, so that the charge is whole.
    const largest = rest.reduce((most, id) => (all.get(id)! > all.get(most)! ? id : most), rest[0]!);
    const sum = ids.reduce((so, id) => so + all.get(id)!, 0);
    all.set(largest, rounded(all.get(largest)! + total - sum, 1e9));
  }
  return all;
}

/** Shares are written to a thousandth of a per cent. */
function rounded(share: number, steps = 1e5): number {
  return Math.round(share * steps) / steps;
}
